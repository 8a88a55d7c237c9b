/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;

/**
 * From time and value to pixels of a drawn plot, whichever way its time runs.
 *
 * @param area where the plot's data are drawn (px)
 * @param timeDown whether time runs down
 * @param times axis of time
 * @param values axis of the values
 */
record PlotSpace(Rectangle2D area, boolean timeDown, ValueAxis times, ValueAxis values) {

    static PlotSpace of(XYPlot plot, Rectangle2D area) {
        return new PlotSpace(
                area, plot.getOrientation() == PlotOrientation.HORIZONTAL, plot.getDomainAxis(), plot.getRangeAxis());
    }

    Point2D at(double timeMs, double value) {
        return timeDown
                ? new Point2D.Double(valuePx(value), timePx(timeMs))
                : new Point2D.Double(timePx(timeMs), valuePx(value));
    }

    double timePx(double timeMs) {
        return times.valueToJava2D(
                timeMs,
                area,
                timeDown ? org.jfree.chart.ui.RectangleEdge.LEFT : org.jfree.chart.ui.RectangleEdge.BOTTOM);
    }

    double valuePx(double value) {
        return values.valueToJava2D(
                value,
                area,
                timeDown ? org.jfree.chart.ui.RectangleEdge.BOTTOM : org.jfree.chart.ui.RectangleEdge.LEFT);
    }

    /** Time at a pixel along the axis of time (ms since 1970). */
    double timeMsAt(double px) {
        return times.java2DToValue(
                px, area, timeDown ? org.jfree.chart.ui.RectangleEdge.LEFT : org.jfree.chart.ui.RectangleEdge.BOTTOM);
    }
}
