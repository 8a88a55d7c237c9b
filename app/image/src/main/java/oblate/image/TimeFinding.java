/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.util.List;
import java.util.Optional;

/**
 * All that was found about a picture's time.
 *
 * @param time the time to use, or empty when none can be used
 * @param claims every statement found, in the order of belief
 * @param disagreements sentences naming claims that differ by more than their precisions allow, e.g. "file name and DateTimeOriginal differ by
 *     3600 s: one hour, likely a zone"
 * @param whyNone when {@code time} is empty: one sentence with the ways to give one
 */
public record TimeFinding(
        Optional<CaptureTime> time, List<TimeClaim> claims, List<String> disagreements, Optional<String> whyNone) {

    /** Copies the lists. */
    public TimeFinding {
        claims = List.copyOf(claims);
        disagreements = List.copyOf(disagreements);
    }
}
