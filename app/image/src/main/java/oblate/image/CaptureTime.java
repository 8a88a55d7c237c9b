/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;

/**
 * When a picture was taken: the middle of its capture, how that was found, and how sure it is.
 *
 * @param midUtc middle of the capture, UTC
 * @param exposureS length of the capture (s), if known
 * @param source where the time came from
 * @param place where exactly
 * @param originalText the text it was read from
 * @param statedMeaning which moment the source stated; the shift to the middle is already in {@code midUtc}
 * @param meaningAssumed neither source nor user said which moment it is; the middle was taken (for DATE-OBS of FITS the start, by custom), and
 *     {@code uncertaintyS} allows for it when the length is known
 * @param zoneAssumed the source gave no zone and the user's word supplied one
 * @param uncertaintyS standard uncertainty (s), positive
 * @param notes what else a person should know, one sentence each
 */
public record CaptureTime(
        Instant midUtc,
        OptionalDouble exposureS,
        TimeSource source,
        String place,
        String originalText,
        TimeMeaning statedMeaning,
        boolean meaningAssumed,
        boolean zoneAssumed,
        double uncertaintyS,
        List<String> notes) {

    /** Copies the list. */
    public CaptureTime {
        notes = List.copyOf(notes);
    }
}
