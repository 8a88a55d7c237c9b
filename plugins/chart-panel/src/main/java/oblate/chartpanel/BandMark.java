/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;

/** A filled band; on an axis that goes round it is drawn on every turn that shows. */
final class BandMark extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final int QUIET = 56;
    private final transient Track.Band band;
    private final Color colour;
    private final boolean round;

    BandMark(Track.Band band, Color colour, boolean round) {
        this.band = band;
        this.colour = new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), QUIET);
        this.round = round;
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
        double least =
                band.low().stream().mapToDouble(Turns.Point::lonDeg).min().orElse(0);
        double most =
                band.high().stream().mapToDouble(Turns.Point::lonDeg).max().orElse(0);
        int first = round ? (int) Math.floor((shown.getLowerBound() - most) / 360) : 0;
        int last = round ? (int) Math.ceil((shown.getUpperBound() - least) / 360) : 0;
        g.setPaint(colour);
        for (int turn = first; turn <= last; turn++) {
            if (!round
                    || (most + 360.0 * turn > shown.getLowerBound() && least + 360.0 * turn < shown.getUpperBound())) {
                g.fill(outline(space, 360.0 * turn));
            }
        }
    }

    private Path2D outline(PlotSpace space, double shift) {
        Path2D path = new Path2D.Double();
        add(path, space, band.low(), shift, false);
        add(path, space, band.high(), shift, true);
        path.closePath();
        return path;
    }

    private static void add(Path2D path, PlotSpace space, List<Turns.Point> edge, double shift, boolean backward) {
        for (int k = 0; k < edge.size(); k++) {
            Turns.Point p = edge.get(backward ? edge.size() - 1 - k : k);
            Point2D at = space.at(p.timeMs(), p.lonDeg() + shift);
            if (path.getCurrentPoint() == null) {
                path.moveTo(at.getX(), at.getY());
            } else {
                path.lineTo(at.getX(), at.getY());
            }
        }
    }
}
