/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.util.ArrayList;
import java.util.List;
import oblate.archive.ArchivedPicture;
import oblate.image.CaptureTime;
import oblate.sky.PlanetModel;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;

/** A picture's facts as the inspector lists them: what is wrong first. */
public final class PictureFacts {
    private PictureFacts() {}

    /** The facts of a picture. */
    public static FactList of(PanelContext context, ArchivedPicture picture) {
        FactList list = new FactList(context::palette);
        picture.timeConflicts().forEach(list::alarm);
        if (picture.time().isEmpty()) {
            list.alarm("This picture has no time: its longitudes cannot be known. F2 in Nights corrects it.");
        }
        list.fact("Name", picture.originalName());
        picture.time().ifPresent(time -> addTime(list, time));
        picture.planetId()
                .ifPresentOrElse(
                        id -> list.fact("Planet", planetLabel(context, id)),
                        () -> list.alarm("It is not known which planet this is. F2 in Nights corrects it."));
        addMeridians(context, list, picture);
        picture.observer().ifPresent(v -> list.fact("Observer", v));
        picture.site().ifPresent(v -> list.fact("Site", v));
        picture.kit().ifPresent(v -> list.fact("Kit", v));
        picture.filter().ifPresent(v -> list.fact("Filter", v));
        picture.seeing().ifPresent(r -> list.fact("Seeing", r.value() + " " + r.scale()));
        picture.transparency().ifPresent(r -> list.fact("Transparency", r.value() + " " + r.scale()));
        picture.notes().ifPresent(v -> list.fact("Notes", v));
        list.figure(
                "Size",
                picture.widthPx() + " × " + picture.heightPx() + " px, "
                        + (picture.channels() == 3 ? "colour" : "grey"));
        return list;
    }

    private static void addTime(FactList list, CaptureTime time) {
        list.figure(
                "Middle",
                Figures.clockUt(time.midUtc()) + " ± "
                        + Figures.fixed(time.uncertaintyS(), Figures.decimalsFor(time.uncertaintyS())) + " s");
        list.fact("", Figures.dayUt(time.midUtc()));
        time.exposureS().ifPresent(s -> list.figure("Length", Figures.fixed(s, 0) + " s"));
        list.fact("Time from", time.place());
        time.notes().forEach(list::remark);
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
        list.figure("CM", String.join("\n", parts));
    }
}
