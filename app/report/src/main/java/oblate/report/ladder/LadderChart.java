/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.ladder;

import java.util.ArrayList;
import java.util.List;
import oblate.drift.Drift;
import oblate.drift.LongitudePoint;
import oblate.report.ChartContent;
import oblate.report.SeriesChart;

/**
 * A ladder of strips, to be drawn.
 *
 * @param frame the frame that moves
 * @param strips at least one, in order of time
 * @param features names of the features marked
 * @param marks their marks
 * @param remarks what was left out and why, one sentence each
 * @param southUp whether strips are turned by half a turn, south up
 */
public record LadderChart(
        LadderFrame frame,
        List<LadderStrip> strips,
        List<String> features,
        List<LadderMark> marks,
        List<String> remarks,
        boolean southUp)
        implements ChartContent {

    /** Copies the lists. */
    public LadderChart {
        strips = List.copyOf(strips);
        features = List.copyOf(features);
        marks = List.copyOf(marks);
        remarks = List.copyOf(remarks);
        if (strips.isEmpty()) {
            throw new IllegalArgumentException("no strip");
        }
    }

    /** The marks of some features, all with longitudes in the frame's system; those without a latitude are left out. */
    public static List<LadderMark> marksOf(List<SeriesChart.Feature> features) {
        List<LadderMark> marks = new ArrayList<>();
        for (int f = 0; f < features.size(); f++) {
            List<LongitudePoint> points = features.get(f).series().points();
            for (int i = 0; i < points.size(); i++) {
                LongitudePoint p = points.get(i);
                int at = i;
                boolean used = features.get(f)
                        .drift()
                        .map(Drift::states)
                        .map(s -> s.get(at).used())
                        .orElse(true);
                if (p.latGraphicDeg().isPresent()) {
                    marks.add(new LadderMark(
                            f, p.time(), p.lonDeg(), p.latGraphicDeg().getAsDouble(), used));
                }
            }
        }
        return marks;
    }
}
