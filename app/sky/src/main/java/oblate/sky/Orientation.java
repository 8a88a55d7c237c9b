/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** How a globe stands and how far it has turned at a moment (TDB at the planet). Immutable. */
final class Orientation {
    private final WorkOrientation at;

    private Orientation(WorkOrientation at) {
        this.at = at;
    }

    /**
     * At a moment.
     *
     * @param tdbDays days of TDB from J2000
     */
    static Orientation at(Globe globe, double tdbDays) {
        WorkOrientation at = new WorkOrientation(globe);
        at.turn(tdbDays);
        return new Orientation(at);
    }

    /** Unit vector to the north pole (ICRF). */
    Vec3 pole() {
        return at.pole.frozen();
    }

    /** The point of the globe under a body, given the vector from the planet's centre to the body (ICRF, any length). */
    SubPoint under(Vec3 direction) {
        return workUnder(direction).frozen();
    }

    double latCentricDeg(Vec3 direction) {
        return workUnder(direction).latCentricDeg;
    }

    private WorkSubPoint workUnder(Vec3 direction) {
        WorkSubPoint point = new WorkSubPoint(at.globe);
        point.under(WorkVec3.of(direction), at);
        return point;
    }
}
