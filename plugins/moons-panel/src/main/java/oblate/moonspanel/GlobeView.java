/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.Optional;
import oblate.sky.ApparentDisc;
import oblate.sky.LongitudeSense;

/**
 * The planet's globe as the Earth sees it, flat on the sky in equatorial radii: x to celestial west along the equator, y to the planet's north.
 *
 * <p>Lengths along the spin axis are stretched by the ratio of the axes, which makes the globe a unit sphere; there limb and terminator are great
 * circles. Immutable.
 */
final class GlobeView {
    private static final int STEPS = 90;
    private static final double LEAST_DEFECT = 1e-4;
    private final ApparentDisc disc;
    private final double polarRatio;
    private final double tiltRad;
    private final double[] earth;
    private final double[] sun;

    GlobeView(ApparentDisc disc) {
        this.disc = disc;
        polarRatio = disc.planet().globe().figure().polarRatio();
        tiltRad = Math.toRadians(disc.subEarth().latCentricDeg());
        earth = stretched(tiltRad, 0);
        sun = stretched(
                Math.toRadians(disc.subSolar().latCentricDeg()),
                eastOfMeridianRad(disc.subSolar().iauLonDeg()));
    }

    /** Toward a direction; on the unit sphere a place is turned to it when its product with this is positive. */
    private double[] stretched(double latRad, double eastRad) {
        double[] v = {
            Math.cos(latRad) * Math.cos(eastRad), Math.cos(latRad) * Math.sin(eastRad), Math.sin(latRad) / polarRatio
        };
        return scaled(v, 1 / Math.sqrt(dot(v, v)));
    }

    private double eastOfMeridianRad(double iauLonDeg) {
        int sense = disc.planet().globe().longitudePositive() == LongitudeSense.EAST ? 1 : -1;
        return Math.toRadians(sense * (iauLonDeg - disc.subEarth().iauLonDeg()));
    }

    /** The edge of the globe. */
    Shape outline() {
        double ratio =
                disc.planet().globe().figure().apparentAxisRatio(disc.subEarth().latCentricDeg());
        return new Ellipse2D.Double(-1, -ratio, 2, 2 * ratio);
    }

    /** A place of the globe, when it is on the side turned to the Earth. */
    Optional<Point2D> place(double iauLonDeg, double latGraphicDeg) {
        double latRad = Math.toRadians(disc.planet().globe().figure().centricFromGraphicDeg(latGraphicDeg));
        // The graphic latitude is the direction of the normal; on the unit sphere its tangent is that of the centric
        // one over the ratio of axes.
        double onSphere = Math.atan2(Math.sin(latRad) / polarRatio, Math.cos(latRad));
        double east = eastOfMeridianRad(iauLonDeg);
        double[] p = {Math.cos(onSphere) * Math.cos(east), Math.cos(onSphere) * Math.sin(east), Math.sin(onSphere)};
        return dot(p, earth) < 0 ? Optional.empty() : Optional.of(flat(p));
    }

    /** The seen part of a circle of latitude (deg, planetographic). */
    Shape parallel(double latGraphicDeg) {
        Path2D path = new Path2D.Double();
        boolean pen = false;
        for (int i = 0; i <= 2 * STEPS; i++) {
            // begins on the far side, so that what is seen is one piece
            double lon = disc.subEarth().iauLonDeg() + 180 + 180.0 * i / STEPS;
            Optional<Point2D> at = place(lon, latGraphicDeg);
            if (at.isPresent()) {
                if (pen) {
                    path.lineTo(at.get().getX(), at.get().getY());
                } else {
                    path.moveTo(at.get().getX(), at.get().getY());
                }
            }
            pen = at.isPresent();
        }
        return path;
    }

    /** The part of the disc that the Sun does not reach, between terminator and limb; empty at full phase. */
    Optional<Shape> unlit() {
        double[] horn = cross(earth, sun);
        double length = Math.sqrt(dot(horn, horn));
        if (length < LEAST_DEFECT) {
            return Optional.empty();
        }
        horn = scaled(horn, 1 / length);
        double[] seen = cross(sun, horn);
        if (dot(seen, earth) < 0) {
            seen = scaled(seen, -1);
        }
        double[] dark = cross(earth, horn);
        if (dot(dark, sun) > 0) {
            dark = scaled(dark, -1);
        }
        Path2D path = new Path2D.Double();
        for (int i = 0; i <= STEPS; i++) {
            Point2D p = flat(between(horn, seen, Math.PI * i / STEPS));
            if (i == 0) {
                path.moveTo(p.getX(), p.getY());
            } else {
                path.lineTo(p.getX(), p.getY());
            }
        }
        for (int i = STEPS; i >= 0; i--) {
            Point2D p = flat(between(horn, dark, Math.PI * i / STEPS));
            path.lineTo(p.getX(), p.getY());
        }
        path.closePath();
        return Optional.of(path);
    }

    private static double[] between(double[] a, double[] b, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        return new double[] {c * a[0] + s * b[0], c * a[1] + s * b[1], c * a[2] + s * b[2]};
    }

    private Point2D flat(double[] onSphere) {
        double z = onSphere[2] * polarRatio;
        return new Point2D.Double(onSphere[1], z * Math.cos(tiltRad) - onSphere[0] * Math.sin(tiltRad));
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    private static double[] scaled(double[] a, double factor) {
        return new double[] {factor * a[0], factor * a[1], factor * a[2]};
    }
}
