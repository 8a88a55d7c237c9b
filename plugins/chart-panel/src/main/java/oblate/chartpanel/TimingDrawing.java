/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import oblate.report.ChartContent;
import oblate.report.TimingsChart;
import oblate.workbench.words.Texts;

/** Draws observed minus predicted times of moon events. Stateless. */
final class TimingDrawing implements Drawing {
    private static final Texts TEXTS = Texts.of(TimingDrawing.class);

    @Override
    public boolean draws(ChartContent content) {
        return content instanceof TimingsChart;
    }

    @Override
    public void draw(ChartContent content, ChartWish look, Graphics2D graphics, Rectangle2D area) {
        TimingsChart timings = (TimingsChart) content;
        TimingChart.of(
                        timings,
                        look.of(TEXTS.text("title.timings", timings.planet().label()), ""))
                .draw(graphics, area);
    }
}
