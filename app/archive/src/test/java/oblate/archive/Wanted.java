/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import oblate.archive.PictureSearch.MeridianRange;

/** Spells out searches, one wish after the other. */
final class Wanted {
    private Optional<String> planet = Optional.empty();
    private Optional<LocalDate> night = Optional.empty();
    private Optional<Instant> from = Optional.empty();
    private Optional<Instant> to = Optional.empty();
    private Optional<MeridianRange> meridian = Optional.empty();
    private Optional<String> observer = Optional.empty();
    private Optional<String> kit = Optional.empty();
    private Optional<String> filter = Optional.empty();
    private Optional<String> words = Optional.empty();
    private Optional<Boolean> fitted = Optional.empty();
    private Optional<Boolean> marked = Optional.empty();
    private int limit;

    Wanted planet(String id) {
        planet = Optional.of(id);
        return this;
    }

    Wanted night(String date) {
        night = Optional.of(LocalDate.parse(date));
        return this;
    }

    Wanted from(String utc) {
        from = Optional.of(Instant.parse(utc));
        return this;
    }

    Wanted to(String utc) {
        to = Optional.of(Instant.parse(utc));
        return this;
    }

    Wanted meridian(String system, double fromDeg, double toDeg) {
        meridian = Optional.of(new MeridianRange(system, fromDeg, toDeg));
        return this;
    }

    Wanted observer(String name) {
        observer = Optional.of(name);
        return this;
    }

    Wanted kit(String name) {
        kit = Optional.of(name);
        return this;
    }

    Wanted filter(String text) {
        filter = Optional.of(text);
        return this;
    }

    Wanted words(String text) {
        words = Optional.of(text);
        return this;
    }

    Wanted fitted(boolean wanted) {
        fitted = Optional.of(wanted);
        return this;
    }

    Wanted marked(boolean wanted) {
        marked = Optional.of(wanted);
        return this;
    }

    Wanted limit(int most) {
        limit = most;
        return this;
    }

    PictureSearch search() {
        return new PictureSearch(
                planet, night, from, to, meridian, observer, kit, filter, words, fitted, marked, limit);
    }
}
