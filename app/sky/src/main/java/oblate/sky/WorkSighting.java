/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.List;

/** What the Earth sees of a planet, as vectors on ICRF axes, changed in place; see {@link Sighting}. Belongs to one thread. */
final class WorkSighting {
    private final Ephemeris ephemeris;
    private final int body;
    private final List<MoonFacts> moons;
    private final double[] moonKm = new double[3];
    private final WorkVec3 velocity = new WorkVec3();
    private final WorkVec3 sunThen = new WorkVec3();

    final WorkEarth earth;

    /** Earth to planet between the places both have at the moment (km). */
    final WorkVec3 toPlanetNowKm = new WorkVec3();

    /** Earth now to planet then (km). */
    final WorkVec3 toPlanetKm = new WorkVec3();

    /** Planet then to the Sun one light time earlier still (km). */
    final WorkVec3 planetToSunKm = new WorkVec3();

    /** Planet's centre minus its system's barycentre (km). */
    final WorkVec3 offsetKm = new WorkVec3();

    /** When the light left the planet, days of TDB from J2000. */
    double emittedTdbDays;

    WorkSighting(PlanetModel planet, WorkEarth earth, Ephemeris ephemeris) {
        this.earth = earth;
        this.ephemeris = ephemeris;
        body = planet.globe().deBody();
        moons = planet.moons();
    }

    /** Goes to a moment inside the span. */
    void look(UtcTime time) {
        earth.look(time);
        lookAtPlanet();
        lookFromPlanet();
    }

    /**
     * The equation of light time, c τ = distance at t − τ, by Newton's method: one step from the place now, one from there. The second leaves microseconds,
     * over which the planet goes straight on.
     */
    private void lookAtPlanet() {
        double t = earth.tdbDays;
        ephemeris.body(body, t, toPlanetNowKm, velocity);
        toPlanetNowKm.subtract(earth.placeKm);
        double distance = toPlanetNowKm.norm();
        double light = distance / (Starlight.C_KM_PER_DAY + velocity.dot(toPlanetNowKm) / distance);
        setOffset(t - light);
        toPlanetNowKm.add(1, offsetKm);
        ephemeris.body(body, t - light, toPlanetKm, velocity);
        toPlanetKm.subtract(earth.placeKm).add(1, offsetKm);
        distance = toPlanetKm.norm();
        double late = (distance - light * Starlight.C_KM_PER_DAY)
                / (Starlight.C_KM_PER_DAY + velocity.dot(toPlanetKm) / distance);
        toPlanetKm.add(-late, velocity);
        emittedTdbDays = t - (light + late);
    }

    /**
     * The ephemeris has the barycentres of the outer planets' systems. The planet's centre stands off by −Σ (mass share × moon), up to 220 km for Jupiter; over
     * the minutes of interest that offset is as good as fixed.
     */
    private void setOffset(double tdbDays) {
        offsetKm.set(0, 0, 0);
        for (int i = 0; i < moons.size(); i++) {
            MoonFacts moon = moons.get(i);
            MoonMotion motion = moon.motion();
            double share = moon.massShare();
            if (share > 0 && tdbDays >= motion.firstTdbDay() && tdbDays <= motion.lastTdbDay()) {
                motion.fromPlanetKm(tdbDays, moonKm);
                offsetKm.set(
                        offsetKm.x - share * moonKm[0], offsetKm.y - share * moonKm[1], offsetKm.z - share * moonKm[2]);
            }
        }
    }

    private void lookFromPlanet() {
        // How long sunlight was under way is first told from the Sun moving straight on: right to a millisecond.
        planetToSunKm
                .set(earth.sunKm)
                .add(emittedTdbDays - earth.tdbDays, earth.sunKmPerDay)
                .subtract(earth.placeKm)
                .subtract(toPlanetKm);
        double light = planetToSunKm.norm() / Starlight.C_KM_PER_DAY;
        ephemeris.body(Ephemeris.SUN, emittedTdbDays - light, sunThen, velocity);
        planetToSunKm.set(sunThen).subtract(earth.placeKm).subtract(toPlanetKm);
        double late = planetToSunKm.norm() / Starlight.C_KM_PER_DAY - light;
        planetToSunKm.add(-late, velocity);
    }

    Sighting frozen() {
        return new Sighting(
                earth.frozen(),
                new PlanetPath(ephemeris, body, offsetKm.frozen()),
                emittedTdbDays,
                toPlanetKm.frozen(),
                planetToSunKm.frozen());
    }
}
