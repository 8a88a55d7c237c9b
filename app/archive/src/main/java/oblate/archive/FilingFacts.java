/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.Optional;
import java.util.regex.Pattern;
import oblate.image.PictureHeader;
import oblate.image.TimeWish;

/**
 * What the user says about pictures being filed. Empty parts are taken from the files where those say something, else left unknown.
 *
 * @param planetId id of the planet
 * @param site name of a site in the archive
 * @param observer observer's name
 * @param kit name of a kit; made when the archive has none of that name
 * @param filter filter in words
 * @param seeing seeing
 * @param transparency transparency
 * @param notes free words
 * @param time wishes about time
 * @param undatedAllowed file a picture without a time as undated rather than refuse it
 */
public record FilingFacts(
        Optional<String> planetId,
        Optional<String> site,
        Optional<String> observer,
        Optional<String> kit,
        Optional<String> filter,
        Optional<Rating> seeing,
        Optional<Rating> transparency,
        Optional<String> notes,
        TimeWish time,
        boolean undatedAllowed) {
    private static final int LONGEST_NAME = 200;
    private static final Pattern CONTROL = Pattern.compile("\\p{Cntrl}+");

    /** Only the planet is said. */
    public static FilingFacts forPlanet(String planetId) {
        return new FilingFacts(
                Optional.of(planetId),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                TimeWish.none(),
                false);
    }

    /** With observer and filter from a file's own words where the user said none, and names fit for one line. */
    FilingFacts completedFrom(PictureHeader header) {
        return new FilingFacts(
                planetId,
                site,
                name(observer.or(() -> header.fact("FITS", "OBSERVER")).or(() -> header.fact("Exif", "Artist"))),
                name(kit),
                name(filter.or(() -> header.fact("FITS", "FILTER"))),
                seeing,
                transparency,
                notes,
                time,
                undatedAllowed);
    }

    private static Optional<String> name(Optional<String> given) {
        return given.map(text -> CONTROL.matcher(text).replaceAll(" ").strip())
                .filter(text -> !text.isEmpty())
                .map(text -> text.length() > LONGEST_NAME ? text.substring(0, LONGEST_NAME) : text);
    }
}
