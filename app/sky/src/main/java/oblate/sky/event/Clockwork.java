/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetSystem;
import oblate.sky.Vec3;

/**
 * Sun, Earth, a planet's centre and its moons over a span of some hundred days, cheap to ask for a place again and again. Not safe for many
 * threads: each search makes its own.
 *
 * <p>The planet's centre stands off the barycentre of its system by −Σ (mass share × moon). Places are km on ICRF axes, times days of TDB from J2000.
 */
final class Clockwork {
    private static final double SUN_PIECE_DAYS = 16;
    private static final double EARTH_PIECE_DAYS = 2;
    private static final double GROUND_PIECE_DAYS = 1.0 / 8;
    private static final int PIECES_PER_TURN = 8;

    private final PlanetSystem system;
    private final Track sun;
    private final Track earth;
    private final Track centre;
    private final Optional<Track> ground;
    private final List<Track> moons = new ArrayList<>();

    Clockwork(PlanetSystem system, List<Orbit> orbits, double fromDay, double toDay) {
        this.system = system;
        List<MoonFacts> facts = system.planet().moons();
        sun = new Track(system::sunKm, SUN_PIECE_DAYS, fromDay, toDay);
        earth = new Track(system::earthKm, EARTH_PIECE_DAYS, fromDay, toDay);
        ground = system.isFromGround()
                ? Optional.of(new Track(system::fromEarthKm, GROUND_PIECE_DAYS, fromDay, toDay))
                : Optional.empty();
        double shortest = Double.MAX_VALUE;
        for (int i = 0; i < facts.size(); i++) {
            double piece = orbits.get(i).periodDays() / PIECES_PER_TURN;
            moons.add(new Track(facts.get(i).motion()::fromPlanetKm, piece, fromDay, toDay));
            if (facts.get(i).massShare() > 0) {
                shortest = Math.min(shortest, piece);
            }
        }
        // Half a piece, so that the moons' tracks are asked within their span at its ends too.
        double piece = Math.min(shortest, EARTH_PIECE_DAYS);
        centre = new Track(this::centreFromMoonsKm, piece, fromDay + piece, toDay - piece);
    }

    private Vec3 centreFromMoonsKm(double day) {
        Vec3 place = system.barycentreKm(day);
        List<MoonFacts> facts = system.planet().moons();
        for (int i = 0; i < facts.size(); i++) {
            if (facts.get(i).massShare() > 0) {
                place = place.plus(-facts.get(i).massShare(), moons.get(i).at(day));
            }
        }
        return place;
    }

    PlanetSystem system() {
        return system;
    }

    Vec3 sunKm(double day) {
        return sun.at(day);
    }

    /** The one who sees it all: the Earth's centre, or a place on the ground. */
    Vec3 viewerKm(double day) {
        Vec3 place = earth.at(day);
        return ground.isPresent() ? place.plus(1, ground.get().at(day)) : place;
    }

    Vec3 centreKm(double day) {
        return centre.at(day);
    }

    Vec3 moonFromCentreKm(int moon, double day) {
        return moons.get(moon).at(day);
    }

    Vec3 moonKm(int moon, double day) {
        return centre.at(day).plus(moons.get(moon).at(day));
    }

    /** When light that leaves a place (km) at a moment comes to the viewer. */
    double arrivalDay(Vec3 fromKm, double day) {
        double arrival = day;
        for (int i = 0; i < 4; i++) {
            arrival = day + viewerKm(arrival).minus(fromKm).norm() / PlanetSystem.C_KM_PER_DAY;
        }
        return arrival;
    }
}
