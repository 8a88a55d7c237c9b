/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;

/**
 * Where places on the sky come to lie in the drawing. Places are in equatorial radii of the planet from its centre: x to celestial west along its
 * equator as seen, y to its north. In the sky's sense, north up, east is on the left. Immutable.
 *
 * @param poleTurnDeg how far the planet's north is turned from straight up, counter-clockwise before mirroring (deg)
 * @param mirrored whether left and right are changed
 * @param pxPerRadius scale (px per equatorial radius), positive
 * @param centreXPx where the planet's centre is (px)
 * @param centreYPx the same, downward (px)
 */
record Placement(double poleTurnDeg, boolean mirrored, double pxPerRadius, double centreXPx, double centreYPx) {
    Placement {
        if (!(pxPerRadius > 0)) {
            throw new IllegalArgumentException("px per radius " + pxPerRadius);
        }
    }

    /** The pixel of a place. */
    Point2D toScreen(double xWestRadii, double yNorthRadii) {
        return transform().transform(new Point2D.Double(xWestRadii, yNorthRadii), null);
    }

    /** From radii to pixels. */
    AffineTransform transform() {
        AffineTransform t = AffineTransform.getTranslateInstance(centreXPx, centreYPx);
        t.scale(mirrored ? -pxPerRadius : pxPerRadius, -pxPerRadius);
        t.rotate(Math.toRadians(poleTurnDeg));
        return t;
    }

    /** The pixel direction of a position angle of the planet's own (deg, from its north through celestial east), as a unit vector, y downward. */
    Point2D direction(double fromPoleDeg) {
        double angle = Math.toRadians(fromPoleDeg);
        Point2D far = toScreen(-Math.sin(angle), Math.cos(angle));
        return new Point2D.Double((far.getX() - centreXPx) / pxPerRadius, (far.getY() - centreYPx) / pxPerRadius);
    }
}
