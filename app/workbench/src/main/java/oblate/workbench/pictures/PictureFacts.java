/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.util.ArrayList;
import java.util.List;
import oblate.archive.ArchivedPicture;
import oblate.image.CaptureTime;
import oblate.sky.PlanetModel;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/** A picture's facts as the inspector lists them: what is wrong first. */
public final class PictureFacts {
    private static final double LEAST_SIGMA_S = 0.05;
    private static final Texts TEXTS = Texts.of(PictureFacts.class);

    private PictureFacts() {}

    /** The facts of a picture. */
    public static FactList of(PanelContext context, ArchivedPicture picture) {
        FactList list = new FactList(context::palette);
        picture.timeConflicts().forEach(list::alarm);
        if (picture.time().isEmpty()) {
            list.alarm(TEXTS.text("facts.no.time"));
        }
        list.fact(TEXTS.text("facts.name"), picture.originalName());
        picture.time().ifPresent(time -> addTime(list, time));
        picture.planetId()
                .ifPresentOrElse(
                        id -> list.fact(TEXTS.text("facts.planet"), planetLabel(context, id)),
                        () -> list.alarm(TEXTS.text("facts.no.planet")));
        addMeridians(context, list, picture);
        picture.observer().ifPresent(v -> list.fact(TEXTS.text("facts.observer"), v));
        picture.site().ifPresent(v -> list.fact(TEXTS.text("facts.site"), v));
        picture.kit().ifPresent(v -> list.fact(TEXTS.text("facts.kit"), v));
        picture.filter().ifPresent(v -> list.fact(TEXTS.text("facts.filter"), v));
        picture.seeing().ifPresent(r -> list.fact(TEXTS.text("facts.seeing"), r.value() + " " + r.scale()));
        picture.transparency().ifPresent(r -> list.fact(TEXTS.text("facts.transparency"), r.value() + " " + r.scale()));
        picture.notes().ifPresent(v -> list.fact(TEXTS.text("facts.notes"), v));
        list.figure(
                TEXTS.text("facts.size"),
                TEXTS.text(
                        picture.channels() == 3 ? "facts.size.colour" : "facts.size.grey",
                        Integer.toString(picture.widthPx()),
                        Integer.toString(picture.heightPx())));
        return list;
    }

    private static void addTime(FactList list, CaptureTime time) {
        list.figure(
                TEXTS.text("facts.middle"), Figures.clockUt(time.midUtc()) + " ± " + sigma(time.uncertaintyS()) + " s");
        list.fact("", Figures.dayUt(time.midUtc()));
        time.exposureS().ifPresent(s -> list.figure(TEXTS.text("facts.length"), Figures.fixed(s, 0) + " s"));
        list.fact(TEXTS.text("facts.source"), time.place());
        time.notes().forEach(list::remark);
    }

    /** Below a twentieth of a second what a header's digits promise says nothing of the clock. */
    private static String sigma(double seconds) {
        return seconds < LEAST_SIGMA_S ? "< 0.1" : Figures.fixed(seconds, Figures.decimalsFor(seconds));
    }

    private static String planetLabel(PanelContext context, String id) {
        return context.workbench().planets().stream()
                .filter(p -> p.id().equals(id))
                .map(PlanetModel::label)
                .findFirst()
                .orElse(id);
    }

    private static void addMeridians(PanelContext context, FactList list, ArchivedPicture picture) {
        if (picture.centralMeridians().isEmpty()) {
            return;
        }
        List<String> parts = new ArrayList<>();
        context.planet().globe().systems().forEach(system -> {
            Double lon = picture.centralMeridians().get(system.id());
            if (lon != null) {
                parts.add(SystemLabel.brief(system) + " " + Figures.longitude(lon));
            }
        });
        list.figure(TEXTS.text("facts.meridian"), String.join("\n", parts));
    }
}
