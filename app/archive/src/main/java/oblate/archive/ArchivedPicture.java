/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.image.CaptureTime;

/**
 * A picture in the archive.
 *
 * @param id number in the catalog
 * @param sha256 of its bytes, lower-case hexadecimal
 * @param relativePath below the archive's folder, with forward slashes
 * @param originalName file name it came under
 * @param formatId format that read it
 * @param widthPx width (px)
 * @param heightPx height (px)
 * @param channels 1 or 3
 * @param planetId planet; empty when not known
 * @param time when it was taken; empty for an undated picture
 * @param night evening's date at the site; empty for an undated picture
 * @param centralMeridians central meridian (deg) by system id; empty without planet or time
 * @param site site name
 * @param observer observer's name
 * @param kit kit name
 * @param filter filter in words
 * @param seeing seeing as given
 * @param transparency transparency as given
 * @param notes free words
 * @param timeConflicts disagreements between time sources, one sentence each
 * @param filedUtc when it was filed
 * @param fitted whether it has a current disc fit
 * @param markCount current marks on it
 */
public record ArchivedPicture(
        long id,
        String sha256,
        String relativePath,
        String originalName,
        String formatId,
        int widthPx,
        int heightPx,
        int channels,
        Optional<String> planetId,
        Optional<CaptureTime> time,
        Optional<LocalDate> night,
        Map<String, Double> centralMeridians,
        Optional<String> site,
        Optional<String> observer,
        Optional<String> kit,
        Optional<String> filter,
        Optional<Rating> seeing,
        Optional<Rating> transparency,
        Optional<String> notes,
        List<String> timeConflicts,
        Instant filedUtc,
        boolean fitted,
        int markCount) {

    /** Copies the collections. */
    public ArchivedPicture {
        centralMeridians = Map.copyOf(centralMeridians);
        timeConflicts = List.copyOf(timeConflicts);
    }

    /** File name in the archive. */
    public String name() {
        return relativePath.substring(relativePath.lastIndexOf('/') + 1);
    }
}
