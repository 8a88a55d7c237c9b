/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;

/** A small hollow arrow at the edge for every dot beyond it. */
final class EdgeArrows extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private final transient Track track;
    private final Color colour;

    EdgeArrows(Track track, Color colour) {
        this.track = track;
        this.colour = colour;
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
        Range shown = values.getRange();
        g.setPaint(colour);
        g.setStroke(new BasicStroke(1.3f));
        for (Track.Dot dot : track.dots()) {
            if (!shown.contains(dot.value())) {
                double edge = dot.value() > shown.getUpperBound() ? shown.getUpperBound() : shown.getLowerBound();
                double inside = shown.getCentralValue();
                Point2D tip = space.at(dot.time().toEpochMilli(), edge);
                Point2D from = space.at(dot.time().toEpochMilli(), inside);
                double angle = Math.atan2(tip.getY() - from.getY(), tip.getX() - from.getX());
                g.draw(AffineTransform.getRotateInstance(angle, tip.getX(), tip.getY())
                        .createTransformedShape(arrow(tip)));
            }
        }
    }

    private static Path2D arrow(Point2D tip) {
        Path2D path = new Path2D.Double();
        path.moveTo(tip.getX() - 1, tip.getY());
        path.lineTo(tip.getX() - 9, tip.getY() - 4.5);
        path.lineTo(tip.getX() - 9, tip.getY() + 4.5);
        path.closePath();
        return path;
    }
}
