/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.Optional;
import java.util.function.Consumer;
import oblate.archive.Archive;
import oblate.archive.Feature;
import oblate.archive.NewMark;
import oblate.archive.StoredMark;
import oblate.workbench.EditHistory;
import oblate.workbench.PanelContext;

/** Moves a mark to another feature by a row that supersedes it, with the reason; can be undone. On the event thread. */
final class MarkMove implements EditHistory.Edit {
    private final PanelContext context;
    private final StoredMark before;
    private final String feature;
    private final String reason;
    private final Consumer<StoredMark> whenMoved;
    private volatile long current;

    /**
     * @param before the mark as it is
     * @param feature name of the feature it is to belong to
     * @param whenMoved told of the mark that replaced it
     */
    MarkMove(PanelContext context, StoredMark before, String feature, String reason, Consumer<StoredMark> whenMoved) {
        this.context = context;
        this.before = before;
        this.feature = feature;
        this.reason = reason;
        this.whenMoved = whenMoved;
        current = before.id();
    }

    @Override
    public String what() {
        return "moving a mark to " + feature;
    }

    /** Moves it now. */
    void start() {
        move(reason);
    }

    @Override
    public void undo() {
        supersede(before.mark().featureId(), "undone: " + reason);
    }

    @Override
    public void redo() {
        move(reason);
    }

    private void move(String why) {
        Archive archive = context.archive();
        String planet = context.planet().id();
        context.background()
                .quietly(
                        () -> archive.features(planet).stream()
                                .filter(f -> f.name().equals(feature))
                                .findFirst()
                                .map(Feature::id),
                        id -> supersede(id, why));
    }

    private void supersede(Optional<Long> featureId, String why) {
        Archive archive = context.archive();
        NewMark m = before.mark();
        NewMark fresh = new NewMark(
                m.pictureId(),
                m.fitId(),
                featureId,
                m.pixel(),
                m.pickSigmaPx(),
                m.point(),
                m.errors(),
                m.what(),
                m.measurer());
        context.background()
                .quietly(
                        () -> {
                            StoredMark stored = archive.supersedeMark(current, fresh, why);
                            current = stored.id();
                            return stored;
                        },
                        whenMoved);
    }
}
