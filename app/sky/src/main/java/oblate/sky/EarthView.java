/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * The Earth's place and motion at a moment, barycentric on ICRF axes, and what that does to directions.
 *
 * @param moment when
 * @param placeKm Earth's centre (km)
 * @param velocityC its velocity in units of the speed of light
 * @param toSunKm Earth now to Sun one light time ago (km)
 * @param toDate turn to the true equator and equinox of date
 */
record EarthView(Moment moment, Vec3 placeKm, Vec3 velocityC, Vec3 toSunKm, Turn toDate) {

    /** Apparent direction of date (unit vector) of what stands at a vector from the Earth (km, light time removed). */
    Vec3 apparent(Vec3 fromEarthKm) {
        WorkVec3 direction = WorkVec3.of(fromEarthKm);
        Starlight.bend(direction, WorkVec3.of(toSunKm), new WorkVec3());
        return aberratedOfDate(direction);
    }

    /** Apparent direction of date of the Sun's centre (unit vector). */
    Vec3 apparentSun() {
        return aberratedOfDate(WorkVec3.of(toSunKm.unit()));
    }

    private Vec3 aberratedOfDate(WorkVec3 direction) {
        Starlight.aberrate(direction, WorkVec3.of(velocityC), toSunKm.norm());
        return toDate.apply(direction.frozen());
    }
}
