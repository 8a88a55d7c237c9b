/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import oblate.sky.GroundSky;
import oblate.sky.GroundView;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;
import oblate.sky.event.Contact;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventNote;
import oblate.sky.event.Passage;

/**
 * One event with what the site makes of it. Immutable.
 *
 * @param passage the event
 * @param begin planet and Sun over the site at its first touch; none without a site
 * @param end the same at its last touch
 * @param hindrance why nothing of it can be seen; none when something can
 */
record MoonEvent(Passage passage, Optional<GroundView> begin, Optional<GroundView> end, Optional<Hindrance> hindrance) {
    /** Planet higher than this counts as up (deg). */
    static final double LOWEST_PLANET_DEG = 5;
    /** Sun lower than this counts as dark (deg). */
    static final double HIGHEST_SUN_DEG = -6;

    private static final int STEPS = 8;
    private static final Set<EventNote> WHOLLY =
            Set.of(EventNote.WHOLLY_BEHIND_PLANET, EventNote.WHOLLY_IN_SHADOW, EventNote.WHOLLY_ON_FAR_SIDE);
    private static final Set<EventNote> BEGIN_HIDDEN =
            Set.of(EventNote.BEGINS_BEHIND_PLANET, EventNote.BEGINS_IN_SHADOW, EventNote.BEGINS_ON_FAR_SIDE);
    private static final Set<EventNote> END_HIDDEN =
            Set.of(EventNote.ENDS_BEHIND_PLANET, EventNote.ENDS_IN_SHADOW, EventNote.ENDS_ON_FAR_SIDE);

    /** Why an event cannot be seen. */
    enum Hindrance {
        HIDDEN("hindrance.hidden"),
        LOW("hindrance.low"),
        DAYLIGHT("hindrance.daylight");

        private final String key;

        Hindrance(String key) {
            this.key = key;
        }

        /** In words. */
        String words() {
            return Words.of(key);
        }
    }

    static MoonEvent of(Passage passage, Optional<GroundSky> ground) {
        PlanetModel planet = passage.planet();
        Optional<GroundView> first = ground.map(g -> g.view(planet, begin(passage)));
        Optional<GroundView> last = ground.map(g -> g.view(planet, end(passage)));
        return new MoonEvent(passage, first, last, hindrance(passage, ground));
    }

    private static Optional<Hindrance> hindrance(Passage passage, Optional<GroundSky> ground) {
        List<UtcTime> moments = moments(passage);
        if (moments.isEmpty()) {
            return Optional.of(Hindrance.HIDDEN);
        }
        if (ground.isEmpty()) {
            return Optional.empty();
        }
        List<GroundView> views = moments.stream()
                .map(t -> ground.get().view(passage.planet(), t))
                .toList();
        if (views.stream().anyMatch(v -> v.altitudeDeg() > LOWEST_PLANET_DEG && v.sunAltitudeDeg() < HIGHEST_SUN_DEG)) {
            return Optional.empty();
        }
        return Optional.of(
                views.stream().anyMatch(v -> v.altitudeDeg() > LOWEST_PLANET_DEG) ? Hindrance.DAYLIGHT : Hindrance.LOW);
    }

    /** When there is something to see, were the planet up: all along for what happens before the disc, at the ends for what happens behind. */
    private static List<UtcTime> moments(Passage passage) {
        List<UtcTime> moments = new ArrayList<>();
        if (passage.notes().stream().anyMatch(WHOLLY::contains)) {
            return moments;
        }
        if (passage.notes().stream().noneMatch(BEGIN_HIDDEN::contains)) {
            moments.add(begin(passage));
        }
        if (passage.notes().stream().noneMatch(END_HIDDEN::contains)) {
            moments.add(end(passage));
        }
        if (!passage.kind().behind()) {
            double lengthS = end(passage).clockSecondsSince(begin(passage));
            for (int i = 1; i < STEPS; i++) {
                moments.add(begin(passage).plusClockSeconds(lengthS * i / STEPS));
            }
        }
        return moments;
    }

    /** First touch, the middle where there is none. */
    static UtcTime begin(Passage passage) {
        return passage.contact(ContactKind.T1)
                .map(Contact::time)
                .orElse(passage.mid().time());
    }

    /** Last touch, the middle where there is none. */
    static UtcTime end(Passage passage) {
        return passage.contact(ContactKind.T4)
                .map(Contact::time)
                .orElse(passage.mid().time());
    }

    /** The moment that shows it best: the middle of what is before the disc, the seen end of what is behind. */
    UtcTime shown() {
        if (!passage.kind().behind()) {
            return passage.mid().time();
        }
        return passage.notes().stream().anyMatch(BEGIN_HIDDEN::contains) ? end(passage) : begin(passage);
    }

    /** What is hidden or special, and why it cannot be seen, in words; empty when there is nothing to say. */
    String words() {
        List<String> said = new ArrayList<>();
        hindrance.filter(h -> h != Hindrance.HIDDEN).map(Hindrance::words).ifPresent(said::add);
        if (!passage.notes().isEmpty()) {
            said.add(passage.words());
        }
        return String.join("; ", said);
    }
}
