/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import oblate.drift.timing.TimedPoint;
import oblate.drift.timing.Timing;
import oblate.report.TimingTable;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.words.Texts;

/** Timings, one event's moment a row; what is in doubt is dimmed and says why. */
final class TimingRows extends RowTable<Timing> {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(TimingRows.class);

    TimingRows(Supplier<Palette> palette) {
        super(palette, columns(), new Layout("moons.timings.rows", 2, 120, 22, -1), TEXTS.text("timings.rows.name"));
    }

    private static List<Column<Timing>> columns() {
        return List.of(
                Column.figure(TEXTS.text("timings.night"), t -> t.night().toString()),
                Column.words(TEXTS.text("timings.moon"), Timing::words),
                Column.words(TEXTS.text("timings.what"), TimingRows::what),
                Column.figure(TEXTS.text("timings.omp"), TimingRows::oMinusP),
                Column.figure(TEXTS.text("timings.beside"), t -> t.beside()
                        .map(b -> Figures.withSigma(b.arcsec(), b.sigmaArcsec(), ""))
                        .orElse("–")),
                Column.words(
                        TEXTS.text("timings.site"),
                        t -> TEXTS.text(t.site().isPresent() ? "timings.ground" : "timings.geocentre")));
    }

    @Override
    boolean isDimmed(Timing timing) {
        return !timing.doubts().isEmpty();
    }

    @Override
    Optional<String> tip(Timing timing) {
        return timing.doubts().isEmpty() ? Optional.empty() : Optional.of(String.join("; ", timing.doubts()));
    }

    /** O−P with its error, or the limit there is; a dash where neither is known. */
    static String oMinusP(Timing t) {
        return t.hasTime()
                ? Figures.withSigma(t.oMinusPS(), t.errors().totalS(), "")
                : TimingTable.limit(t).orElse("–");
    }

    /** "transit, mid"; the place alone where there is no moment to name. */
    private static String what(Timing t) {
        return t.point() == TimedPoint.PLACE
                ? t.phenomenon().words()
                : TEXTS.text(
                        "timings.what.moment",
                        t.phenomenon().words(),
                        TEXTS.text("point." + t.point().id()));
    }
}
