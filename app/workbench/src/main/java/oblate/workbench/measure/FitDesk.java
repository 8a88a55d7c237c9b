/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import oblate.archive.StoredFit;
import oblate.disc.DiscFit;
import oblate.disc.FitHints;
import oblate.disc.FitOutcome;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.disc.Witness;
import oblate.workbench.Edit;
import oblate.workbench.EditHistory;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** Fits the disc of the picture on the desk, and keeps fits and outlines drawn by hand so that they can be undone. On the event thread only. */
final class FitDesk {
    private static final Texts TEXTS = Texts.of(FitDesk.class);
    /** As the nights say it of fits accepted there. */
    private static final String ACCEPTED = ", accepted by eye";

    private final PanelContext context;
    private final Desk desk;
    private final MarkDesk marks;
    private Optional<String> refusal = Optional.empty();
    private Optional<Held> held = Optional.empty();

    /** A disc the archive did not take. */
    private record Held(OpenPicture picture, DiscFit fit, Edit.Origin origin) {}

    private Optional<FitHints> said = Optional.empty();
    private final Set<Long> underWay = new HashSet<>();

    FitDesk(PanelContext context, Desk desk, MarkDesk marks) {
        this.context = context;
        this.desk = desk;
        this.marks = marks;
    }

    Optional<String> refusal() {
        return refusal;
    }

    /** Whether the disc of the picture on the desk is being fitted. */
    boolean isFitting() {
        return desk.open().filter(o -> underWay.contains(o.picture().id())).isPresent();
    }

    /** Forgets what was said of the picture before. */
    void leave() {
        held = Optional.empty();
        refusal = Optional.empty();
        said = Optional.empty();
    }

    /** What a person says about the picture's orientation; used by the next fit. */
    void say(Optional<FitHints> hints) {
        said = hints;
    }

    /** Fits the disc starting from a circle drawn by hand (picture px). */
    void fitNear(PixelPoint centre, double radiusPx) {
        if (desk.open().isEmpty()) {
            return;
        }
        OpenPicture open = desk.open().get();
        FitHints known = said.orElse(open.hints());
        Optional<Placement> before = open.fit().map(f -> f.fit().placement());
        double angle = known.poleAngle()
                .map(FitHints.Angle::valueDeg)
                .or(() -> before.map(Placement::poleAngleDeg))
                .orElse(0.0);
        boolean mirrored =
                known.mirrored().or(() -> before.map(Placement::mirrored)).orElse(false);
        fitFrom(
                new Placement(centre.xPx(), centre.yPx(), radiusPx, angle, mirrored),
                known.poleAngle(),
                known.mirrored());
    }

    /** Fits the disc starting from an outline, with what is known of its orientation. */
    void fitFrom(Placement start, Optional<FitHints.Angle> angle, Optional<Boolean> mirrored) {
        said = Optional.of(new FitHints(angle, mirrored, Optional.of(start)));
        fit();
    }

    /** Fits the disc and keeps what comes of it. */
    void fit() {
        // The picture before may still be fitted; that goes on, and this one comes after it.
        if (desk.open().isEmpty() || isFitting()) {
            return;
        }
        OpenPicture picture = desk.open().get();
        long id = picture.picture().id();
        if (picture.disc().isEmpty()) {
            context.say(TEXTS.text("fit.impossible"));
            return;
        }
        FitHints hints = said.orElse(picture.hints());
        held = Optional.empty();
        underWay.add(id);
        refusal = Optional.empty();
        desk.makeWay();
        context.background()
                .run(
                        TEXTS.text("fit.running"),
                        progress -> context.workbench()
                                .fitter()
                                .fit(picture.pixels(), picture.disc().orElseThrow(), hints, progress)
                                .outcome(),
                        outcome -> fitted(picture, outcome))
                .whenEnded(() -> {
                    underWay.remove(id);
                    desk.tellContent();
                });
        desk.tellContent();
    }

    /** Takes what a fit made ahead found. */
    void fitted(OpenPicture picture, FitOutcome outcome) {
        if (outcome instanceof FitOutcome.Fitted done) {
            keep(picture, done.fit(), Edit.Origin.FITTED);
        } else if (desk.isWanted(picture)) {
            refusal = Optional.of(((FitOutcome.Refused) outcome).reason());
            desk.tellContent();
            desk.fitSettled();
        }
    }

    /**
     * Keeps an outline as it was drawn.
     *
     * @param errors as the person who drew it states them
     */
    void keepByHand(Placement drawn, PlacementCovariance errors) {
        desk.open().filter(o -> o.disc().isPresent()).ifPresent(open -> {
            List<Witness> witnesses =
                    List.of(new Witness("pole angle", "hand", drawn.poleAngleDeg(), errors.sigmaPoleAngleDeg()));
            String channel = open.pixels().channels() == 3 ? "green" : "grey";
            keep(
                    open,
                    new DiscFit(drawn, errors, Trust.TRUSTED, List.of(), "hand", channel, Double.NaN, 0, witnesses),
                    Edit.Origin.BY_HAND);
        });
    }

    /** Keeps a doubtful fit as one that a person looked at and found good; a trusted one needs no such word. */
    void acceptByEye() {
        desk.open()
                .filter(o -> o.fit().isPresent() && o.fit().get().fit().trust() == Trust.DOUBTFUL)
                .ifPresent(open -> {
                    DiscFit fit = open.fit().orElseThrow().fit();
                    context.say(TEXTS.text("fit.accepted", open.picture().originalName()));
                    keep(
                            open,
                            new DiscFit(
                                    fit.placement(),
                                    fit.covariance(),
                                    Trust.TRUSTED,
                                    List.of(),
                                    fit.method() + ACCEPTED,
                                    fit.channel(),
                                    fit.rmsPx(),
                                    fit.edgePoints(),
                                    fit.witnesses()),
                            Edit.Origin.ACCEPTED);
                });
    }

    private void keep(OpenPicture picture, DiscFit fit, Edit.Origin origin) {
        String ephemeris = picture.disc().orElseThrow().ephemeris();
        long id = picture.picture().id();
        context.edits()
                .perform(
                        () -> {
                            Optional<Long> before =
                                    context.archive().currentFit(id).map(StoredFit::id);
                            StoredFit stored = context.archive()
                                    .keepFit(
                                            id,
                                            fit,
                                            ephemeris,
                                            context.workbench().software());
                            return EditHistory.Done.of(
                                    new Edit.FitKept(id, before, stored.id(), origin),
                                    picture.readAgain(context.archive()));
                        },
                        this::kept,
                        why -> notKept(new Held(picture, fit, origin), why));
    }

    private void notKept(Held what, String why) {
        String name = what.picture().picture().originalName();
        String sentence = TEXTS.text("fit.not.kept", name, why);
        context.say(sentence);
        if (desk.isWanted(what.picture())) {
            held = Optional.of(what);
            refusal = Optional.of(sentence);
            desk.tellContent();
        }
    }

    /** Whether a disc was found or drawn that the archive did not take. */
    boolean isHeldBack() {
        return held.isPresent();
    }

    /** Offers the archive again what it did not take. */
    void tryAgain() {
        held.ifPresent(h -> {
            held = Optional.empty();
            refusal = Optional.empty();
            keep(h.picture(), h.fit(), h.origin());
        });
    }

    private void kept(OpenPicture fresh) {
        desk.changedShelf();
        desk.show(fresh);
        if (fresh.hasStaleMarks()) {
            marks.measureAgain(fresh, desk::show);
        }
        if (desk.isWanted(fresh)) {
            desk.fitSettled();
        }
    }
}
