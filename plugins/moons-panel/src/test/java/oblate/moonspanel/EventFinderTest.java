/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import oblate.archive.Site;
import oblate.base.PluginHost;
import oblate.base.Progress;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.sky.event.EventKind;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class EventFinderTest {
    private final Sky sky = Sky.bundled();
    private final PlanetModel jupiter = PluginHost.bundledOnly().load(PlanetModel.class).stream()
            .filter(p -> p.id().equals("jupiter"))
            .findFirst()
            .orElseThrow();

    private static Site site(double lonDeg) {
        return new Site("site", 45, lonDeg, 100, Optional.empty());
    }

    private List<MoonEvent> night(LocalDate evening, Optional<Site> site) {
        Wish wish = new Wish(jupiter, site, Stretch.NIGHT.from(evening, site));
        return new EventFinder(new Grounds(sky))
                .find(wish, Progress.SILENT).events().stream()
                        .filter(MoonEvent.class::isInstance)
                        .map(MoonEvent.class::cast)
                        .toList();
    }

    /** JPL DE431 and JPL satellite orbits, computed outside this project: Ganymede's transit of 22 September 2027. */
    @Test
    @Tag("truth")
    void theNightOfATransitListsItWithItsTouches() {
        MoonEvent transit = night(LocalDate.of(2027, 9, 22), Optional.empty()).stream()
                .filter(e -> e.passage().kind() == EventKind.TRANSIT
                        && e.passage().moon().id().equals("ganymede"))
                .findFirst()
                .orElseThrow();
        assertSeconds(MoonEvent.begin(transit.passage()), "2027-09-22T13:55:09Z");
        assertSeconds(transit.passage().mid().time(), "2027-09-22T15:44:03Z");
        assertSeconds(MoonEvent.end(transit.passage()), "2027-09-22T17:32:58Z");
        assertThat(transit.shown()).isEqualTo(transit.passage().mid().time());
    }

    private static void assertSeconds(UtcTime time, String expected) {
        assertThat(time.clockSecondsSince(UtcTime.parse(expected))).isCloseTo(0, within(12.0));
    }

    @Test
    void whatIsHiddenOrNotUpIsSaidWithItsReason() {
        List<MoonEvent> events = night(LocalDate.of(2031, 6, 15), Optional.of(site(0)));
        assertThat(events).isNotEmpty();
        for (MoonEvent event : events) {
            assertThat(event.begin()).isPresent();
            boolean low = event.begin().get().altitudeDeg() < 0
                    && event.end().orElseThrow().altitudeDeg() < 0;
            boolean behind = event.passage().kind().behind();
            if (low && behind) {
                assertThat(event.hindrance()).isPresent();
            }
            event.hindrance().filter(h -> h != Hindrance.HIDDEN).ifPresent(h -> assertThat(event.words())
                    .startsWith(h.words()));
        }
        assertThat(events.stream().map(MoonEvent::hindrance).distinct().count()).isGreaterThan(1);
    }

    /** Callisto is seen up to 2.3 s earlier or later from a place on the ground than from the Earth's centre. */
    @Test
    void eventsAreThoseThatTheSiteSees() {
        Optional<Site> site = Optional.of(site(100));
        Wish wish = new Wish(jupiter, site, Stretch.MONTH.from(LocalDate.of(2027, 2, 1), site));
        Wish centre = new Wish(jupiter, Optional.empty(), wish.span());
        List<Happening> there =
                new EventFinder(new Grounds(sky)).find(wish, Progress.SILENT).events();
        List<Happening> here =
                new EventFinder(new Grounds(sky)).find(centre, Progress.SILENT).events();
        assertThat(there).hasSameSizeAs(here);
        double most = 0;
        for (int i = 0; i < there.size(); i++) {
            double off =
                    Math.abs(there.get(i).mid().clockSecondsSince(here.get(i).mid()));
            most = Math.max(most, there.get(i) instanceof MoonEvent ? off : 0);
        }
        assertThat(most).isBetween(0.8, 2.4);
    }

    @Test
    void aNightBeginsAtTheSitesOwnNoon() {
        LocalDate evening = LocalDate.of(2031, 3, 24);
        assertThat(Stretch.NIGHT.from(evening, Optional.of(site(90))).from().iso(0))
                .isEqualTo("2031-03-24T06:00:00Z");
        assertThat(Stretch.WEEK.from(evening, Optional.empty()).to().iso(0)).isEqualTo("2031-03-31T12:00:00Z");
        assertThat(Stretch.eveningOf(UtcTime.parse("2031-03-24T05:59:00Z"), Optional.of(site(90))))
                .isEqualTo(evening.minusDays(1));
        assertThat(Stretch.eveningOf(UtcTime.parse("2031-03-25T11:59:00Z"), Optional.empty()))
                .isEqualTo(evening);
    }

    @Test
    void aStoppedSearchFindsNothingMore() {
        Progress stopped = new Progress() {
            @Override
            public void report(long done, long total, String message) {
                throw new AssertionError("went on");
            }

            @Override
            public boolean isCancelled() {
                return true;
            }
        };
        Wish wish =
                new Wish(jupiter, Optional.empty(), Stretch.MONTH.from(LocalDate.of(2031, 3, 24), Optional.empty()));
        assertThat(new EventFinder(new Grounds(sky)).find(wish, stopped).events())
                .isEmpty();
    }
}
