/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.Optional;
import java.util.function.Consumer;
import oblate.archive.Archive;
import oblate.archive.Feature;
import oblate.archive.NewMark;
import oblate.archive.StoredMark;
import oblate.workbench.Edit;
import oblate.workbench.EditHistory;
import oblate.workbench.PanelContext;

/**
 * Moves a mark to another feature by a row that supersedes it, with the reason; can be undone.
 *
 * @param mark the mark as it is
 * @param feature name of the feature it is to belong to
 * @param reason why, kept with the new row
 */
record MarkMove(StoredMark mark, String feature, String reason) {

    /** Moves it in the background. On the event thread. */
    void start(PanelContext context, Consumer<StoredMark> whenMoved) {
        Archive archive = context.archive();
        String planet = context.planet().id();
        context.edits().perform(() -> moved(archive, planet), whenMoved, context::say);
    }

    private EditHistory.Done<StoredMark> moved(Archive archive, String planet) {
        Optional<Long> id = archive.features(planet).stream()
                .filter(f -> f.name().equals(feature))
                .findFirst()
                .map(Feature::id);
        NewMark m = mark.mark();
        NewMark fresh = new NewMark(
                m.pictureId(),
                m.fitId(),
                id,
                m.pixel(),
                m.pickSigmaPx(),
                m.point(),
                m.errors(),
                m.what(),
                m.measurer());
        StoredMark stored = archive.supersedeMark(mark.id(), fresh, reason);
        return EditHistory.Done.of(
                new Edit.MarkReplaced(m.pictureId(), mark.id(), stored.id(), Edit.Change.NAMED), stored);
    }
}
