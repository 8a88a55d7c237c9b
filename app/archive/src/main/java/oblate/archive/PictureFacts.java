/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.image.CaptureTime;

/**
 * What is known of a filed picture and may be corrected; all of it, empty where unknown.
 *
 * @param planetId planet
 * @param time when it was taken
 * @param site name of a site in the archive
 * @param observer observer's name
 * @param kit name of a kit; made when the archive has none of that name
 * @param filter filter in words
 * @param seeing seeing
 * @param transparency transparency
 * @param notes free words
 */
public record PictureFacts(
        Optional<String> planetId,
        Optional<Taken> time,
        Optional<String> site,
        Optional<String> observer,
        Optional<String> kit,
        Optional<String> filter,
        Optional<Rating> seeing,
        Optional<Rating> transparency,
        Optional<String> notes) {

    /**
     * When a picture was taken.
     *
     * @param midUtc middle of the capture, UTC
     * @param exposureS length of the capture (s), positive or 0
     * @param sigmaS standard uncertainty of {@code midUtc} (s), positive
     */
    public record Taken(Instant midUtc, OptionalDouble exposureS, double sigmaS) {

        /** @throws IllegalArgumentException for a length or an uncertainty out of range */
        public Taken {
            if (!(sigmaS > 0) || Double.isInfinite(sigmaS)) {
                throw new IllegalArgumentException("the uncertainty of a time must be a positive number of seconds");
            }
            if (exposureS.isPresent() && !(exposureS.getAsDouble() >= 0)) {
                throw new IllegalArgumentException("the length of a capture must not be negative");
            }
        }

        static Taken of(CaptureTime time) {
            return new Taken(time.midUtc(), time.exposureS(), time.uncertaintyS());
        }
    }

    /** What the catalog says of a picture. */
    public static PictureFacts of(ArchivedPicture p) {
        return new PictureFacts(
                p.planetId(),
                p.time().map(Taken::of),
                p.site(),
                p.observer(),
                p.kit(),
                p.filter(),
                p.seeing(),
                p.transparency(),
                p.notes());
    }

    /** The same with another planet. */
    public PictureFacts withPlanet(Optional<String> planet) {
        return new PictureFacts(planet, time, site, observer, kit, filter, seeing, transparency, notes);
    }

    /** The same with another time. */
    public PictureFacts withTime(Optional<Taken> taken) {
        return new PictureFacts(planetId, taken, site, observer, kit, filter, seeing, transparency, notes);
    }

    /** The same with another site. */
    public PictureFacts withSite(Optional<String> name) {
        return new PictureFacts(planetId, time, name, observer, kit, filter, seeing, transparency, notes);
    }

    /** The same with another observer. */
    public PictureFacts withObserver(Optional<String> name) {
        return new PictureFacts(planetId, time, site, name, kit, filter, seeing, transparency, notes);
    }

    /** The same with another kit. */
    public PictureFacts withKit(Optional<String> name) {
        return new PictureFacts(planetId, time, site, observer, name, filter, seeing, transparency, notes);
    }

    /** The same with another filter. */
    public PictureFacts withFilter(Optional<String> words) {
        return new PictureFacts(planetId, time, site, observer, kit, words, seeing, transparency, notes);
    }

    /** The same with another seeing. */
    public PictureFacts withSeeing(Optional<Rating> rating) {
        return new PictureFacts(planetId, time, site, observer, kit, filter, rating, transparency, notes);
    }

    /** The same with another transparency. */
    public PictureFacts withTransparency(Optional<Rating> rating) {
        return new PictureFacts(planetId, time, site, observer, kit, filter, seeing, rating, notes);
    }

    /** The same with other notes. */
    public PictureFacts withNotes(Optional<String> words) {
        return new PictureFacts(planetId, time, site, observer, kit, filter, seeing, transparency, words);
    }
}
