/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.Optional;

/** The Earth and the Sun at a moment, on ICRF axes, changed in place; see {@link EarthView}. Belongs to one thread. */
final class WorkEarth {
    private final Ephemeris ephemeris;
    private final LeapSeconds leapSeconds;
    private final EarthAxis axis;
    private final Optional<Foothold> foothold;
    private final WorkVec3 scratch = new WorkVec3();
    private final WorkVec3 scratch2 = new WorkVec3();

    UtcTime utc;
    double ttMinusUtcS;
    double ttDays;
    double tdbDays;

    /** Earth's centre, or the place looked from, barycentric (km). */
    final WorkVec3 placeKm = new WorkVec3();

    /** Its velocity in units of the speed of light. */
    final WorkVec3 velocityC = new WorkVec3();

    /** The Sun at the moment itself, barycentric (km), and how it moves (km per day). */
    final WorkVec3 sunKm = new WorkVec3();

    final WorkVec3 sunKmPerDay = new WorkVec3();

    /** Earth now to Sun one light time ago (km). */
    final WorkVec3 toSunKm = new WorkVec3();

    /** Turn to the true equator and equinox of date. */
    final WorkTurn toDate = new WorkTurn();

    /**
     * @param foothold a place to look from; empty for the Earth's centre. What its turning with the Earth does to directions (0.3 arcsec) is left out: it shifts a
     *     planet and its moons alike.
     */
    WorkEarth(Ephemeris ephemeris, LeapSeconds leapSeconds, EarthAxis axis, Optional<Foothold> foothold) {
        this.ephemeris = ephemeris;
        this.leapSeconds = leapSeconds;
        this.axis = axis;
        this.foothold = foothold;
    }

    /** Goes to a moment inside the span. */
    void look(UtcTime time) {
        utc = time;
        ttMinusUtcS = leapSeconds.ttMinusUtcS(time);
        ttDays = Moment.ttDays(time, ttMinusUtcS);
        tdbDays = ttDays + Moment.tdbMinusTtS(ttDays) / 86400;
        ephemeris.earth(tdbDays, placeKm, velocityC, scratch, scratch2);
        velocityC.scale(1 / Starlight.C_KM_PER_DAY);
        if (foothold.isPresent()) {
            placeKm.add(1, WorkVec3.of(foothold.get().fromCentreKm(ttDays)));
        }
        ephemeris.body(Ephemeris.SUN, tdbDays, sunKm, sunKmPerDay);
        toSunKm.set(sunKm).subtract(placeKm);
        // The Sun goes 7 km in its light time, and bends from its line by centimetres.
        double distance = toSunKm.norm();
        double recessionKmPerDay = toSunKm.dot(sunKmPerDay) / distance;
        toSunKm.add(-distance / (Starlight.C_KM_PER_DAY + recessionKmPerDay), sunKmPerDay);
        axis.at(ttDays, toDate);
    }

    /** Turns the vector from the Earth to a body (km, light time removed) into its apparent direction on ICRF axes (unit vector). */
    void turnApparent(WorkVec3 body) {
        Starlight.bend(body, toSunKm, scratch);
        Starlight.aberrate(body, velocityC, toSunKm.norm());
    }

    EarthView frozen() {
        return new EarthView(
                new Moment(utc, ttMinusUtcS, ttDays, tdbDays),
                placeKm.frozen(),
                velocityC.frozen(),
                toSunKm.frozen(),
                toDate.frozen());
    }
}
