/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.time.Instant;

/** Answers what a planet looks like at an instant. Immutable and safe for many threads. */
public final class Sky {

    private Sky() {}

    /** With the bundled ephemeris (DE405) and leap seconds. */
    public static Sky bundled() {
        return new Sky();
    }

    /**
     * The apparent disc from the Earth's centre.
     *
     * @throws oblate.base.ProblemException {@code SkyProblem.OUTSIDE_EPHEMERIS} outside the ephemeris' span
     */
    public ApparentDisc disc(PlanetModel planet, UtcTime time) {
        throw new UnsupportedOperationException(planet.id() + time);
    }

    /** The apparent disc from the Earth's centre, for an instant outside leap seconds. */
    public ApparentDisc disc(PlanetModel planet, Instant time) {
        return disc(planet, UtcTime.of(time));
    }

    /** First instant the ephemeris covers. */
    public Instant firstInstant() {
        return Instant.parse("1959-12-11T00:00:00Z");
    }

    /** Last instant the ephemeris covers. */
    public Instant lastInstant() {
        return Instant.parse("2060-01-29T00:00:00Z");
    }
}
