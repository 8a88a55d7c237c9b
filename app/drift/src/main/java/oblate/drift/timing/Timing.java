/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import oblate.sky.MoonFacts;

/**
 * A timing: an observed moon event, or a place on a moon's way, against what was foretold.
 *
 * @param night date of the evening
 * @param observer whose clock it was; may be empty
 * @param site name of the place it was foretold for; empty for the Earth's centre
 * @param moon the moon
 * @param phenomenon what it was doing
 * @param point the moment
 * @param method how it was timed
 * @param observedUtc observed time by the pictures' clock; empty where only a limit is known, or nothing
 * @param predictedUtc foretold time, as seen from the site, or from the Earth's centre without one
 * @param oMinusPS observed minus predicted (s), positive when seen later than foretold; NaN without a time
 * @param errors its standard errors; all 0 without a time
 * @param beside distance of the marks from the foretold way, and its standard error; empty when none were marked
 * @param notBeforeUtc it did not happen before this (last picture before it)
 * @param notAfterUtc it did not happen after this (first picture after it)
 * @param pictures names of the pictures it rests on, in order of time
 * @param leftOut how many of them were left out as false
 * @param doubts why it may be wrong, one phrase each; empty when nothing speaks against it
 */
public record Timing(
        LocalDate night,
        String observer,
        Optional<String> site,
        MoonFacts moon,
        Phenomenon phenomenon,
        TimedPoint point,
        Method method,
        Optional<Instant> observedUtc,
        Optional<Instant> predictedUtc,
        double oMinusPS,
        Errors errors,
        Optional<Beside> beside,
        Optional<Instant> notBeforeUtc,
        Optional<Instant> notAfterUtc,
        List<String> pictures,
        int leftOut,
        List<String> doubts) {

    /** Copies the lists. */
    public Timing {
        pictures = List.copyOf(pictures);
        doubts = List.copyOf(doubts);
    }

    /** How a timing was made. */
    public enum Method {
        /** From the place of one marked moon or shadow. */
        PLACE,
        /** From the places in several pictures. */
        PLACES,
        /** Between a picture before a contact and one after it. */
        BRACKET,
        /** A contact known from one side only, or not at all. */
        LIMIT,
        /** Places and contacts of one event together. */
        COMBINED;

        /** Lower-case word as tables have it. */
        public String id() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * Standard errors of O−P (s). The parts add in squares.
     *
     * @param totalS all together
     * @param ownS pick, or the interval between pictures: what nothing else shares
     * @param fitS the fitted discs
     * @param clockS the clock, as the pictures state it
     * @param orbitS the moon's orbit and the planet's edge
     * @param phaseS the moon's own phase
     * @param siteS the observer's place on the Earth, where it is not known
     */
    public record Errors(
            double totalS, double ownS, double fitS, double clockS, double orbitS, double phaseS, double siteS) {
        static final Errors NONE = new Errors(0, 0, 0, 0, 0, 0, 0);

        static Errors of(ErrorParts parts) {
            return new Errors(
                    parts.totalS(),
                    parts.ownS(),
                    parts.partS(ErrorParts.PICTURE, ErrorParts.NIGHT_FIT),
                    parts.partS(ErrorParts.CLOCK),
                    parts.partS(ErrorParts.ORBIT),
                    parts.partS(ErrorParts.PHASE),
                    parts.partS(ErrorParts.SITE));
        }
    }

    /**
     * Distance from the foretold way, to the left of the motion on a sky with north up and west to the right.
     *
     * @param arcsec distance (arcsec)
     * @param sigmaArcsec its standard error (arcsec)
     */
    public record Beside(double arcsec, double sigmaArcsec) {}

    /** Whether there is a time, and not only a limit. */
    public boolean hasTime() {
        return observedUtc.isPresent();
    }

    /** "Io" or "Io's shadow". */
    public String words() {
        return new MoonSubject(moon, phenomenon == Phenomenon.SHADOW_TRANSIT).words();
    }
}
