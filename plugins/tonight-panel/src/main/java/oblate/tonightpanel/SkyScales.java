/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.geom.Rectangle2D;
import oblate.sky.DarkWindow;
import oblate.sky.GroundView;
import oblate.workbench.timeline.TimeAxis;

/**
 * Where altitude, dispersion and time come to lie. Altitude grows upward from 0 on the left, dispersion from 0 on the right. Immutable.
 *
 * @param axis the time, as wide as the plot
 * @param topPx upper edge of the plot (px)
 * @param bottomPx lower edge (px), altitude and dispersion 0
 * @param topDeg altitude at the upper edge (deg)
 * @param topArcsec dispersion at the upper edge (arcsec)
 */
record SkyScales(TimeAxis axis, double topPx, double bottomPx, double topDeg, double topArcsec) {
    /** Room for names at the left (px). */
    static final int LEFT_PX = 150;
    /** Room for the axis of dispersion at the right (px). */
    static final int RIGHT_PX = 58;
    /** Room for window and twilight over the plot (px). */
    static final int HEAD_PX = 44;
    /** Room for the hours under it (px). */
    static final int FOOT_PX = 24;

    private static final double LEAST_TOP_DEG = 30;
    private static final double USUAL_TOP_ARCSEC = 3;
    private static final double[] TOPS_ARCSEC = {0.5, 1, 1.5, 2, 3, 4, 6, 8, 12};

    /** For a night in a field of some size. */
    static SkyScales of(NightSheet sheet, int widthPx, int heightPx) {
        return new SkyScales(
                axis(sheet, widthPx),
                HEAD_PX,
                Math.max(HEAD_PX + 20.0, heightPx - FOOT_PX),
                topDeg(sheet.track().stream()
                        .mapToDouble(GroundView::altitudeDeg)
                        .max()
                        .orElse(0)),
                topArcsec(sheet.night().windows().stream()
                        .map(DarkWindow::track)
                        .flatMap(java.util.List::stream)
                        .mapToDouble(v -> v.dispersionArcsec(Asked.SHORT_NM, Asked.LONG_NM))
                        .filter(Double::isFinite)
                        .max()
                        .orElse(USUAL_TOP_ARCSEC)));
    }

    /** The time alone, which the rows below share. */
    static TimeAxis axis(NightSheet sheet, int widthPx) {
        return new TimeAxis(sheet.shown(), LEFT_PX, Math.max(LEFT_PX + 50, widthPx - RIGHT_PX));
    }

    /** A round altitude over the highest one. */
    static double topDeg(double highestDeg) {
        return Math.max(LEAST_TOP_DEG, Math.min(90, 10 * Math.ceil((highestDeg + 3) / 10)));
    }

    /** A round dispersion over the largest within the windows, so that the curve leaves the plot only where nobody observes. */
    static double topArcsec(double largest) {
        for (double top : TOPS_ARCSEC) {
            if (top >= 1.05 * largest) {
                return top;
            }
        }
        return TOPS_ARCSEC[TOPS_ARCSEC.length - 1];
    }

    /** Step of the dispersion's axis (arcsec): three to five to the top. */
    double stepArcsec() {
        if (topArcsec == 1.5 || topArcsec == 3 || topArcsec == 6) {
            return topArcsec / 3;
        }
        return topArcsec == 0.5 ? 0.1 : topArcsec / 4;
    }

    Rectangle2D plot() {
        return new Rectangle2D.Double(axis.leftPx(), topPx, axis.rightPx() - axis.leftPx(), bottomPx - topPx);
    }

    double altitudeY(double deg) {
        return bottomPx - deg / topDeg * (bottomPx - topPx);
    }

    double dispersionY(double arcsec) {
        return bottomPx - arcsec / topArcsec * (bottomPx - topPx);
    }
}
