/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.image.CaptureTime;
import oblate.image.PictureHeader;
import oblate.image.TimeClaim;

/**
 * What is entered in the catalog for a picture being filed.
 *
 * @param sha256 of its bytes
 * @param sizeBytes length of its file
 * @param relativePath where it lies in the archive
 * @param originalName file name it came under
 * @param header what its file says
 * @param planetId planet, if known
 * @param time time, if known
 * @param night evening's date, there when {@code time} is
 * @param centralMeridians by system id
 * @param claims every statement about its time
 * @param conflicts disagreements between them
 * @param facts the user's words, completed from the file
 */
record PictureEntry(
        String sha256,
        long sizeBytes,
        String relativePath,
        String originalName,
        PictureHeader header,
        Optional<String> planetId,
        Optional<CaptureTime> time,
        Optional<LocalDate> night,
        Map<String, Double> centralMeridians,
        List<TimeClaim> claims,
        List<String> conflicts,
        FilingFacts facts) {}
