/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import oblate.report.ChartContent;
import oblate.report.SeriesChart;
import oblate.sky.PlanetModel;
import oblate.workbench.words.Texts;
import org.jfree.chart.JFreeChart;

/** Draws charts of features' marks and the motions fitted to them. Stateless. */
final class SeriesDrawing implements Drawing {
    private static final Texts TEXTS = Texts.of(SeriesDrawing.class);

    @Override
    public boolean draws(ChartContent content) {
        return content instanceof SeriesChart;
    }

    @Override
    public void draw(ChartContent content, ChartWish look, Graphics2D graphics, Rectangle2D area) {
        chart((SeriesChart) content, look).draw(graphics, area);
    }

    private static JFreeChart chart(SeriesChart series, ChartWish look) {
        PlanetModel planet = series.features().get(0).series().planet();
        String system = series.features().get(0).series().system().label();
        if (series.kind() == SeriesChart.Kind.SPEED) {
            return SpeedChart.of(
                    planet,
                    series.features().stream().flatMap(f -> f.drift().stream()).toList(),
                    look.of(TEXTS.text("title.speeds", planet.label()), system));
        }
        List<Fitted> fits = series.features().stream()
                .map(f -> new Fitted(f.series(), f.drift(), ""))
                .toList();
        TimeCharts.Manner manner = new TimeCharts.Manner(series.timeAxis(), series.gapDays(), series.until());
        String on = planet.label();
        return switch (series.kind()) {
            case LATITUDE -> TimeCharts.latitudes(fits, manner, look.of(TEXTS.text("title.latitudes", on), system));
            case RESIDUALS ->
                TimeCharts.residuals(fits, manner, look.of(TEXTS.text("title.residuals", on, system), system));
            default -> TimeCharts.longitudes(fits, manner, look.of(TEXTS.text("title.longitudes", on), system));
        };
    }
}
