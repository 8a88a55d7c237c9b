/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.time.Duration;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import oblate.report.ladder.LadderChart;
import oblate.report.ladder.LadderFrame;
import oblate.report.ladder.LadderMark;
import oblate.report.ladder.LadderStrip;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** Draws a ladder's strips into a plot whose time runs down and whose values are degrees from the frame's zero. */
final class StripsMark extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;

    /** Room between the axis of time and the strips, for leaders (px). */
    static final double GUTTER = 26;

    private static final double ROOMY_PX = 220;
    private static final double NARROW_PX = 160;
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH).withZone(ZoneOffset.UTC);

    private static final double BETWEEN = 3;
    private static final DateTimeFormatter CAPTION =
            DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.ENGLISH).withZone(ZoneOffset.UTC);
    private final transient LadderChart ladder;
    private final transient List<BufferedImage> pictures;
    private final transient ChartWish wish;

    StripsMark(LadderChart ladder, List<BufferedImage> pictures, ChartWish wish) {
        this.ladder = ladder;
        this.pictures = pictures;
        this.wish = wish;
    }

    /** Height of a strip (px): a degree is as high as it is wide. */
    private static double stripHeight(LadderFrame frame, Rectangle2D area) {
        return area.getWidth() * (frame.northDeg() - frame.southDeg()) / frame.widthDeg();
    }

    /** Where the strips whose dates show are drawn. */
    static LadderLayout layout(LadderChart ladder, PlotSpace space) {
        List<Integer> shown = java.util.stream.IntStream.range(
                        0, ladder.strips().size())
                .filter(i -> space.times()
                        .getRange()
                        .contains(ladder.strips().get(i).midUtc().toEpochMilli()))
                .boxed()
                .toList();
        List<Double> dates = shown.stream()
                .map(i -> space.timePx(ladder.strips().get(i).midUtc().toEpochMilli()))
                .toList();
        LadderLayout layout = LadderLayout.of(
                dates,
                stripHeight(ladder.frame(), space.area()) + BETWEEN,
                space.area().getMinY(),
                space.area().getMaxY());
        return new LadderLayout(
                layout.places().stream()
                        .map(p -> new LadderLayout.Place(shown.get(p.strip()), p.datePx(), p.middlePx()))
                        .toList(),
                layout.leftOut());
    }

    /** Where a place's strip is drawn. */
    static Rectangle2D box(LadderChart ladder, PlotSpace space, LadderLayout.Place place) {
        double height = stripHeight(ladder.frame(), space.area());
        return new Rectangle2D.Double(
                space.area().getX(), place.middlePx() - height / 2, space.area().getWidth(), height);
    }

    @Override
    @SuppressWarnings("checkstyle:ParameterNumber") // the library's signature
    public void draw(
            Graphics2D g,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis times,
            ValueAxis values,
            int renderer,
            PlotRenderingInfo info) {
        PlotSpace space = PlotSpace.of(plot, area);
        LadderLayout layout = layout(ladder, space);
        Shape clip = g.getClip();
        Stroke stroke = g.getStroke();
        for (LadderLayout.Place place : layout.places()) {
            Rectangle2D box = box(ladder, space, place);
            BufferedImage picture = pictures.get(place.strip());
            AffineTransform at = AffineTransform.getTranslateInstance(box.getX(), box.getY());
            at.scale(box.getWidth() / picture.getWidth(), box.getHeight() / picture.getHeight());
            g.drawImage(picture, at, null);
        }
        zeroLine(g, space);
        for (LadderLayout.Place place : layout.places()) {
            Rectangle2D box = box(ladder, space, place);
            caption(g, ladder.strips().get(place.strip()), box);
            marks(g, ladder.strips().get(place.strip()), space, box);
        }
        g.setClip(new Rectangle2D.Double(
                area.getX() - GUTTER - 4, area.getY() - 4, area.getWidth() + GUTTER + 8, area.getHeight() + 8));
        leaders(g, layout, area);
        g.setClip(clip);
        g.setStroke(stroke);
    }

    private void leaders(Graphics2D g, LadderLayout layout, Rectangle2D area) {
        g.setPaint(wish.ink());
        g.setStroke(new BasicStroke(0.8f));
        for (LadderLayout.Place place : layout.places()) {
            Path2D leader = new Path2D.Double();
            leader.moveTo(area.getX() - GUTTER, place.datePx());
            leader.lineTo(area.getX() - GUTTER + 5, place.datePx());
            leader.lineTo(area.getX() - 5, place.middlePx());
            leader.lineTo(area.getX(), place.middlePx());
            g.draw(leader);
        }
    }

    private void zeroLine(Graphics2D g, PlotSpace space) {
        double x = space.valuePx(0);
        g.setPaint(new Color(wish.redLight() ? 0xD8402F : 0xFFFFFF));
        g.setStroke(new BasicStroke(0.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {2, 5}, 0));
        g.draw(new Line2D.Double(x, space.area().getY(), x, space.area().getMaxY()));
    }

    private void caption(Graphics2D g, LadderStrip strip, Rectangle2D box) {
        g.setFont(wish.font().deriveFont(Font.PLAIN, wish.font().getSize2D() - 2));
        // The axis of time says UTC; on a narrow strip the feature needs the room.
        String words = box.getWidth() < NARROW_PX
                ? DAY.format(strip.midUtc())
                : CAPTION.format(strip.midUtc()) + (box.getWidth() < ROOMY_PX ? "" : " UT");
        var size = g.getFontMetrics();
        g.setPaint(wish.redLight() ? wish.ground() : new Color(LadderStrip.UNSEEN));
        g.fill(new Rectangle2D.Double(box.getX(), box.getY(), size.stringWidth(words) + 8.0, size.getHeight()));
        g.setPaint(wish.redLight() ? wish.ink() : new Color(0xC9CDD3));
        g.drawString(words, (float) box.getX() + 4, (float) (box.getY() + size.getAscent()));
    }

    private void marks(Graphics2D g, LadderStrip strip, PlotSpace space, Rectangle2D box) {
        LadderFrame frame = ladder.frame();
        for (LadderMark mark : ladder.marks()) {
            boolean here =
                    Math.abs(Duration.between(mark.time(), strip.midUtc()).toMillis()) < 1000;
            double off = frame.offsetDeg(mark.lonDeg(), mark.time());
            if (here && Math.abs(off) <= frame.widthDeg() / 2) {
                double up = (mark.latGraphicDeg() - frame.southDeg()) / (frame.northDeg() - frame.southDeg());
                double y = ladder.southUp() ? box.getY() + up * box.getHeight() : box.getMaxY() - up * box.getHeight();
                ring(g, space.valuePx(off), y, mark);
            }
        }
    }

    private void ring(Graphics2D g, double x, double y, LadderMark mark) {
        Ellipse2D ring = new Ellipse2D.Double(x - 6, y - 6, 12, 12);
        g.setPaint(new Color(0x0B0C0E));
        g.setStroke(new BasicStroke(3.4f));
        g.draw(ring);
        List<Color> bright = ChartWish.coloursOn(new Color(wish.redLight() ? 0x0E0403 : LadderStrip.UNSEEN));
        g.setPaint(bright.get(mark.feature() % bright.size()));
        g.setStroke(
                mark.used()
                        ? new BasicStroke(1.6f)
                        : new BasicStroke(
                                1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {2, 2}, 0));
        g.draw(ring);
    }
}
