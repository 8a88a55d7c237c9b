/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import javax.imageio.ImageIO;
import oblate.drift.LongitudeSeries;
import org.jfree.chart.JFreeChart;

/** The chart of longitude against date as a picture file; needs no screen. Stateless. */
public final class ChartImage {
    private ChartImage() {}

    /**
     * Writes a chart as PNG.
     *
     * @param series longitudes of features, all in the system the wish names
     * @param widthPx width (px), 200…10000
     * @param heightPx height (px), 200…10000
     * @throws IllegalArgumentException when a size is out of range
     */
    public static void writePng(
            List<LongitudeSeries> series, ChartWish wish, int widthPx, int heightPx, OutputStream out)
            throws IOException {
        if (widthPx < 200 || heightPx < 200 || widthPx > 10_000 || heightPx > 10_000) {
            throw new IllegalArgumentException(widthPx + " x " + heightPx);
        }
        JFreeChart chart = DriftChart.of(series.stream().map(Fitted::of).toList(), wish);
        ImageIO.write(chart.createBufferedImage(widthPx, heightPx), "png", out);
    }
}
