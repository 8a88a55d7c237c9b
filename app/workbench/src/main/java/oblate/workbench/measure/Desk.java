/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.List;
import java.util.Optional;
import javax.swing.Timer;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredMark;
import oblate.workbench.Edit;
import oblate.workbench.EditHistory;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** What lies on the measuring desk and what comes next. On the event thread only; work happens in the background. */
final class Desk {
    private static final Texts TEXTS = Texts.of(Desk.class);
    private static final int SHELF_PAUSE_MS = 800;
    private static final int AHEAD = 2;

    /** What the desk tells. */
    interface Listener {
        /** Whether the desk is looked at. */
        boolean isSeen();

        /** Another picture lies on the desk, or none with a reason. */
        void pictureChanged();

        /** Fit or marks of the picture have changed. */
        void contentChanged();

        /** A fresh mark wants a name. */
        void nameWanted(StoredMark mark);

        /** These pictures come next. */
        void nextPlanned(List<ArchivedPicture> next);
    }

    private final PanelContext context;
    private final Listener listener;
    private final MarkDesk marks;
    private final MarkHand hand;
    private final FitDesk fits;
    private final Prefetch prefetch;
    private final Timer shelfTimer;
    private Optional<OpenPicture> open = Optional.empty();
    private Optional<Pyramid> pyramid = Optional.empty();
    private Optional<String> trouble = Optional.empty();
    private Optional<EditHistory.Restored> restoring = Optional.empty();
    private long wanted = -1;

    Desk(PanelContext context, Listener listener) {
        this.context = context;
        this.listener = listener;
        marks = new MarkDesk(context);
        hand = new MarkHand(context, this, marks);
        fits = new FitDesk(context, this, marks);
        prefetch = new Prefetch(context);
        shelfTimer = new Timer(SHELF_PAUSE_MS, e -> context.shelf().refresh());
        shelfTimer.setRepeats(false);
        context.edits().whenRestored(this::restored);
    }

    Optional<OpenPicture> open() {
        return open;
    }

    /** The pixels of the picture on the desk, made ready for showing. */
    Optional<Pyramid> pyramid() {
        return pyramid;
    }

    /** Why no picture lies on the desk. */
    Optional<String> trouble() {
        return trouble;
    }

    MarkHand hand() {
        return hand;
    }

    FitDesk fits() {
        return fits;
    }

    /** Whether a picture lies on the desk, or is on its way there. */
    boolean isOn(long pictureId) {
        return wanted == pictureId;
    }

    boolean isWanted(OpenPicture picture) {
        return picture.picture().id() == wanted;
    }

    /** Brings a picture onto the desk, unless it lies there already. */
    void open(ArchivedPicture picture) {
        if (picture.id() == wanted) {
            chooseSelected();
            return;
        }
        hand.leave();
        fits.leave();
        wanted = picture.id();
        Optional<Prefetch.Ready> ready = prefetch.take(picture.id());
        prefetch.makeWay();
        if (ready.isPresent()) {
            // Fit and marks may have come from elsewhere since it was made ready.
            PictureOpening made = ready.get().opening();
            OpenPicture read = made.picture().orElseThrow();
            context.background()
                    .promptly(
                            () -> read.readAgain(context.archive()),
                            fresh -> opened(
                                    picture.id(),
                                    new PictureOpening(Optional.of(fresh), made.pyramid(), Optional.empty()),
                                    ready));
        } else {
            context.background()
                    .promptly(
                            () -> PictureOpening.of(context.workbench(), picture),
                            opening -> opened(picture.id(), opening, Optional.empty()));
        }
    }

    /** Takes the mark chosen elsewhere, such as a point of a chart, into the hand. */
    private void chooseSelected() {
        context.selection().markId().filter(id -> open.isPresent()).ifPresent(id -> {
            if (isShown(id)) {
                hand.choose(Optional.of(id));
            } else {
                readAgain(() -> {
                    listener.contentChanged();
                    if (isShown(id)) {
                        hand.choose(Optional.of(id));
                    }
                });
            }
        });
    }

    private boolean isShown(long markId) {
        return open.filter(o -> o.marks().stream().anyMatch(m -> m.id() == markId))
                .isPresent();
    }

    private boolean fitsNew() {
        return context.settings().flag("fit.new", true);
    }

    private void opened(long id, PictureOpening opening, Optional<Prefetch.Ready> ready) {
        if (id != wanted) {
            return;
        }
        open = opening.picture();
        pyramid = opening.pyramid();
        trouble = opening.trouble();
        trouble.ifPresent(context::say);
        listener.pictureChanged();
        chooseSelected();
        hand.arrive(id);
        restoring.filter(r -> r.edit().pictureId() == id).ifPresent(r -> hand.choose(r.markId()));
        restoring = Optional.empty();
        boolean unfitted =
                open.filter(o -> o.fit().isEmpty() && o.disc().isPresent()).isPresent();
        if (!unfitted || !fitsNew()) {
            fitSettled();
        } else if (ready.flatMap(Prefetch.Ready::outcome).isPresent()) {
            fits.fitted(open.orElseThrow(), ready.get().outcome().orElseThrow());
        } else {
            fits.fit();
        }
    }

    /** Puts long work that can wait aside. */
    void makeWay() {
        prefetch.makeWay();
    }

    /** The picture on the desk needs no more work: the next ones are made ready. */
    void fitSettled() {
        Optional<ArchivedPicture> here = context.shelf().picture(wanted);
        here.ifPresent(picture -> {
            List<ArchivedPicture> next = NextPictures.unmeasured(context.shelf().pictures(), picture).stream()
                    .limit(AHEAD)
                    .toList();
            prefetch.plan(next, fitsNew());
            listener.nextPlanned(next);
        });
    }

    /** Shows a picture as read afresh, if it still lies here. */
    void show(OpenPicture fresh) {
        if (isWanted(fresh)) {
            open = Optional.of(fresh);
            listener.contentChanged();
        }
    }

    /** Reads marks and fit again, then does something, if the picture still lies here. */
    void readAgain(Runnable then) {
        open.ifPresent(before -> context.background().quietly(() -> before.readAgain(context.archive()), fresh -> {
            if (isWanted(fresh)) {
                open = Optional.of(fresh);
                then.run();
            }
        }));
    }

    void tellContent() {
        listener.contentChanged();
    }

    void wantName(StoredMark mark) {
        listener.nameWanted(mark);
    }

    /** The archive was changed: everyone else is told once it rests. */
    void changedShelf() {
        shelfTimer.restart();
    }

    private void restored(EditHistory.Restored restored) {
        long id = restored.edit().pictureId();
        boolean marksOrFit =
                !(restored.edit() instanceof Edit.FactsCorrected) && !(restored.edit() instanceof Edit.TimesSettled);
        if (!listener.isSeen()) {
            // What lies here may have changed: it is read again when it is looked at.
            wanted = -1;
        } else if (id != wanted || open.isEmpty()) {
            // What is undone is shown.
            restoring = Optional.of(restored);
            context.selection().choosePicture(id);
        } else if (marksOrFit) {
            hand.restored(restored.markId());
            readAgain(() -> {
                listener.contentChanged();
                if (open.orElseThrow().hasStaleMarks()) {
                    marks.measureAgain(open.orElseThrow(), this::show);
                }
            });
        } else {
            reopen();
        }
    }

    /** Opens the picture on the desk again, after its facts have changed. */
    void reopen() {
        long id = wanted;
        wanted = -1;
        context.background().quietly(() -> context.archive().picture(id), picture -> picture.ifPresent(this::open));
    }

    /** Accepts the fit and goes on to the next picture without marks, if there is one, unless something is left in the hand. */
    void acceptAndGoOn() {
        if (hand.isHeldBack()) {
            hand.tryAgain();
            return;
        }
        fits.acceptByEye();
        Optional<ArchivedPicture> here = context.shelf().picture(wanted);
        List<ArchivedPicture> next = here.map(
                        p -> NextPictures.unmeasured(context.shelf().pictures(), p))
                .orElse(List.of());
        if (next.isEmpty()) {
            context.say(TEXTS.text("say.none.left"));
        } else {
            context.selection().choosePicture(next.get(0).id());
        }
    }

    /** Goes on to the picture so many places later in the same night, if there is one. */
    void step(int places) {
        if (open.isEmpty() || open.get().picture().night().isEmpty()) {
            return;
        }
        ArchivedPicture here = open.get().picture();
        List<ArchivedPicture> night = context.shelf().ofNight(here.night().get(), here.planetId());
        for (int i = 0; i < night.size(); i++) {
            int to = i + places;
            if (night.get(i).id() == here.id() && to >= 0 && to < night.size()) {
                context.selection().choosePicture(night.get(to).id());
                return;
            }
        }
        context.say(places > 0 ? TEXTS.text("say.last") : TEXTS.text("say.first"));
    }
}
