/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.ArrayList;
import java.util.List;
import oblate.drift.LongitudePoint;
import oblate.report.SeriesChart;
import oblate.sky.RotationSystem;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/**
 * What is said of the charts of drifts.
 *
 * @param data what they show
 * @param system the system of their longitudes
 */
record DriftWords(DriftData data, RotationSystem system) {
    private static final Texts TEXTS = Texts.of(DriftWords.class);

    /**
     * What the signs of the chart mean, only of those that are there.
     *
     * @param predicted whether motions are drawn beyond the marks
     * @param crowded whether the window is too narrow for a ladder that is wanted
     */
    String signs(boolean predicted, boolean crowded) {
        if (data.fits().isEmpty()) {
            return "";
        }
        List<String> signs = new ArrayList<>();
        signs.add(TEXTS.text("foot.hollow"));
        if (data.fits().stream()
                .flatMap(f -> f.drift().stream())
                .anyMatch(d -> Gaps.of(d, SeriesChart.USUAL_GAP_DAYS).stream().anyMatch(Gaps.Piece::empty))) {
            signs.add(TEXTS.text("foot.dotted", Figures.fixed(SeriesChart.USUAL_GAP_DAYS, 0)));
        }
        if (data.hidden() > 0) {
            signs.add(TEXTS.text("foot.others", Integer.toString(data.hidden())));
        }
        if (crowded) {
            signs.add(TEXTS.text("foot.no.room"));
        }
        if (predicted) {
            signs.add(TEXTS.text("foot.band"));
        }
        return String.join("; ", signs) + ".";
    }

    /** A mark in words. */
    String mark(DriftData.Point point) {
        LongitudePoint p = data.measured(point);
        return TEXTS.text(
                "mark.words",
                point.feature(),
                Figures.dayUt(p.time()),
                Figures.clockUt(p.time()),
                system.label(),
                Figures.longitude(p.lonDeg(), p.sigmaDeg()));
    }
}
