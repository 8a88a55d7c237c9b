/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.List;

/** How a globe stands and how far it has turned, changed in place from moment to moment. Belongs to one thread. */
final class WorkOrientation {
    /** Unit vector to the north pole (ICRF). */
    final WorkVec3 pole = new WorkVec3();

    /** Unit vector to the ascending node of the equator on the ICRF equator. */
    final WorkVec3 node = new WorkVec3();

    /** In the equator, 90° east of the node. */
    final WorkVec3 beyondNode = new WorkVec3();

    final Globe globe;
    private double tdbDays;
    private double periodicDeg;

    WorkOrientation(Globe globe) {
        this.globe = globe;
    }

    /** To a moment of TDB at the planet, days from J2000. */
    void turn(double newTdbDays) {
        tdbDays = newTdbDays;
        double t = tdbDays / 36525;
        RotationElements elements = globe.elements();
        double ra = Math.toRadians(
                elements.poleRaDeg() + elements.poleRaDegPerCentury() * t + sum(elements.poleRaTerms(), t));
        double dec = Math.toRadians(
                elements.poleDecDeg() + elements.poleDecDegPerCentury() * t + sum(elements.poleDecTerms(), t));
        double sinRa = Math.sin(ra);
        double cosRa = Math.cos(ra);
        double sinDec = Math.sin(dec);
        double cosDec = Math.cos(dec);
        pole.set(cosDec * cosRa, cosDec * sinRa, sinDec);
        node.set(-sinRa, cosRa, 0);
        beyondNode.set(-sinDec * cosRa, -sinDec * sinRa, cosDec);
        periodicDeg = sum(elements.meridianTerms(), t);
    }

    private static double sum(List<PeriodicTerm> terms, double t) {
        double sum = 0;
        for (int i = 0; i < terms.size(); i++) {
            sum += terms.get(i).valueDeg(t);
        }
        return sum;
    }

    /** Angle W of a system's prime meridian from the node (deg), any number of turns. */
    double meridianDeg(RotationSystem system) {
        return system.w0Deg() + system.degPerDay() * tdbDays + periodicDeg;
    }
}
