/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import oblate.drift.plan.PlanItem;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.sky.event.EventKind;
import oblate.workbench.timeline.TimeAxis;

/**
 * Where the rows and what is in them come to lie. Immutable.
 *
 * @param axis the time
 * @param rows the rows from the top
 */
record RowLayout(TimeAxis axis, List<NightRow> rows) {
    /** Height of a row (px). */
    static final int ROW_PX = 20;
    /** Room over the first row (px). */
    static final int TOP_PX = 8;
    /** A bar is at least so wide (px), so that a sure time is seen too. */
    static final double LEAST_BAR_PX = 4;

    private static final double BAR_PX = 11;
    private static final double LANE_PX = 7;
    private static final double NEAR_PX = 6;

    RowLayout {
        rows = List.copyOf(rows);
    }

    /** Height of all rows (px). */
    int heightPx() {
        return TOP_PX + ROW_PX * rows.size();
    }

    /** A row over the width of the time axis. */
    Rectangle2D row(int index) {
        return new Rectangle2D.Double(
                axis.leftPx(), TOP_PX + (double) ROW_PX * index, axis.rightPx() - axis.leftPx(), ROW_PX);
    }

    /** Which row lies at a height (px). */
    Optional<Integer> rowAt(double y) {
        int index = (int) Math.floor((y - TOP_PX) / ROW_PX);
        return index >= 0 && index < rows.size() ? Optional.of(index) : Optional.empty();
    }

    /** The box of a thing: a crossing give or take its error in the middle of the row; a moon's passage in the upper lane as the Earth sees it, in the lower as the Sun does. */
    Rectangle2D box(int index, NightRow.Thing thing) {
        Rectangle2D row = row(index);
        double left = axis.x(thing.span().from());
        double right = axis.x(thing.span().to());
        double widen = Math.max(0, (LEAST_BAR_PX - (right - left)) / 2);
        double x = left - widen;
        double w = right - left + 2 * widen;
        Optional<EventKind> kind = kind(thing);
        if (kind.isEmpty()) {
            return new Rectangle2D.Double(x, row.getCenterY() - BAR_PX / 2, w, BAR_PX);
        }
        double y = kind.get().fromSun() ? row.getCenterY() + 1 : row.getCenterY() - LANE_PX - 1;
        return new Rectangle2D.Double(x, y, w, LANE_PX);
    }

    /** What a moon does; none for a crossing. */
    static Optional<EventKind> kind(NightRow.Thing thing) {
        return thing.items().get(0).passage().map(p -> p.kind());
    }

    /** The stretch in which a place on the globe stands within some degrees of the meridian. */
    static TimeSpan around(PlanItem crossing, double halfDeg) {
        double degPerDay = Math.abs(crossing.expected().orElseThrow().system().degPerDay());
        double halfS = halfDeg / degPerDay * 86_400;
        return new TimeSpan(
                crossing.time().plusClockSeconds(-halfS), crossing.time().plusClockSeconds(halfS));
    }

    /** What lies under a point (px): the thing whose box it is in or near, of a row; on the row's name its first. */
    Optional<PlanItem> itemAt(double x, double y) {
        Optional<Integer> row = rowAt(y);
        if (row.isEmpty()) {
            return Optional.empty();
        }
        List<NightRow.Thing> things = rows.get(row.get()).things();
        if (x < axis.leftPx()) {
            return Optional.of(foremost(rows.get(row.get())).items().get(0));
        }
        UtcTime time = axis.at(x);
        return things.stream()
                .filter(t -> isNear(box(row.get(), t), x))
                .min(Comparator.comparingDouble(t -> Math.abs(box(row.get(), t).getCenterY() - y)))
                .map(t -> t.nearest(time));
    }

    /** What stands for a whole row: the first that can be observed, else what is nearest to the middle of the night. */
    NightRow.Thing foremost(NightRow row) {
        UtcTime middle = axis.at((axis.leftPx() + axis.rightPx()) / 2);
        return row.things().stream()
                .filter(NightRow.Thing::isObservable)
                .findFirst()
                .orElseGet(() -> row.things().stream()
                        .min(Comparator.comparingDouble(
                                t -> Math.abs(t.items().get(0).time().clockSecondsSince(middle))))
                        .orElseThrow());
    }

    private static boolean isNear(Rectangle2D box, double x) {
        return x >= box.getMinX() - NEAR_PX && x <= box.getMaxX() + NEAR_PX;
    }
}
