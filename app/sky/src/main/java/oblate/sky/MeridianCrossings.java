/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.ArrayList;
import java.util.List;
import oblate.base.ProblemException;

/**
 * Finds when a longitude crosses a planet's central meridian.
 *
 * <p>Seen from the Earth every planet's central meridian moves one way only: the Earth's and the planet's motion change its speed, to twice on Venus, but
 * never its sense. So steps of a twelfth of a turn cannot overlook a crossing.
 */
public final class MeridianCrossings {
    private static final int MOST = 20_000;
    private static final double STEP_DEG = 30;

    private final Sky sky;
    private final PlanetModel planet;
    private final RotationSystem system;
    private final int sense;

    /**
     * @param system one of the planet's
     */
    public MeridianCrossings(Sky sky, PlanetModel planet, RotationSystem system) {
        this.sky = sky;
        this.planet = planet;
        this.system = system;
        // direct and counted to the west, or retrograde and counted to the east: the meridian's longitude grows
        sense = system.degPerDay() > 0 == (planet.globe().longitudePositive() == LongitudeSense.WEST) ? 1 : -1;
    }

    /**
     * All crossings in a stretch of time, ends included, in order.
     *
     * @throws ProblemException {@link SkyProblem#OUTSIDE_EPHEMERIS}, {@link SkyProblem#TOO_MANY_CROSSINGS} when there would be more than 20 000,
     *     {@link SkyProblem#DRIFT_TOO_FAST} for a longitude that drifts at a fifth of the planet's rotation or more
     */
    public List<MeridianCrossing> between(MovingLongitude longitude, TimeSpan span) {
        double degPerDay = Math.abs(system.degPerDay());
        if (!(Math.abs(longitude.degPerDay()) < degPerDay / 5)) {
            throw new ProblemException(
                    SkyProblem.DRIFT_TOO_FAST, longitude.degPerDay(), planet.label(), system.degPerDay());
        }
        double expected = span.clockSeconds() / 86400 * degPerDay / 360;
        if (expected > MOST) {
            throw new ProblemException(
                    SkyProblem.TOO_MANY_CROSSINGS, span.from(), span.to(), Math.round(expected), MOST);
        }
        double stepS = STEP_DEG / degPerDay * 86400;
        double lengthS = span.clockSeconds();
        List<MeridianCrossing> found = new ArrayList<>();
        double a = 0;
        double atA = pastDeg(longitude, span, a);
        if (atA == 0) {
            found.add(crossing(longitude, span.from()));
        }
        while (a < lengthS) {
            double b = Math.min(a + stepS, lengthS);
            double atB = pastDeg(longitude, span, b);
            if (atA < 0 && atB >= 0 && atB - atA < 180) {
                double zero = Root.between(s -> pastDeg(longitude, span, s), a, atA, b, atB);
                found.add(crossing(longitude, span.from().plusClockSeconds(zero)));
            }
            a = b;
            atA = atB;
        }
        return found;
    }

    /** How far the longitude has gone past the meridian (deg, −180…180); grows with time. */
    private double pastDeg(MovingLongitude longitude, TimeSpan span, double seconds) {
        UtcTime time = span.from().plusClockSeconds(seconds);
        return sense * Math.IEEEremainder(meridianDeg(time) - longitude.atDeg(time), 360);
    }

    private double meridianDeg(UtcTime time) {
        return sky.disc(planet, time).centralMeridianDeg(system);
    }

    private MeridianCrossing crossing(MovingLongitude longitude, UtcTime time) {
        return new MeridianCrossing(
                time,
                longitude.atDeg(time),
                longitude.sigmaAtDeg(time),
                MeridianSpeed.degPerMin(sky, planet, system, time) - sense * longitude.degPerDay() / 1440);
    }
}
