/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.Timer;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.NewMark;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.disc.DiscFit;
import oblate.disc.FitHints;
import oblate.disc.FitOutcome;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.SurfacePoint;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;

/** What lies on the measuring desk and what is being done with it. On the event thread only; work happens in the background. */
final class Desk {
    private static final int MOVE_PAUSE_MS = 400;
    private static final int SHELF_PAUSE_MS = 800;

    /** What the desk tells. */
    interface Listener {
        /** Another picture lies on the desk, or none. */
        void pictureChanged();

        /** Fit or marks of the picture have changed. */
        void contentChanged();

        /** A fresh mark wants a name. */
        void nameWanted(StoredMark mark);
    }

    private final PanelContext context;
    private final Listener listener;
    private final MarkDesk marks;
    private final Timer moveTimer = new Timer(MOVE_PAUSE_MS, e -> commitMove());
    private final Timer shelfTimer;
    private Optional<OpenPicture> open = Optional.empty();
    private Optional<Long> chosenMark = Optional.empty();
    private Optional<NewMark> moving = Optional.empty();
    private Optional<String> refusal = Optional.empty();
    private Optional<FitHints> said = Optional.empty();
    private boolean nameNext;
    private boolean fitting;
    private long wanted = -1;

    Desk(PanelContext context, Listener listener) {
        this.context = context;
        this.listener = listener;
        marks = new MarkDesk(context, this::marksChanged);
        moveTimer.setRepeats(false);
        shelfTimer = new Timer(SHELF_PAUSE_MS, e -> context.shelf().refresh());
        shelfTimer.setRepeats(false);
    }

    Optional<OpenPicture> open() {
        return open;
    }

    Optional<Long> chosenMark() {
        return chosenMark;
    }

    Optional<String> refusal() {
        return refusal;
    }

    boolean isFitting() {
        return fitting;
    }

    /** Marks as they are to be shown: the one being moved is where it has been moved to. */
    List<StoredMark> shownMarks() {
        List<StoredMark> shown = new ArrayList<>();
        open.ifPresent(o -> o.marks()
                .forEach(m -> shown.add(
                        chosenMark.equals(Optional.of(m.id())) && moving.isPresent() ? with(m, moving.get()) : m)));
        return shown;
    }

    private static StoredMark with(StoredMark m, NewMark fresh) {
        return new StoredMark(
                m.id(),
                fresh,
                m.longitudes(),
                m.featureName(),
                m.midUtc(),
                m.madeUtc(),
                m.supersededBy(),
                m.withdrawnReason());
    }

    private Optional<StoredMark> chosen() {
        return open.flatMap(o -> o.marks().stream()
                .filter(m -> chosenMark.equals(Optional.of(m.id())))
                .findFirst());
    }

    /** Brings a picture onto the desk, unless it lies there already. */
    void open(ArchivedPicture picture, boolean fitNew) {
        if (picture.id() == wanted) {
            chooseSelected();
            return;
        }
        commitMove();
        wanted = picture.id();
        chosenMark = Optional.empty();
        refusal = Optional.empty();
        said = Optional.empty();
        context.background().promptly(() -> OpenPicture.read(context.workbench(), picture), read -> {
            if (read.picture().id() == wanted) {
                open = Optional.of(read);
                listener.pictureChanged();
                chooseSelected();
                if (fitNew && read.fit().isEmpty() && read.disc().isPresent()) {
                    fit();
                }
            }
        });
    }

    /** What a person says about the picture's orientation; used by the next fit. */
    void say(Optional<FitHints> hints) {
        said = hints;
    }

    /** Fits the disc starting from a circle drawn by hand (picture px). */
    void fitNear(PixelPoint centre, double radiusPx) {
        if (open.isEmpty()) {
            return;
        }
        FitHints known = said.orElse(open.get().hints());
        Optional<Placement> before = open.get().fit().map(f -> f.fit().placement());
        double angle = known.poleAngle()
                .map(FitHints.Angle::valueDeg)
                .or(() -> before.map(Placement::poleAngleDeg))
                .orElse(0.0);
        boolean mirrored =
                known.mirrored().or(() -> before.map(Placement::mirrored)).orElse(false);
        said = Optional.of(new FitHints(
                known.poleAngle(),
                known.mirrored(),
                Optional.of(new Placement(centre.xPx(), centre.yPx(), radiusPx, angle, mirrored))));
        fit();
    }

    /** Fits the disc and keeps what comes of it. */
    void fit() {
        if (open.isEmpty() || fitting) {
            return;
        }
        OpenPicture picture = open.get();
        if (picture.disc().isEmpty()) {
            context.say("Without its planet and its time a picture cannot be fitted; file it again with both.");
            return;
        }
        FitHints hints = said.orElse(picture.hints());
        fitting = true;
        refusal = Optional.empty();
        context.background()
                .run(
                        "Fitting the disc",
                        progress -> context.workbench()
                                .fitter()
                                .fit(picture.pixels(), picture.disc().orElseThrow(), hints, progress)
                                .outcome(),
                        outcome -> fitted(picture, outcome))
                .whenEnded(() -> {
                    fitting = false;
                    listener.contentChanged();
                });
        listener.contentChanged();
    }

    private void fitted(OpenPicture picture, FitOutcome outcome) {
        if (outcome instanceof FitOutcome.Fitted done) {
            Optional<DiscFit> before = picture.fit().map(StoredFit::fit);
            keep(picture, done.fit());
            before.ifPresent(old -> context.edits()
                    .add(new MarkDesk.Step("fit", () -> keep(picture, old), () -> keep(picture, done.fit()))));
        } else if (picture.picture().id() == wanted) {
            refusal = Optional.of(((FitOutcome.Refused) outcome).reason());
        }
    }

    private void keep(OpenPicture picture, DiscFit fit) {
        String ephemeris = picture.disc().orElseThrow().ephemeris();
        context.background()
                .quietly(
                        () -> {
                            context.archive()
                                    .keepFit(
                                            picture.picture().id(),
                                            fit,
                                            ephemeris,
                                            context.workbench().software());
                            return picture.readAgain(context.archive());
                        },
                        fresh -> {
                            if (!fresh.marks().isEmpty()) {
                                marks.measureAgain(fresh);
                            }
                            show(fresh);
                            shelfTimer.restart();
                        });
    }

    private void show(OpenPicture fresh) {
        if (fresh.picture().id() == wanted) {
            open = Optional.of(fresh);
            listener.contentChanged();
        }
    }

    private void marksChanged(Optional<StoredMark> stored) {
        shelfTimer.restart();
        if (open.isEmpty()) {
            return;
        }
        OpenPicture before = open.get();
        boolean name = nameNext && stored.isPresent();
        nameNext = nameNext && stored.isEmpty();
        context.background().quietly(() -> before.readAgain(context.archive()), fresh -> {
            stored.filter(m -> m.mark().pictureId() == wanted).ifPresent(m -> chosenMark = Optional.of(m.id()));
            show(fresh);
            if (name && fresh.picture().id() == wanted) {
                listener.nameWanted(stored.orElseThrow());
            }
        });
    }

    /** Chooses the mark that another panel has chosen on this picture; one not known here was made by that panel, and the marks are read again. */
    private void chooseSelected() {
        context.selection().markId().filter(id -> open.isPresent()).ifPresent(id -> {
            if (isShown(id)) {
                choose(Optional.of(id));
            } else if (open.get().picture().id() == wanted) {
                OpenPicture before = open.get();
                context.background().quietly(() -> before.readAgain(context.archive()), fresh -> {
                    show(fresh);
                    if (isShown(id)) {
                        choose(Optional.of(id));
                    }
                });
            }
        });
    }

    private boolean isShown(long markId) {
        return shownMarks().stream().anyMatch(m -> m.id() == markId);
    }

    /** Chooses a mark, or none. */
    void choose(Optional<Long> markId) {
        if (!markId.equals(chosenMark)) {
            commitMove();
            chosenMark = markId;
            chosen().ifPresentOrElse(
                            m -> context.selection().chooseMark(m.mark().pictureId(), m.featureName(), m.id()),
                            context.selection()::chooseNoMark);
            listener.contentChanged();
        }
    }

    /** Drops a mark, or says why not. */
    void drop(PixelPoint pixel) {
        if (open.isEmpty()) {
            return;
        }
        commitMove();
        OpenPicture picture = open.get();
        if (picture.frame().isEmpty()) {
            context.say("Fit the disc first (F5): without it a mark has no longitude.");
            return;
        }
        Optional<SurfacePoint> place = picture.frame().get().locate(pixel.xPx(), pixel.yPx());
        NewMark mark = MarkDesk.measured(
                picture, pixel, Optional.empty(), "centre", context.workbench().measurer());
        if (place.isPresent() && mark.point().isEmpty()) {
            context.say("Too slantwise to measure: " + Figures.fixed(place.get().emissionDeg(), 0)
                    + "° from the middle of the disc, marks are trusted to "
                    + Figures.fixed(MarkMeasurer.LARGEST_EMISSION_DEG, 0) + "°.");
            return;
        }
        nameNext = true;
        marks.add(mark);
    }

    /** Names the chosen mark. */
    void name(Feature feature) {
        chosen().ifPresent(m -> marks.name(m, feature));
    }

    /** Moves the chosen mark by so much (picture px); kept in the archive once it rests. */
    boolean move(double dxPx, double dyPx) {
        Optional<StoredMark> mark = chosen();
        if (mark.isEmpty() || open.flatMap(OpenPicture::frame).isEmpty()) {
            return false;
        }
        NewMark now = moving.orElse(mark.get().mark());
        PixelPoint to = new PixelPoint(now.pixel().xPx() + dxPx, now.pixel().yPx() + dyPx);
        NewMark fresh = MarkDesk.measured(open.orElseThrow(), to, now.featureId(), now.what(), now.measurer());
        if (fresh.point().isPresent() == now.point().isPresent()) {
            moving = Optional.of(fresh);
            moveTimer.restart();
            listener.contentChanged();
        }
        return true;
    }

    private void commitMove() {
        moveTimer.stop();
        if (moving.isPresent() && chosen().isPresent()) {
            marks.replace(chosen().get(), moving.get(), "moving", "moved by hand");
        }
        moving = Optional.empty();
    }

    /** Where the chosen mark is, for the magnifier. */
    Optional<PixelPoint> chosenPixel() {
        return moving.map(NewMark::pixel).or(() -> chosen().map(m -> m.mark().pixel()));
    }

    /** Takes the chosen mark out of use. */
    void withdraw() {
        Optional<StoredMark> mark = chosen();
        moving = Optional.empty();
        moveTimer.stop();
        chosenMark = Optional.empty();
        mark.ifPresent(marks::withdraw);
    }

    /** Goes on to the picture so many places later in the same night, if there is one. */
    boolean step(int places) {
        if (open.isEmpty() || open.get().picture().night().isEmpty()) {
            return false;
        }
        ArchivedPicture here = open.get().picture();
        List<ArchivedPicture> night = context.shelf().ofNight(here.night().get(), here.planetId());
        for (int i = 0; i < night.size(); i++) {
            int to = i + places;
            if (night.get(i).id() == here.id() && to >= 0 && to < night.size()) {
                context.selection().choosePicture(night.get(to).id());
                return true;
            }
        }
        context.say(
                places > 0 ? "That was the last picture of the night." : "That was the first picture of the night.");
        return false;
    }
}
