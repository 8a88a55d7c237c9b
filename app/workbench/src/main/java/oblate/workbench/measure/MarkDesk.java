/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import oblate.archive.Archive;
import oblate.archive.ArchiveProblem;
import oblate.archive.Feature;
import oblate.archive.MarkSearch;
import oblate.archive.NewMark;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.base.ProblemException;
import oblate.disc.DiscFrame;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.workbench.Edit;
import oblate.workbench.EditHistory;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/**
 * Adds, replaces and withdraws marks in the archive, each so that it can be undone. Archive calls run in the background in order; a mark that was replaced
 * meanwhile is found under whatever number it has by then.
 */
final class MarkDesk {
    private static final Texts TEXTS = Texts.of(MarkDesk.class);
    /** How well a hand places the pointer on a feature, each way (px): of a feature's middle, not of a star. */
    static final double PICK_SIGMA_PX = 0.7;

    private final PanelContext context;

    MarkDesk(PanelContext context) {
        this.context = context;
    }

    /** What is told on the event thread: the mark as it is then, or one sentence why the archive did not take it. */
    interface Answer {
        void done(StoredMark mark);

        void failed(String why);
    }

    private Archive archive() {
        return context.archive();
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

    void add(NewMark mark, Answer answer) {
        context.edits()
                .perform(
                        () -> {
                            StoredMark stored = archive().addMark(mark);
                            return EditHistory.Done.of(new Edit.MarkAdded(mark.pictureId(), stored.id()), stored);
                        },
                        answer::done,
                        answer::failed);
    }

    void move(StoredMark old, NewMark fresh, Answer answer) {
        replace(old, () -> fresh, Edit.Change.MOVED, answer);
    }

    /** Names a mark, first making the feature when it is new. */
    void name(StoredMark old, NewMark as, Feature feature, Answer answer) {
        replace(
                old,
                () -> {
                    Feature known = feature.id() > 0 ? feature : archive().addFeature(feature);
                    return named(as, Optional.of(known.id()));
                },
                Edit.Change.NAMED,
                answer);
    }

    private void replace(
            StoredMark old, java.util.function.Supplier<NewMark> fresh, Edit.Change change, Answer answer) {
        context.edits()
                .perform(
                        () -> {
                            StoredMark now = living(old);
                            String reason =
                                    change == Edit.Change.MOVED ? TEXTS.text("why.moved") : TEXTS.text("why.named");
                            StoredMark stored = archive().supersedeMark(now.id(), fresh.get(), reason);
                            return EditHistory.Done.of(
                                    new Edit.MarkReplaced(stored.mark().pictureId(), now.id(), stored.id(), change),
                                    stored);
                        },
                        answer::done,
                        answer::failed);
    }

    void withdraw(StoredMark mark, Answer answer) {
        context.edits()
                .perform(
                        () -> {
                            StoredMark now = living(mark);
                            archive().withdrawMark(now.id(), TEXTS.text("why.withdrawn"));
                            return EditHistory.Done.of(
                                    new Edit.MarkWithdrawn(now.mark().pictureId(), now.id()), now);
                        },
                        answer::done,
                        answer::failed);
    }

    private StoredMark living(StoredMark mark) {
        return context.edits()
                .livingMark(mark.mark().pictureId(), mark.id())
                .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_MARK, mark.id()));
    }

    /** Measures a picture's marks again after its disc was fitted anew; what can no longer be measured stays as it was. Not an edit: it follows from one. */
    void measureAgain(OpenPicture open, Consumer<OpenPicture> whenDone) {
        context.background()
                .quietly(
                        () -> {
                            List<StoredMark> marks = archive()
                                    .marks(MarkSearch.ofPicture(open.picture().id()));
                            for (StoredMark mark : marks) {
                                NewMark old = mark.mark();
                                NewMark fresh =
                                        measured(open, old.pixel(), old.featureId(), old.what(), old.measurer());
                                if (fresh.point().isPresent() == old.point().isPresent()) {
                                    archive().supersedeMark(mark.id(), fresh, TEXTS.text("why.fitted.anew"));
                                }
                            }
                            return open.readAgain(archive());
                        },
                        whenDone);
    }
}
