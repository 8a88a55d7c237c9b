/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.saturn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.sky.event.Contact;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventSearch;
import oblate.sky.event.EventTable;
import oblate.sky.event.MoonEvents;
import oblate.sky.event.Passage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class SaturnEventsTest {
    private static final MoonEvents EVENTS = MoonEvents.of(Sky.bundled(), new Saturn());

    /** None lost, none invented, contacts to 15 s, those that graze by their speed across the limb. */
    @Test
    @Tag("truth")
    void titanOfTheReferenceTable() throws IOException {
        EventTable table = new EventTable(getClass(), "moon_events.csv");
        assertThat(table.size()).isEqualTo(4);
        table.check(EVENTS, Map.of("titan", 15.0));
    }

    /**
     * Titan's shadow on Saturn as told to the public, to some minutes: 2009-03-28 second contact about 08:45, middle 10:15 UT (iceinspace.com.au,
     * 2009-03-02); 2025-08-19 begins 05:26 UT (a magazine's page for 2025-08-18).
     */
    @Test
    @Tag("truth")
    void reportedShadowsOfTitan() {
        Passage first = shadow("2009-03-28T00:00:00Z", "2009-03-29T00:00:00Z");
        near(first.mid(), "2009-03-28T10:15:00Z", 900);
        near(first.contact(ContactKind.T2).orElseThrow(), "2009-03-28T08:45:00Z", 900);
        Passage second = shadow("2025-08-19T00:00:00Z", "2025-08-20T00:00:00Z");
        near(second.contact(ContactKind.T1).orElseThrow(), "2025-08-19T05:26:00Z", 360);
    }

    private static Passage shadow(String from, String to) {
        List<Passage> found = EVENTS.passages(EventSearch.between(UtcTime.parse(from), UtcTime.parse(to))
                .ofMoons(Set.of("titan"))
                .ofKinds(EnumSet.of(EventKind.SHADOW_TRANSIT)));
        assertThat(found).hasSize(1);
        return found.get(0);
    }

    private static void near(Contact contact, String time, double barS) {
        assertThat(EventTable.off(contact.time(), time)).as(time).isCloseTo(0, within(barS));
    }

    /** With the rings wide open Titan passes north or south of the planet: every conjunction is listed as a miss. */
    @Test
    void titanMissesWhileTheRingsAreOpen() {
        List<Passage> year = EVENTS.passages(
                EventSearch.between(UtcTime.parse("2017-01-01T00:00:00Z"), UtcTime.parse("2018-01-01T00:00:00Z"))
                        .ofMoons(Set.of("titan"))
                        .withMisses());
        // 365 days over 15.9 to 16 days, four kinds
        assertThat(year).hasSizeBetween(88, 94).noneMatch(Passage::occurs);
        assertThat(year).allMatch(p -> p.leastSeparationRadii() > 6);
    }

    @Test
    void iapetusWithItsTiltedOrbitIsFollowed() {
        List<Passage> decade = EVENTS.passages(
                EventSearch.between(UtcTime.parse("2005-01-01T00:00:00Z"), UtcTime.parse("2015-01-01T00:00:00Z"))
                        .ofMoons(Set.of("iapetus"))
                        .withMisses());
        // 3652 days over synodic turns of about 79.3 (Sun 79.9) days
        for (EventKind kind : EventKind.values()) {
            assertThat(decade).filteredOn(p -> p.kind() == kind).as("%s", kind).hasSizeBetween(44, 47);
        }
    }
}
