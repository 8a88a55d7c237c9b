/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import oblate.report.ChartOrder;
import oblate.report.ChartWriter;
import oblate.sky.PlanetModel;
import org.apache.batik.dom.GenericDOMImplementation;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.text.TextUtils;
import org.w3c.dom.Document;

/** Draws the charts of drifts as PNG and SVG. Stateless. */
public final class ChartFiles implements ChartWriter {
    private static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);

    @Override
    public String id() {
        return "drift-charts";
    }

    @Override
    public String label() {
        return "Longitude against date, speed against latitude";
    }

    @Override
    public void write(ChartOrder order, OutputStream out) throws IOException {
        JFreeChart chart = chart(order);
        ChartOrder.Size size = order.size();
        if (order.format() == ChartOrder.Format.SVG) {
            writeSvg(chart, size, out);
        } else {
            ImageIO.write(
                    chart.createBufferedImage(
                            size.widthPx() * size.scale(),
                            size.heightPx() * size.scale(),
                            size.widthPx(),
                            size.heightPx(),
                            null),
                    "png",
                    out);
        }
    }

    private static JFreeChart chart(ChartOrder order) {
        PlanetModel planet = order.features().get(0).series().planet();
        String system = order.features().get(0).series().system().label();
        if (order.kind() == ChartOrder.Kind.SPEED) {
            return SpeedChart.of(
                    planet,
                    order.features().stream().flatMap(f -> f.drift().stream()).toList(),
                    wish("Speeds on " + planet.label(), system, order.theme()));
        }
        List<Fitted> fits = order.features().stream()
                .map(f -> new Fitted(f.series(), f.drift(), ""))
                .toList();
        ChartWish wish = wish("Longitudes on " + planet.label(), system, order.theme());
        JFreeChart chart = DriftChart.of(fits, wish);
        order.until().ifPresent(until -> new PredictionBand(wish).add(chart.getXYPlot(), fits, until));
        return chart;
    }

    private static ChartWish wish(String title, String system, ChartOrder.Theme theme) {
        return switch (theme) {
            case PRINT -> ChartWish.forPaper(title, system);
            case LIGHT -> wish(title, system, 0xF7F6F2, 0x1F2328, 0xD8D5CD);
            case DARK -> wish(title, system, 0x1B1F24, 0xE3E5E8, 0x3A4149);
        };
    }

    private static ChartWish wish(String title, String system, int ground, int ink, int quiet) {
        Color behind = new Color(ground);
        return new ChartWish(
                title,
                system,
                true,
                Optional.empty(),
                behind,
                new Color(ink),
                new Color(quiet),
                FONT,
                ChartWish.coloursOn(behind));
    }

    private static void writeSvg(JFreeChart chart, ChartOrder.Size size, OutputStream out) throws IOException {
        Document document = GenericDOMImplementation.getDOMImplementation()
                .createDocument("http://www.w3.org/2000/svg", "svg", null);
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment("Oblate");
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        graphics.setSVGCanvasSize(new Dimension(size.widthPx() * size.scale(), size.heightPx() * size.scale()));
        graphics.scale(size.scale(), size.scale());
        // Else the library draws turned words as outlines; it is a switch of the whole library, and good on screen too.
        TextUtils.setUseDrawRotatedStringWorkaround(false);
        chart.draw(graphics, new Rectangle2D.Double(0, 0, size.widthPx(), size.heightPx()));
        Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        graphics.stream(text, true);
        text.flush();
    }
}
