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
    /** Half the step over which the velocity is taken (days); the third derivative makes 1e-9 of it. */
    static final double VELOCITY_STEP_DAYS = 0.005;

    static EarthView at(Moment moment, Ephemeris ephemeris, EarthAxis axis) {
        double t = moment.tdbDays();
        Vec3 place = ephemeris.earthKm(t);
        Vec3 velocityC = ephemeris
                .earthKm(t + VELOCITY_STEP_DAYS)
                .minus(ephemeris.earthKm(t - VELOCITY_STEP_DAYS))
                .times(1 / (2 * VELOCITY_STEP_DAYS * Starlight.C_KM_PER_DAY));
        Vec3 toSun = LightPath.seen(place, t, when -> ephemeris.bodyKm(Ephemeris.SUN, when));
        return new EarthView(moment, place, velocityC, toSun, axis.at(moment.ttDays()));
    }

    /** Apparent direction of date (unit vector) of what stands at a vector from the Earth (km, light time removed). */
    Vec3 apparent(Vec3 fromEarthKm) {
        Vec3 sunToBody = fromEarthKm.minus(toSunKm);
        Vec3 bent = Starlight.bent(fromEarthKm.unit(), sunToBody, toSunKm.times(-1));
        return toDate.apply(Starlight.aberrated(bent, velocityC, toSunKm.norm()));
    }
}
