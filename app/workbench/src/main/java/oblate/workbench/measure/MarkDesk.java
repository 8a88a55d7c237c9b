/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import oblate.archive.Archive;
import oblate.archive.Feature;
import oblate.archive.MarkSearch;
import oblate.archive.NewMark;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.disc.DiscFrame;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.workbench.EditHistory;
import oblate.workbench.PanelContext;

/**
 * Adds, moves, names and withdraws marks in the archive, and remembers how to undo it. Archive calls run in the background in order; a mark that
 * was superseded is followed to the one that replaced it, so that an undo finds it under whatever number it has by then.
 */
final class MarkDesk {
    /** How well a hand places the pointer on a feature, each way (px): of a feature's middle, not of a star. */
    static final double PICK_SIGMA_PX = 0.7;

    private final PanelContext context;
    private final Consumer<Optional<StoredMark>> whenChanged;
    private final Map<Long, Long> replacedBy = new ConcurrentHashMap<>();

    /**
     * @param whenChanged told on the event thread after every change, with the mark that is to be chosen then
     */
    MarkDesk(PanelContext context, Consumer<Optional<StoredMark>> whenChanged) {
        this.context = context;
        this.whenChanged = whenChanged;
    }

    private Archive archive() {
        return context.archive();
    }

    /** Number a mark has by now. */
    long current(long markId) {
        long id = markId;
        while (replacedBy.containsKey(id)) {
            id = replacedBy.get(id);
        }
        return id;
    }

    /** What a pixel measures on a fitted picture: a place on the globe, or none beside the disc. */
    static NewMark measured(
            OpenPicture open, PixelPoint pixel, Optional<Long> featureId, String what, String measurer) {
        StoredFit fit = open.fit().orElseThrow();
        DiscFrame frame = open.frame().orElseThrow();
        Optional<MarkMeasurer.Measured> place =
                new MarkMeasurer().measure(frame, fit.fit().covariance(), pixel, PICK_SIGMA_PX, open.timeSigmaS());
        return new NewMark(
                open.picture().id(),
                Optional.of(fit.id()),
                featureId,
                pixel,
                PICK_SIGMA_PX,
                place.map(MarkMeasurer.Measured::point),
                place.map(MarkMeasurer.Measured::errors),
                what,
                measurer);
    }

    static NewMark named(NewMark m, Optional<Long> featureId) {
        return new NewMark(
                m.pictureId(),
                m.fitId(),
                featureId,
                m.pixel(),
                m.pickSigmaPx(),
                m.point(),
                m.errors(),
                m.what(),
                m.measurer());
    }

    void add(NewMark mark) {
        // The number is known once the call has run; later calls run after it, so that they find it set.
        AtomicLong id = new AtomicLong();
        perform(() -> {
            StoredMark stored = archive().addMark(mark);
            id.set(stored.id());
            return Optional.of(stored);
        });
        remember("mark", () -> withdrawNow(id::get, "undone"), () -> addAgain(id::get, mark));
    }

    void replace(StoredMark old, NewMark fresh, String what, String reason) {
        supersede(old.id(), fresh, reason);
        remember(
                what,
                () -> supersede(old.id(), old.mark(), "undone: " + reason),
                () -> supersede(old.id(), fresh, reason));
    }

    /** Names a mark, first making the feature when it is new. */
    void name(StoredMark mark, Feature feature) {
        context.background()
                .quietly(() -> feature.id() > 0 ? feature : archive().addFeature(feature), known -> {
                    replace(mark, named(mark.mark(), Optional.of(known.id())), "naming", "named " + known.name());
                    context.selection().chooseFeature(Optional.of(known.name()));
                });
    }

    void withdraw(StoredMark mark) {
        withdrawNow(mark::id, "withdrawn by hand");
        remember(
                "withdrawing", () -> addAgain(mark::id, mark.mark()), () -> withdrawNow(mark::id, "withdrawn by hand"));
    }

    /** Measures a picture's marks again after its disc was fitted anew; what can no longer be measured stays as it was. */
    void measureAgain(OpenPicture open) {
        perform(() -> {
            for (StoredMark mark :
                    archive().marks(MarkSearch.ofPicture(open.picture().id()))) {
                NewMark old = mark.mark();
                NewMark fresh = measured(open, old.pixel(), old.featureId(), old.what(), old.measurer());
                if (fresh.point().isPresent() == old.point().isPresent()) {
                    StoredMark stored = archive().supersedeMark(mark.id(), fresh, "the disc was fitted anew");
                    replacedBy.put(mark.id(), stored.id());
                }
            }
            return Optional.empty();
        });
    }

    private void supersede(long markId, NewMark fresh, String reason) {
        perform(() -> {
            long id = current(markId);
            StoredMark stored = archive().supersedeMark(id, fresh, reason);
            replacedBy.put(id, stored.id());
            return Optional.of(stored);
        });
    }

    private void addAgain(LongSupplier markId, NewMark mark) {
        perform(() -> {
            long id = current(markId.getAsLong());
            StoredMark stored = archive().addMark(mark);
            replacedBy.put(id, stored.id());
            return Optional.of(stored);
        });
    }

    private void withdrawNow(LongSupplier markId, String reason) {
        perform(() -> {
            archive().withdrawMark(current(markId.getAsLong()), reason);
            return Optional.empty();
        });
    }

    private void perform(Supplier<Optional<StoredMark>> call) {
        context.background().quietly(call, whenChanged);
    }

    private void remember(String what, Runnable undo, Runnable redo) {
        context.edits().add(new Step(what, undo, redo));
    }

    /** One step that can be undone. */
    record Step(String what, Runnable back, Runnable again) implements EditHistory.Edit {
        @Override
        public void undo() {
            back.run();
        }

        @Override
        public void redo() {
            again.run();
        }
    }
}
