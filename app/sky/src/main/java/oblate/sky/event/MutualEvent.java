/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;

/**
 * One moon occults another, or eclipses it with its shadow. Times are those at the standpoint asked for, the Earth's centre or a place on it.
 *
 * @param planet the planet
 * @param front the moon that hides or casts the shadow
 * @param back the moon that is hidden or eclipsed
 * @param kind {@link EventKind#OCCULTATION} or {@link EventKind#ECLIPSE}
 * @param mid least distance
 * @param leastKm least distance of the centres, or of the back moon's centre from the shadow's axis, at the back moon (km)
 * @param touchKm distance at which the discs, or disc and shadow at half light, touch (km)
 * @param contacts the moments there are
 * @param depthBack share of the back moon's own light that is lost at the middle, by areas alone, discs evenly bright (0…1)
 * @param depthPair share of the light of both moons together, evenly bright and seen as one (0…1)
 * @param sigmaDepthBack standard error of {@code depthBack} from the orbits
 * @param umbral eclipses: whether the full shadow touches the back moon
 * @param notes what is hidden or special
 */
public record MutualEvent(
        PlanetModel planet,
        MoonFacts front,
        MoonFacts back,
        EventKind kind,
        Contact mid,
        double leastKm,
        double touchKm,
        Map<MutualContact, Contact> contacts,
        double depthBack,
        double depthPair,
        double sigmaDepthBack,
        boolean umbral,
        Set<EventNote> notes) {

    /** Copies map and set. */
    public MutualEvent {
        EnumMap<MutualContact, Contact> sorted = new EnumMap<>(MutualContact.class);
        sorted.putAll(contacts);
        contacts = Collections.unmodifiableMap(sorted);
        EnumSet<EventNote> ordered = EnumSet.noneOf(EventNote.class);
        ordered.addAll(notes);
        notes = Collections.unmodifiableSet(ordered);
    }

    /** Least distance in units of that at which the discs touch: 0 central, 1 a bare touch; up to 2 or so where only the half-shadow touches. */
    public double leastInTouches() {
        return leastKm / touchKm;
    }

    /** A moment, where there is one. */
    public Optional<Contact> contact(MutualContact which) {
        return Optional.ofNullable(contacts.get(which));
    }

    /** The notes in words, parted by semicolons. */
    public String words() {
        return notes.stream().map(EventNote::words).collect(Collectors.joining("; "));
    }
}
