/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntFunction;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** Writes each track's tag near its last dot, where it covers neither a dot nor another tag, with a thin line where it stands apart. */
final class NameTags extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final int TRIES = 14;
    private final transient List<Track> tracks;
    private final List<Color> colours;
    private final transient IntFunction<Font> font;
    private final Color halo;
    private final transient DoubleUnaryOperator drawn;

    /**
     * @param font face of each track's tag
     * @param ground what the tags are written on
     * @param drawn from a value to where it is drawn on the axis: the same turn
     */
    NameTags(List<Track> tracks, List<Color> colours, IntFunction<Font> font, Color ground, DoubleUnaryOperator drawn) {
        this.tracks = tracks;
        this.colours = colours;
        this.font = font;
        halo = new Color(ground.getRed(), ground.getGreen(), ground.getBlue(), 205);
        this.drawn = drawn;
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
        List<Rectangle2D> taken = new ArrayList<>();
        for (Track track : tracks) {
            for (Track.Dot dot : track.dots()) {
                Point2D p = space.at(dot.time().toEpochMilli(), drawn.applyAsDouble(dot.value()));
                taken.add(new Rectangle2D.Double(p.getX() - 4, p.getY() - 4, 8, 8));
                Point2D end = space.at(dot.time().toEpochMilli(), drawn.applyAsDouble(dot.value()) + dot.sigma());
                Rectangle2D bar = new Rectangle2D.Double(p.getX() - 2, p.getY() - 2, 4, 4);
                bar.add(end);
                bar.add(new Point2D.Double(2 * p.getX() - end.getX(), 2 * p.getY() - end.getY()));
                taken.add(bar);
            }
        }
        for (int i = 0; i < tracks.size(); i++) {
            Track track = tracks.get(i);
            g.setFont(font.apply(i));
            FontMetrics size = g.getFontMetrics();
            if (track.last().isPresent() && !track.tag().isEmpty()) {
                Track.Dot dot = track.last().get();
                Point2D anchor = space.at(dot.time().toEpochMilli(), drawn.applyAsDouble(dot.value()));
                if (area.contains(anchor)) {
                    Rectangle2D box = place(anchor, area, taken, size.stringWidth(track.tag()) + 4.0, size.getHeight());
                    taken.add(box);
                    write(g, track.tag(), anchor, box, colours.get(i % colours.size()));
                }
            }
        }
    }

    private void write(Graphics2D g, String tag, Point2D anchor, Rectangle2D box, Color colour) {
        double near = box.getY() > anchor.getY() ? box.getY() : box.getMaxY();
        g.setPaint(colour);
        if (Math.abs(near - anchor.getY()) > box.getHeight()) {
            g.setStroke(new BasicStroke(0.7f));
            double x = Math.max(box.getX(), Math.min(box.getMaxX(), anchor.getX()));
            g.draw(new Line2D.Double(anchor.getX(), anchor.getY(), x, near));
        }
        g.setPaint(halo);
        g.fill(box);
        g.setPaint(colour);
        g.drawString(tag, (float) box.getX() + 2, (float)
                (box.getY() + g.getFontMetrics().getAscent()));
    }

    /** Below, above, to the sides, then ever further. */
    private static Rectangle2D place(
            Point2D anchor, Rectangle2D area, List<Rectangle2D> taken, double width, double height) {
        Rectangle2D first = null;
        for (int k = 0; k < TRIES; k++) {
            double far = 6 + k * height * 0.9;
            double[][] corners = {
                {anchor.getX() - width / 2, anchor.getY() + far},
                {anchor.getX() - width / 2, anchor.getY() - far - height},
                {anchor.getX() + 7, anchor.getY() + far - 6 - height / 2},
                {anchor.getX() - 7 - width, anchor.getY() + far - 6 - height / 2},
                {anchor.getX() + 7, anchor.getY() - far + 6 - height / 2},
                {anchor.getX() - 7 - width, anchor.getY() - far + 6 - height / 2}
            };
            for (double[] corner : corners) {
                double x = Math.max(area.getX() + 2, Math.min(area.getMaxX() - width - 2, corner[0]));
                Rectangle2D box = new Rectangle2D.Double(x, corner[1], width, height);
                first = first == null ? box : first;
                if (box.getY() > area.getY()
                        && box.getMaxY() < area.getMaxY()
                        && taken.stream().noneMatch(box::intersects)) {
                    return box;
                }
            }
        }
        return first;
    }
}
