/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
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
 * and can be tried again. On the event thread only.
 */
final class MarkHand {
    private static final Texts TEXTS = Texts.of(MarkHand.class);
    /** Number of a mark that has no row yet. */
    static final long NOT_KEPT = -1;

    private static final int MOVE_PAUSE_MS = 400;
    private final PanelContext context;
    private final Desk desk;
    private final MarkDesk marks;
    private final Timer moveTimer = new Timer(MOVE_PAUSE_MS, e -> commitMove());
    private Optional<Long> chosenId = Optional.empty();
    private Optional<NewMark> fresh = Optional.empty();
    private Optional<NewMark> moving = Optional.empty();
    private Optional<String> trouble = Optional.empty();

    MarkHand(PanelContext context, Desk desk, MarkDesk marks) {
        this.context = context;
        this.desk = desk;
        this.marks = marks;
        moveTimer.setRepeats(false);
    }

    Optional<Long> chosenId() {
        return chosenId;
    }

    /** Why the archive did not take what is in the hand. */
    Optional<String> trouble() {
        return trouble;
    }

    /** Whether something is in the hand that the archive did not take. */
    boolean isHeldBack() {
        return trouble.isPresent() && (fresh.isPresent() || moving.isPresent());
    }

    /** Marks as they are to be shown: the one being moved is where it has been moved to, a fresh one is there before it is kept. */
    List<StoredMark> shown() {
        List<StoredMark> shown = new ArrayList<>();
        desk.open().ifPresent(o -> {
            o.marks()
                    .forEach(m -> shown.add(
                            chosenId.equals(Optional.of(m.id())) && moving.isPresent() ? with(m, moving.get()) : m));
            fresh.ifPresent(f -> shown.add(new StoredMark(
                    NOT_KEPT,
                    f,
                    Map.of(),
                    Optional.empty(),
                    o.picture().time().orElseThrow().midUtc(),
                    o.picture().time().orElseThrow().midUtc(),
                    Optional.empty(),
                    Optional.empty())));
        });
        return shown;
    }

    private static StoredMark with(StoredMark m, NewMark moved) {
        return new StoredMark(
                m.id(),
                moved,
                m.longitudes(),
                m.featureName(),
                m.midUtc(),
                m.madeUtc(),
                m.supersededBy(),
                m.withdrawnReason());
    }

    private Optional<StoredMark> chosen() {
        return desk.open().flatMap(o -> o.marks().stream()
                .filter(m -> chosenId.equals(Optional.of(m.id())))
                .findFirst());
    }

    /** Lets go of everything, for another picture; what the archive did not take is lost, and said so. */
    void leave() {
        commitMove();
        if (isHeldBack()) {
            context.say(TEXTS.text("mark.left.behind", trouble.orElseThrow()));
        }
        forget();
    }

    private void forget() {
        chosenId = Optional.empty();
        fresh = Optional.empty();
        moving = Optional.empty();
        trouble = Optional.empty();
    }

    /** Chooses a mark, or none. */
    void choose(Optional<Long> markId) {
        if (!markId.equals(chosenId)) {
            commitMove();
            chosenId = markId;
            chosen().flatMap(StoredMark::featureName)
                    .ifPresent(f -> context.selection().chooseFeature(Optional.of(f)));
            desk.tellContent();
        }
    }

    /** Drops a mark, or says why not. */
    void drop(PixelPoint pixel) {
        if (desk.open().isEmpty() || fresh.isPresent()) {
            fresh.ifPresent(f -> tryAgain());
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
        fresh = Optional.of(mark);
        keepFresh();
    }

    private void keepFresh() {
        trouble = Optional.empty();
        desk.tellContent();
        marks.add(
                fresh.orElseThrow(),
                answer(stored -> desk.readAgain(() -> {
                    fresh = Optional.empty();
                    chosenId = Optional.of(stored.id());
                    desk.tellContent();
                    desk.wantName(stored);
                })));
    }

    private MarkDesk.Answer answer(Consumer<StoredMark> done) {
        return new MarkDesk.Answer() {
            @Override
            public void done(StoredMark mark) {
                trouble = Optional.empty();
                desk.changedShelf();
                done.accept(mark);
            }

            @Override
            public void failed(String why) {
                trouble = Optional.of(why);
                context.say(TEXTS.text("mark.not.kept", why));
                desk.tellContent();
            }
        };
    }

    /** Offers the archive again what it did not take. */
    void tryAgain() {
        if (trouble.isPresent() && fresh.isPresent()) {
            keepFresh();
        } else if (trouble.isPresent() && moving.isPresent()) {
            commitMove();
        }
    }

    /** Names the chosen mark, keeping a move that is under way with it. */
    void name(Feature feature) {
        moveTimer.stop();
        chosen().ifPresent(m -> {
            NewMark as = moving.orElse(m.mark());
            marks.name(m, as, feature, answer(stored -> {
                context.selection().chooseFeature(Optional.of(feature.name()));
                settle(stored);
            }));
        });
    }

    private void settle(StoredMark stored) {
        desk.readAgain(() -> {
            moving = Optional.empty();
            chosenId = Optional.of(stored.id());
            desk.tellContent();
        });
    }

    /** Moves the chosen mark by so much (picture px); kept in the archive once it rests. */
    boolean move(double dxPx, double dyPx) {
        boolean moved = moveInHand(dxPx, dyPx);
        if (moving.isPresent()) {
            moveTimer.restart();
        }
        return moved;
    }

    /** Keeps a move that was only in the hand. */
    void settleMove() {
        if (moving.isPresent()) {
            commitMove();
        }
    }

    /** Moves the chosen mark by so much (picture px), as long as it is being named: name and place are kept together. */
    boolean moveInHand(double dxPx, double dyPx) {
        if (desk.open().flatMap(OpenPicture::frame).isEmpty()) {
            return false;
        }
        if (fresh.isPresent()) {
            fresh = Optional.of(moved(fresh.get(), dxPx, dyPx));
            desk.tellContent();
            return true;
        }
        Optional<StoredMark> mark = chosen();
        mark.ifPresent(m -> {
            NewMark now = moving.orElse(m.mark());
            NewMark to = moved(now, dxPx, dyPx);
            if (to.point().isPresent() == now.point().isPresent()) {
                moving = Optional.of(to);
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
        if (moving.isPresent() && chosen().isPresent()) {
            NewMark to = moving.get();
            marks.move(
                    chosen().get(),
                    to,
                    answer(stored -> desk.readAgain(() -> {
                        // Moved on meanwhile: that move is kept when it rests.
                        moving = moving.filter(m -> !m.equals(to));
                        chosenId = Optional.of(stored.id());
                        desk.tellContent();
                    })));
        }
    }

    /** Where the chosen mark is, for the magnifier. */
    Optional<PixelPoint> chosenPixel() {
        return fresh.or(() -> moving).map(NewMark::pixel).or(() -> chosen().map(
                        m -> m.mark().pixel()));
    }

    /** Takes the chosen mark out of use, or lets go of one that was never kept. */
    void withdraw() {
        moveTimer.stop();
        if (fresh.isPresent()) {
            forget();
            desk.tellContent();
            return;
        }
        Optional<StoredMark> mark = chosen();
        moving = Optional.empty();
        mark.ifPresent(m -> marks.withdraw(m, answer(stored -> {
            chosenId = Optional.empty();
            desk.readAgain(desk::tellContent);
        })));
    }

    /** After an undo or a redo: shows the mark that is there now. */
    void restored(Optional<Long> markId) {
        moveTimer.stop();
        moving = Optional.empty();
        chosenId = markId;
    }
}
