/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.List;
import java.util.Optional;
import javax.swing.Timer;
import oblate.archive.Feature;
import oblate.archive.NewMark;
import oblate.archive.StoredMark;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.disc.SurfacePoint;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/**
 * What a hand does to the marks of the picture on the desk: drops, moves, names, withdraws. What the archive does not take stays in the hand, with the reason,
 * and can be tried again; when the picture is left it waits there. On the event thread only.
 */
final class MarkHand {
    private static final Texts TEXTS = Texts.of(MarkHand.class);
    private static final int MOVE_PAUSE_MS = 400;
    private final PanelContext context;
    private final Desk desk;
    private final MarkKeeper keeper;
    private final Timer moveTimer = new Timer(MOVE_PAUSE_MS, e -> commitMove());
    private Optional<Long> chosenId = Optional.empty();
    private Optional<InHand> hand = Optional.empty();
    private Optional<InHand> sent = Optional.empty();
    private Optional<String> trouble = Optional.empty();

    MarkHand(PanelContext context, Desk desk, MarkDesk marks) {
        this.context = context;
        this.desk = desk;
        keeper = new MarkKeeper(context, desk, marks);
        moveTimer.setRepeats(false);
    }

    /** The mark that is chosen: the one being dropped, or a row. */
    Optional<Long> chosenId() {
        return isFresh() ? Optional.of(ShownMarks.NOT_KEPT) : chosenId;
    }

    /** Why the archive did not take what is in the hand. */
    Optional<String> trouble() {
        return trouble;
    }

    /** Whether something is in the hand that the archive did not take. */
    boolean isHeldBack() {
        return trouble.isPresent() && hand.isPresent();
    }

    private boolean isFresh() {
        return hand.filter(InHand::isFresh).isPresent();
    }

    private Optional<InHand> moving() {
        return hand.filter(h -> chosenId.filter(h::isOf).isPresent());
    }

    /** Marks as they are to be shown: the one being moved is where it has been moved to, a fresh one is there before it is kept. */
    List<StoredMark> shown() {
        return desk.open().map(o -> ShownMarks.of(o, hand)).orElse(List.of());
    }

    private Optional<StoredMark> chosen() {
        return desk.open().flatMap(o -> o.marks().stream()
                .filter(m -> chosenId.equals(Optional.of(m.id())))
                .findFirst());
    }

    /** Lets go of everything, for another picture; what the archive did not take waits on this one, and that is said. */
    void leave() {
        if (isHeldBack()) {
            keeper.letWait(hand.orElseThrow(), trouble.orElseThrow());
        } else {
            commitMove();
        }
        forget();
    }

    /** Another picture lies on the desk: a mark that waits on it is in the hand again. */
    void arrive(long pictureId) {
        keeper.take(pictureId).ifPresent(w -> {
            hand = Optional.of(w.what());
            chosenId = w.what().old().map(StoredMark::id);
            trouble = Optional.of(w.why());
            desk.tellContent();
        });
    }

    private void forget() {
        moveTimer.stop();
        chosenId = Optional.empty();
        hand = Optional.empty();
        sent = Optional.empty();
        trouble = Optional.empty();
    }

    /** Chooses a mark, or none; one that is held back is tried again first, so that it is not mixed up with the other. */
    void choose(Optional<Long> markId) {
        if (markId.equals(chosenId)) {
            return;
        }
        if (isHeldBack()) {
            tryAgain();
            return;
        }
        commitMove();
        chosenId = markId;
        chosen().flatMap(StoredMark::featureName)
                .ifPresent(f -> context.selection().chooseFeature(Optional.of(f)));
        desk.tellContent();
    }

    /** Drops a mark, or says why not. */
    void drop(PixelPoint pixel) {
        if (desk.open().isEmpty() || isFresh() || isHeldBack()) {
            tryAgain();
            return;
        }
        commitMove();
        OpenPicture picture = desk.open().get();
        if (picture.frame().isEmpty()) {
            context.say(TEXTS.text("mark.fit.first"));
            return;
        }
        Optional<SurfacePoint> place = picture.frame().get().locate(pixel.xPx(), pixel.yPx());
        NewMark mark = MarkDesk.measured(
                picture, pixel, Optional.empty(), "centre", context.workbench().measurer());
        if (place.isPresent() && mark.point().isEmpty()) {
            context.say(TEXTS.text(
                    "mark.slantwise",
                    Figures.fixed(place.get().emissionDeg(), 0),
                    Figures.fixed(MarkMeasurer.LARGEST_EMISSION_DEG, 0)));
            return;
        }
        chosenId = Optional.empty();
        hand = Optional.of(InHand.fresh(mark));
        send(hand.get());
    }

    /** Offers the archive what is in the hand. */
    private void send(InHand what) {
        boolean again = trouble.isPresent();
        trouble = Optional.empty();
        sent = Optional.of(what);
        desk.tellContent();
        keeper.keep(what, new MarkDesk.Answer() {
            @Override
            public void done(StoredMark stored) {
                trouble = Optional.empty();
                if (again) {
                    context.say(TEXTS.text("mark.kept.now"));
                }
                what.name().ifPresent(f -> context.selection().chooseFeature(Optional.of(f.name())));
                desk.readAgain(() -> kept(what, stored));
            }

            @Override
            public void failed(String why) {
                heldBack(what, why);
            }
        });
    }

    private boolean isSameMark(InHand what) {
        return hand.filter(h -> h.old().equals(what.old())).isPresent();
    }

    private void kept(InHand what, StoredMark stored) {
        if (what.isFresh() || chosenId.filter(what::isOf).isPresent()) {
            chosenId = Optional.of(stored.id());
        }
        if (isSameMark(what)) {
            // Moved on meanwhile: that move is kept when it rests.
            hand = hand.filter(h -> !h.mark().pixel().equals(what.mark().pixel()))
                    .map(h -> InHand.moved(stored, h.mark()));
            if (hand.isPresent()) {
                moveTimer.restart();
            }
        }
        sent = sent.filter(s -> !s.equals(what));
        desk.tellContent();
        if (what.isFresh()) {
            desk.wantName(stored);
        }
    }

    private void heldBack(InHand what, String why) {
        sent = sent.filter(s -> !s.equals(what));
        if (hand.isPresent() && !isSameMark(what)) {
            // The hand has taken hold of another mark since.
            keeper.letWait(what, why);
            return;
        }
        hand = hand.or(() -> Optional.of(what));
        trouble = Optional.of(why);
        context.say(TEXTS.text("mark.not.kept", why));
        desk.tellContent();
    }

    /** Offers the archive again what it did not take. */
    void tryAgain() {
        if (isHeldBack()) {
            send(hand.orElseThrow());
        }
    }

    /** Names the chosen mark, keeping a move that is under way with it. */
    void name(Feature feature) {
        moveTimer.stop();
        chosen().ifPresent(m -> {
            NewMark as = moving().map(InHand::mark).orElse(m.mark());
            hand = Optional.of(new InHand(Optional.of(m), as, Optional.of(feature)));
            send(hand.get());
        });
    }

    /** Moves the chosen mark by so much (picture px); kept in the archive once it rests. */
    boolean move(double dxPx, double dyPx) {
        boolean moved = moveInHand(dxPx, dyPx);
        if (moving().isPresent()) {
            moveTimer.restart();
        }
        return moved;
    }

    /** Keeps a move that was only in the hand. */
    void settleMove() {
        commitMove();
    }

    /** Moves the chosen mark by so much (picture px), as long as it is being named: name and place are kept together. */
    boolean moveInHand(double dxPx, double dyPx) {
        if (desk.open().flatMap(OpenPicture::frame).isEmpty()) {
            return false;
        }
        if (isFresh()) {
            hand = hand.map(h -> h.at(moved(h.mark(), dxPx, dyPx)));
            desk.tellContent();
            return true;
        }
        Optional<StoredMark> mark = chosen();
        mark.ifPresent(m -> {
            InHand now = moving().orElse(InHand.moved(m, m.mark()));
            NewMark to = moved(now.mark(), dxPx, dyPx);
            if (to.point().isPresent() == now.mark().point().isPresent()) {
                hand = Optional.of(now.at(to));
                desk.tellContent();
            }
        });
        return mark.isPresent();
    }

    private NewMark moved(NewMark now, double dxPx, double dyPx) {
        PixelPoint to = new PixelPoint(now.pixel().xPx() + dxPx, now.pixel().yPx() + dyPx);
        return MarkDesk.measured(desk.open().orElseThrow(), to, now.featureId(), now.what(), now.measurer());
    }

    private void commitMove() {
        moveTimer.stop();
        moving().filter(h -> !sent.equals(Optional.of(h))).ifPresent(this::send);
    }

    /** Where the chosen mark is, for the magnifier. */
    Optional<PixelPoint> chosenPixel() {
        return hand.filter(h -> h.isFresh() || moving().isPresent())
                .map(InHand::mark)
                .or(() -> chosen().map(StoredMark::mark))
                .map(NewMark::pixel);
    }

    /** Takes the chosen mark out of use, or lets go of what was never kept. */
    void withdraw() {
        moveTimer.stop();
        if (isFresh() || isHeldBack()) {
            forget();
            desk.tellContent();
            return;
        }
        Optional<StoredMark> mark = chosen();
        hand = Optional.empty();
        mark.ifPresent(m -> keeper.withdraw(m, () -> {
            chosenId = Optional.empty();
            desk.readAgain(desk::tellContent);
        }));
    }

    /** After an undo or a redo: shows the mark that is there now. */
    void restored(Optional<Long> markId) {
        moveTimer.stop();
        hand = Optional.empty();
        sent = Optional.empty();
        trouble = Optional.empty();
        chosenId = markId;
    }
}
