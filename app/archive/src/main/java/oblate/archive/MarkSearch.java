/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.Optional;

/**
 * Which marks are wanted; empty parts do not restrict. Results come in order of time.
 *
 * @param planetId planet
 * @param pictureId picture
 * @param featureName feature
 * @param from picture not before (UTC)
 * @param to picture before (UTC)
 * @param history also superseded and withdrawn marks
 */
public record MarkSearch(
        Optional<String> planetId,
        Optional<Long> pictureId,
        Optional<String> featureName,
        Optional<Instant> from,
        Optional<Instant> to,
        boolean history) {

    /** All current marks. */
    public static MarkSearch all() {
        return new MarkSearch(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), false);
    }

    /** Current marks of one picture. */
    public static MarkSearch ofPicture(long pictureId) {
        return new MarkSearch(
                Optional.empty(), Optional.of(pictureId), Optional.empty(), Optional.empty(), Optional.empty(), false);
    }
}
