/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the user says about times before files are read. All parts may be empty.
 *
 * @param statedTime the time itself, ISO 8601 with {@code Z} or offset; beats every other source
 * @param zone zone of sources that give none; without it such a time is flagged and not used
 * @param meaning which moment sources mean that do not say
 * @param exposureS length of the capture where the file does not say (s)
 * @param namePattern a pattern for times in file names, in the letters of {@link java.time.format.DateTimeFormatter}; tried before ISO 8601
 */
public record TimeWish(
        Optional<String> statedTime,
        Optional<ZoneId> zone,
        Optional<TimeMeaning> meaning,
        OptionalDouble exposureS,
        Optional<String> namePattern) {

    /** No wishes. */
    public static TimeWish none() {
        return new TimeWish(
                Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty());
    }
}
