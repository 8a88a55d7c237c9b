/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Which pictures are wanted; empty parts do not restrict. Results come in order of time, undated ones last.
 *
 * @param planetId planet
 * @param night evening's date
 * @param from not before (UTC)
 * @param to before (UTC)
 * @param meridian central meridian range
 * @param observer observer's name
 * @param kit kit name
 * @param filter words in the filter
 * @param words words looked for in names, notes, observers, kits
 * @param fitted has a current fit or not
 * @param marked has current marks or not
 * @param limit most rows; 0 for all
 */
public record PictureSearch(
        Optional<String> planetId,
        Optional<LocalDate> night,
        Optional<Instant> from,
        Optional<Instant> to,
        Optional<MeridianRange> meridian,
        Optional<String> observer,
        Optional<String> kit,
        Optional<String> filter,
        Optional<String> words,
        Optional<Boolean> fitted,
        Optional<Boolean> marked,
        int limit) {

    /**
     * A range of central meridians, from west to east round the circle as longitudes grow; {@code fromDeg} may be above {@code toDeg}.
     *
     * @param systemId "1", "2", "3" or "iau"
     * @param fromDeg start (deg)
     * @param toDeg end (deg)
     */
    public record MeridianRange(String systemId, double fromDeg, double toDeg) {

        /**
         * Checks the numbers.
         *
         * @throws IllegalArgumentException when one is not finite
         */
        public MeridianRange {
            if (!Double.isFinite(fromDeg + toDeg)) {
                throw new IllegalArgumentException(fromDeg + " to " + toDeg);
            }
        }
    }

    /** Everything. */
    public static PictureSearch all() {
        return of(Optional.empty());
    }

    /** All pictures of one night. */
    public static PictureSearch ofNight(LocalDate night) {
        return of(Optional.of(night));
    }

    private static PictureSearch of(Optional<LocalDate> night) {
        return new PictureSearch(
                Optional.empty(),
                night,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                0);
    }
}
