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
 * One passage of a moon before or behind its planet, as seen from the Earth or from the Sun; also one that misses. All times are those at
 * the standpoint asked for, the Earth's centre or a place on it.
 *
 * @param planet the planet
 * @param moon the moon
 * @param kind what passes where
 * @param mid least distance of the centres
 * @param leastSeparationRadii that distance (equatorial radii of the planet)
 * @param contacts the moments there are
 * @param ingressVisible occultations: not eclipsed when it goes; eclipses: not behind the planet when it begins; empty for other kinds and misses
 * @param egressVisible the same for the end
 * @param notes what is hidden or special
 */
public record Passage(
        PlanetModel planet,
        MoonFacts moon,
        EventKind kind,
        Contact mid,
        double leastSeparationRadii,
        Map<ContactKind, Contact> contacts,
        Optional<Boolean> ingressVisible,
        Optional<Boolean> egressVisible,
        Set<EventNote> notes) {

    /** Copies map and set. */
    public Passage {
        EnumMap<ContactKind, Contact> sorted = new EnumMap<>(ContactKind.class);
        sorted.putAll(contacts);
        contacts = Collections.unmodifiableMap(sorted);
        EnumSet<EventNote> ordered = EnumSet.noneOf(EventNote.class);
        ordered.addAll(notes);
        notes = Collections.unmodifiableSet(ordered);
    }

    /** Whether the moon's disc (the shadow's at half light) touches the outline at all. */
    public boolean occurs() {
        return contacts.containsKey(ContactKind.T1);
    }

    /** A moment, where there is one. */
    public Optional<Contact> contact(ContactKind which) {
        return Optional.ofNullable(contacts.get(which));
    }

    /** Standard error (s) of a contact of this passage: the larger of coming and leaving, at the centre where it gets there, else at the touch. */
    public Optional<Double> sigmaS() {
        return larger(ContactKind.INGRESS_CENTRE, ContactKind.EGRESS_CENTRE)
                .or(() -> larger(ContactKind.T1, ContactKind.T4));
    }

    private Optional<Double> larger(ContactKind one, ContactKind other) {
        return contact(one).flatMap(a -> contact(other).map(b -> Math.max(a.sigmaS(), b.sigmaS())));
    }

    /**
     * Seconds by which the planet's unlit edge shifts what is seen at the beginning: a transit comes onto the lit disc that much later, an occulted moon goes
     * that long before it would reach the lit edge. 0 at a lit limb; empty for shadow events and where the moon's centre never gets there.
     */
    public Optional<Double> phaseDelayS() {
        return seconds(ContactKind.INGRESS_CENTRE, ContactKind.LIT_INGRESS);
    }

    /** The same for the end: a transit leaves the lit disc that much earlier. Not negative. */
    public Optional<Double> phaseLeadS() {
        return seconds(ContactKind.LIT_EGRESS, ContactKind.EGRESS_CENTRE);
    }

    private Optional<Double> seconds(ContactKind from, ContactKind to) {
        return contact(from).flatMap(a -> contact(to)
                .map(b -> (b.time().epochDay() - a.time().epochDay()) * 86400.0
                        + b.time().secondOfDay()
                        - a.time().secondOfDay()));
    }

    /** The notes in words, parted by semicolons. */
    public String words() {
        return notes.stream().map(EventNote::words).collect(Collectors.joining("; "));
    }
}
