/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.archive.PictureFacts;
import oblate.archive.Rating;

/** Facts of a picture as named words, for the journal's file; what is absent has no word. */
final class FactsText {
    private FactsText() {}

    static void write(String prefix, PictureFacts facts, Map<String, String> into) {
        put(into, prefix + "planet", facts.planetId());
        facts.time().ifPresent(t -> {
            into.put(prefix + "mid", t.midUtc().toString());
            t.exposureS().ifPresent(s -> into.put(prefix + "length", Double.toString(s)));
            into.put(prefix + "sigma", Double.toString(t.sigmaS()));
        });
        put(into, prefix + "site", facts.site());
        put(into, prefix + "observer", facts.observer());
        put(into, prefix + "kit", facts.kit());
        put(into, prefix + "filter", facts.filter());
        rating(into, prefix + "seeing", facts.seeing());
        rating(into, prefix + "transparency", facts.transparency());
        put(into, prefix + "notes", facts.notes());
    }

    private static void put(Map<String, String> into, String name, Optional<String> value) {
        value.ifPresent(v -> into.put(name, v));
    }

    private static void rating(Map<String, String> into, String name, Optional<Rating> rating) {
        rating.ifPresent(r -> {
            into.put(name, r.value());
            into.put(name + " scale", r.scale());
        });
    }

    /**
     * @throws IllegalArgumentException when a number or a time is none
     */
    static PictureFacts read(String prefix, Map<String, String> parts) {
        return new PictureFacts(
                word(parts, prefix + "planet"),
                word(parts, prefix + "mid").map(mid -> taken(prefix, mid, parts)),
                word(parts, prefix + "site"),
                word(parts, prefix + "observer"),
                word(parts, prefix + "kit"),
                word(parts, prefix + "filter"),
                rating(parts, prefix + "seeing"),
                rating(parts, prefix + "transparency"),
                word(parts, prefix + "notes"));
    }

    private static PictureFacts.Taken taken(String prefix, String mid, Map<String, String> parts) {
        try {
            return new PictureFacts.Taken(
                    Instant.parse(mid),
                    parts.containsKey(prefix + "length")
                            ? OptionalDouble.of(Double.parseDouble(parts.get(prefix + "length")))
                            : OptionalDouble.empty(),
                    Double.parseDouble(parts.getOrDefault(prefix + "sigma", "")));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("a time \"" + mid + "\"", e);
        }
    }

    private static Optional<String> word(Map<String, String> parts, String name) {
        return Optional.ofNullable(parts.get(name));
    }

    private static Optional<Rating> rating(Map<String, String> parts, String name) {
        return word(parts, name).map(value -> new Rating(value, parts.getOrDefault(name + " scale", "")));
    }
}
