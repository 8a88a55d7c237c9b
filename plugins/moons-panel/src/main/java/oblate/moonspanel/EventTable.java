/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import oblate.sky.GroundView;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.words.Texts;

/** The events of the span, one a row; those that cannot be seen are dimmed and say why. */
final class EventTable extends RowTable<Happening> {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(EventTable.class);

    EventTable(Supplier<Palette> palette) {
        super(palette, columns(), new Layout("moons.events", 8, 120, 24, 0), TEXTS.text("events.name"));
        setAutoResizeMode(AUTO_RESIZE_LAST_COLUMN);
    }

    private static List<Column<Happening>> columns() {
        return List.of(
                Column.words(TEXTS.text("column.kind"), Happening::what),
                Column.words(TEXTS.text("column.moon"), Happening::moonName),
                Column.figure(TEXTS.text("column.begin"), e -> EventClock.day(e.from())),
                Column.figure(TEXTS.text("column.mid"), e -> EventClock.clock(e.mid())),
                Column.figure(TEXTS.text("column.end"), e -> EventClock.clock(e.to())),
                Column.figure(
                        TEXTS.text("column.sigma"),
                        e -> e.sigmaS().map(s -> Figures.fixed(s, 0)).orElse("–")),
                Column.figure(TEXTS.text("column.altitude"), e -> pair(e, GroundView::altitudeDeg)),
                Column.figure(TEXTS.text("column.sun"), e -> pair(e, GroundView::sunAltitudeDeg)),
                Column.words(TEXTS.text("column.notes"), Happening::words));
    }

    @Override
    boolean isDimmed(Happening event) {
        return event.hindrance().isPresent();
    }

    @Override
    Optional<String> tip(Happening event) {
        return Optional.of(event.words()).filter(w -> !w.isEmpty());
    }

    private static String pair(Happening event, ToDoubleFunction<GroundView> what) {
        if (event.begin().isEmpty() || event.end().isEmpty()) {
            return "–";
        }
        return Figures.fixed(what.applyAsDouble(event.begin().get()), 0) + " / "
                + Figures.fixed(what.applyAsDouble(event.end().get()), 0);
    }
}
