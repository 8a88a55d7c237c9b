/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import oblate.sky.Vec3;

/**
 * Two moons on one line of sight; lengths are km at the back moon.
 *
 * @param front number of the nearer moon
 * @param back number of the farther
 * @param apartKm distance of the back moon's centre from the line through the front moon's
 * @param backKm radius of the back moon
 * @param frontKm radius of the front moon, cast to the back moon
 * @param penumbraKm half the width of the half-shadow; 0 as seen from the Earth
 * @param backDay when the light passes the back moon (TDB)
 * @param backPlaceKm the back moon then
 */
record Pair(
        int front,
        int back,
        double apartKm,
        double backKm,
        double frontKm,
        double penumbraKm,
        double backDay,
        Vec3 backPlaceKm) {

    static Pair on(Sightline line, int one, int other, double day) {
        Vec3 viewer = line.viewerKm(day);
        Clockwork clockwork = line.clockwork();
        double centreDay = line.passingDay(day, viewer, clockwork::centreKm, day);
        double oneDay = line.passingDay(day, viewer, t -> clockwork.moonKm(one, t), centreDay);
        double otherDay = line.passingDay(day, viewer, t -> clockwork.moonKm(other, t), centreDay);
        Vec3 a = clockwork.moonKm(one, oneDay).minus(viewer);
        Vec3 b = clockwork.moonKm(other, otherDay).minus(viewer);
        double toOne = a.norm();
        double toOther = b.norm();
        boolean swapped = toOne > toOther;
        int front = swapped ? other : one;
        int back = swapped ? one : other;
        double near = Math.min(toOne, toOther);
        double far = Math.max(toOne, toOther);
        double sine = a.cross(b).norm() / (toOne * toOther);
        // Moons beyond a right angle from each other cannot be: both stand at the planet.
        double apart = sine * far;
        var moons = clockwork.system().planet().moons();
        double penumbra = line.fromSun() ? Sightline.SUN_RADIUS_KM * (far - near) / near : 0;
        return new Pair(
                front,
                back,
                apart,
                moons.get(back).radiusKm(),
                moons.get(front).radiusKm() * far / near,
                penumbra,
                swapped ? oneDay : otherDay,
                viewer.plus(swapped ? a : b));
    }

    /** Distance at which a contact happens (km). */
    double levelKm(MutualContact which) {
        return switch (which) {
            case PENUMBRA_T1, PENUMBRA_T4 -> backKm + frontKm + penumbraKm;
            case T1, T4 -> backKm + frontKm;
            case UMBRA_T1, UMBRA_T4 -> backKm + frontKm - penumbraKm;
            case T2, T3 -> Math.abs(backKm - frontKm);
        };
    }

    /** Distance at which anything at all begins (km). */
    double reachKm() {
        return backKm + frontKm + penumbraKm;
    }
}
