/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import oblate.sky.ApparentDisc;
import oblate.sky.LongitudeSense;
import oblate.sky.Rings;
import oblate.sky.Spheroid;

/**
 * A globe of equatorial radius 1 seen along the line of sight: the part of an {@link ApparentDisc} that geometry needs. Immutable.
 *
 * <p>Sight frame: X to the right with the north pole up in sky sense (planetary east, celestial west), Y up along the projected pole, Z to the
 * observer. Body frame: z to the north pole, x in the central meridian on the observer's side, y planetary east. The surface is
 * x² + y² + z²/q² = 1 with q the polar ratio.
 */
final class GlobeView {
    /** Polar over equatorial radius. */
    final double q;
    /** 1/q². */
    final double k;
    /** Sine of the planetocentric sub-observer latitude. */
    final double sinB;
    /** Its cosine. */
    final double cosB;
    /** Direction of the Sun in the body frame, unit vector. */
    final double sunX;

    final double sunY;
    final double sunZ;
    /** Longitude (deg) = central meridian + this × east angle from it. */
    final int eastSign;
    /** Central meridian in the IAU's system (deg). */
    final double meridianDeg;
    /** Short over long axis of the outline. */
    final double axisRatio;
    /** Edges of the bright rings (equatorial radii); 0 without rings. */
    final double ringInner;

    final double ringOuter;

    GlobeView(ApparentDisc disc) {
        Spheroid figure = disc.planet().globe().figure();
        q = figure.polarRatio();
        k = 1 / (q * q);
        double b = Math.toRadians(disc.subEarth().latCentricDeg());
        sinB = Math.sin(b);
        cosB = Math.cos(b);
        eastSign = disc.planet().globe().longitudePositive() == LongitudeSense.EAST ? 1 : -1;
        meridianDeg = disc.subEarth().iauLonDeg();
        double sunLat = Math.toRadians(disc.subSolar().latCentricDeg());
        double sunEast = Math.toRadians(eastSign * (disc.subSolar().iauLonDeg() - meridianDeg));
        sunX = Math.cos(sunLat) * Math.cos(sunEast);
        sunY = Math.cos(sunLat) * Math.sin(sunEast);
        sunZ = Math.sin(sunLat);
        axisRatio = figure.apparentAxisRatio(disc.subEarth().latCentricDeg());
        double equatorKm = figure.equatorialRadiusKm();
        ringInner = disc.planet().rings().map(Rings::innerRadiusKm).orElse(0.0) / equatorKm;
        ringOuter = disc.planet().rings().map(Rings::outerRadiusKm).orElse(0.0) / equatorKm;
    }

    /** Z of the surface point seen at (X, Y), or NaN off the disc. */
    double depth(double x, double y) {
        double a = cosB * cosB + k * sinB * sinB;
        double halfB = y * sinB * cosB * (k - 1);
        double c = x * x + y * y * (sinB * sinB + k * cosB * cosB) - 1;
        double root = halfB * halfB - a * c;
        return root < 0 ? Double.NaN : (-halfB + Math.sqrt(root)) / a;
    }

    /** Distance from the axis of the ring-plane point seen at (X, Y); huge when the plane is edge-on. */
    double ringRadius(double x, double y) {
        double along = y / (Math.abs(sinB) < 1e-4 ? 1e-4 : sinB);
        return Math.sqrt(x * x + along * along);
    }

    /** Whether the ring-plane point seen at (X, Y) is on the observer's side of the globe's middle. */
    boolean ringInFront(double y) {
        return y * sinB < 0;
    }

    /** Whether the globe keeps the Sun from a point outside it. */
    boolean inShadow(double bx, double by, double bz) {
        double a = sunX * sunX + sunY * sunY + k * sunZ * sunZ;
        double half = bx * sunX + by * sunY + k * bz * sunZ;
        double c = bx * bx + by * by + k * bz * bz - 1;
        return half < 0 && half * half - a * c > 0;
    }

    /** Whether the bright rings keep the Sun from a surface point. */
    boolean ringShadow(double bx, double by, double bz) {
        if (ringOuter == 0 || bz * sunZ >= 0) {
            return false;
        }
        double t = -bz / sunZ;
        double x = bx + t * sunX;
        double y = by + t * sunY;
        double square = x * x + y * y;
        return square > ringInner * ringInner && square < ringOuter * ringOuter;
    }

    /** Body x of a point of the sight frame. */
    double bodyX(double y, double z) {
        return z * cosB - y * sinB;
    }

    /** Body z of a point of the sight frame. */
    double bodyZ(double y, double z) {
        return z * sinB + y * cosB;
    }

    /** Sight Y of a body point. */
    double sightY(double bx, double bz) {
        return bz * cosB - bx * sinB;
    }

    /** Sight Z of a body point. */
    double sightZ(double bx, double bz) {
        return bx * cosB + bz * sinB;
    }

    /** Longitude (deg, 0…360) in the IAU's system of a body direction. */
    double longitudeDeg(double bx, double by) {
        double lon = (meridianDeg + eastSign * Math.toDegrees(Math.atan2(by, bx))) % 360;
        return lon < 0 ? lon + 360 : lon;
    }
}
