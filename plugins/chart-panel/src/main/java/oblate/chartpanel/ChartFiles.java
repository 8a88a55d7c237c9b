/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import oblate.report.ChartContent;
import oblate.report.ChartOrder;
import oblate.report.ChartWriter;
import oblate.workbench.words.Texts;
import org.apache.batik.dom.GenericDOMImplementation;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.jfree.chart.text.TextUtils;
import org.w3c.dom.Document;

/** Draws charts as PNG and SVG. Stateless. */
public final class ChartFiles implements ChartWriter {
    private static final Texts TEXTS = Texts.of(ChartFiles.class);
    /** Every kind of chart drawn here. */
    private static final List<Drawing> DRAWINGS =
            List.of(new SeriesDrawing(), new LadderDrawing(), new TimingDrawing());

    private static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, 12);

    @Override
    public String id() {
        return "drift-charts";
    }

    @Override
    public String label() {
        return TEXTS.text("writer");
    }

    @Override
    public boolean draws(ChartContent content) {
        return drawing(content).isPresent();
    }

    private static Optional<Drawing> drawing(ChartContent content) {
        return DRAWINGS.stream().filter(d -> d.draws(content)).findFirst();
    }

    @Override
    public void write(ChartOrder order, OutputStream out) throws IOException {
        Drawing drawing = drawing(order.content())
                .orElseThrow(() ->
                        new IllegalArgumentException(order.content().getClass().getName()));
        ChartOrder.Size size = order.size();
        Dimension whole = new Dimension(size.widthPx() * size.scale(), size.heightPx() * size.scale());
        Rectangle2D area = new Rectangle2D.Double(0, 0, size.widthPx(), size.heightPx());
        if (order.format() == ChartOrder.Format.SVG) {
            SVGGraphics2D graphics = svg(whole);
            graphics.scale(size.scale(), size.scale());
            drawing.draw(order.content(), look(order.theme()), graphics, area);
            Writer text = new XmlText(new OutputStreamWriter(out, StandardCharsets.UTF_8));
            graphics.stream(text, true);
            text.flush();
        } else {
            BufferedImage image = new BufferedImage(whole.width, whole.height, BufferedImage.TYPE_INT_RGB);
            Graphics2D graphics = image.createGraphics();
            graphics.scale(size.scale(), size.scale());
            drawing.draw(order.content(), look(order.theme()), graphics, area);
            graphics.dispose();
            ImageIO.write(image, "png", out);
        }
    }

    private static ChartWish look(ChartOrder.Theme theme) {
        return switch (theme) {
            case PRINT -> ChartWish.forPaper("", "");
            case LIGHT -> look(0xF7F6F2, 0x1F2328, 0xD8D5CD);
            case DARK -> look(0x1B1F24, 0xE3E5E8, 0x3A4149);
            case RED -> look(0x0E0403, 0xC2392B, 0x3A100C);
        };
    }

    private static ChartWish look(int ground, int ink, int quiet) {
        Color behind = new Color(ground);
        return new ChartWish(
                "",
                "",
                true,
                Optional.empty(),
                behind,
                new Color(ink),
                new Color(quiet),
                FONT,
                ChartWish.coloursOn(behind));
    }

    private static SVGGraphics2D svg(Dimension whole) {
        Document document = GenericDOMImplementation.getDOMImplementation()
                .createDocument("http://www.w3.org/2000/svg", "svg", null);
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setComment("Oblate");
        context.setImageHandler(new PngInSvg());
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        graphics.setSVGCanvasSize(whole);
        // Else the library draws turned words as outlines; it is a switch of the whole library, and good on screen too.
        TextUtils.setUseDrawRotatedStringWorkaround(false);
        return graphics;
    }
}
