/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.ArrayList;
import java.util.List;

/**
 * How a globe stands and how far it has turned at a moment (TDB at the planet).
 *
 * @param globe the globe
 * @param tdbDays days of TDB from J2000
 * @param pole unit vector to the north pole (ICRF)
 * @param node unit vector to the ascending node of the equator on the ICRF equator
 * @param periodicDeg periodic part of W (deg)
 */
record Orientation(Globe globe, double tdbDays, Vec3 pole, Vec3 node, double periodicDeg) {

    static Orientation at(Globe globe, double tdbDays) {
        double t = tdbDays / 36525;
        RotationElements elements = globe.elements();
        double ra = Math.toRadians(
                elements.poleRaDeg() + elements.poleRaDegPerCentury() * t + sum(elements.poleRaTerms(), t));
        double dec = Math.toRadians(
                elements.poleDecDeg() + elements.poleDecDegPerCentury() * t + sum(elements.poleDecTerms(), t));
        return new Orientation(
                globe,
                tdbDays,
                Vec3.toward(ra, dec),
                new Vec3(-Math.sin(ra), Math.cos(ra), 0),
                sum(elements.meridianTerms(), t));
    }

    private static double sum(List<PeriodicTerm> terms, double t) {
        double sum = 0;
        for (PeriodicTerm term : terms) {
            sum += term.valueDeg(t);
        }
        return sum;
    }

    /** The point of the globe under a body, given the vector from the planet's centre to the body (ICRF, any length). */
    SubPoint under(Vec3 direction) {
        double centric = latCentricDeg(direction);
        return new SubPoint(
                globe, longitudesDeg(direction), centric, globe.figure().graphicFromCentricDeg(centric));
    }

    double latCentricDeg(Vec3 direction) {
        double along = direction.dot(pole);
        return Math.toDegrees(Math.atan2(along, direction.plus(-along, pole).norm()));
    }

    /** Longitude (deg, 0…360) of a direction from the centre, in each system, counted as the planet's. */
    List<Double> longitudesDeg(Vec3 direction) {
        double fromNodeDeg = Math.toDegrees(Math.atan2(direction.dot(pole.cross(node)), direction.dot(node)));
        int sign = globe.longitudePositive() == LongitudeSense.WEST ? 1 : -1;
        List<Double> longitudes = new ArrayList<>(globe.systems().size());
        for (RotationSystem system : globe.systems()) {
            double w = system.w0Deg() + system.degPerDay() * tdbDays + periodicDeg;
            longitudes.add(Angles.wrapDeg(sign * (w - fromNodeDeg)));
        }
        return longitudes;
    }
}
