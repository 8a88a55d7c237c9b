/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import oblate.base.ProblemException;
import oblate.sky.ApparentDisc;
import oblate.sky.RotationSystem;
import oblate.sky.Sky;

/** What the catalog keeps of the sky at a picture's time. */
final class PictureSky {
    private final Sky sky;

    PictureSky(Sky sky) {
        this.sky = sky;
    }

    /**
     * Refuses a time the ephemeris knows nothing of.
     *
     * @param what the picture, for the sentence
     * @throws ProblemException with {@link ArchiveProblem#OUTSIDE_EPHEMERIS}
     */
    void refuseOutsideEphemeris(Object what, Instant mid) {
        if (mid.isBefore(sky.firstInstant()) || mid.isAfter(sky.lastInstant())) {
            throw new ProblemException(
                    ArchiveProblem.OUTSIDE_EPHEMERIS,
                    what,
                    mid.truncatedTo(ChronoUnit.SECONDS),
                    sky.firstInstant(),
                    sky.lastInstant());
        }
    }

    /** Longitudes of the central meridian (degrees) by the planet's system ids. */
    static Map<String, Double> meridians(ApparentDisc disc) {
        Map<String, Double> meridians = new LinkedHashMap<>();
        for (RotationSystem system : disc.planet().globe().systems()) {
            meridians.put(system.id(), disc.centralMeridianDeg(system));
        }
        return meridians;
    }
}
