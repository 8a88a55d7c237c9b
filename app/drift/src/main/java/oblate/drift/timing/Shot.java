/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * A picture, or a look, as far as its time goes.
 *
 * @param name what it is called
 * @param midUtc middle of the capture, by its clock
 * @param sigmaS standard uncertainty of that (s), not negative; taken as shared by all pictures of one night and observer
 * @param exposureS length of the capture (s), 0 when not known
 * @param night date of the evening
 * @param observer whose clock it was; may be empty
 * @param site where it was taken; empty when not known
 */
public record Shot(
        String name,
        Instant midUtc,
        double sigmaS,
        double exposureS,
        LocalDate night,
        String observer,
        Optional<ShotSite> site) {
    private static final double SECONDS_PER_HALF_DAY = 43_200;

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException when one is negative or no number
     */
    public Shot {
        if (!(sigmaS >= 0) || !(exposureS >= 0)) {
            throw new IllegalArgumentException(sigmaS + " " + exposureS);
        }
    }

    /** A look that is no picture of an archive; its night runs from noon to noon, UTC. */
    public static Shot look(String name, Instant midUtc, double sigmaS, String observer, Optional<ShotSite> site) {
        LocalDate night = midUtc.minusSeconds((long) SECONDS_PER_HALF_DAY)
                .atOffset(ZoneOffset.UTC)
                .toLocalDate();
        return new Shot(name, midUtc, sigmaS, 0, night, observer, site);
    }

    /** What tells it from other pictures, which may have its name. */
    String key() {
        return name + " " + midUtc;
    }

    /** What names the clock: night and observer. */
    String clock() {
        return night + " " + observer;
    }

    /** Half-width (as a standard error, s) of the stretch of time the picture shows at once. */
    double smearS() {
        return exposureS / Math.sqrt(12);
    }
}
