/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
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

class BandLayoutTest {
    private static final Site FIELD = new Site("Field", 48, 10, 400, Optional.empty());
    private final Sky sky = Sky.bundled();
    private final PlanetModel jupiter = PluginHost.bundledOnly().load(PlanetModel.class).stream()
            .filter(p -> p.id().equals("jupiter"))
            .findFirst()
            .orElseThrow();

    private Found found(String evening, Optional<Site> site) {
        Wish wish = new Wish(jupiter, site, Stretch.NIGHT.from(LocalDate.parse(evening), site));
        return new EventFinder(new Grounds(sky)).find(wish, Progress.SILENT);
    }

    /** The night of 15 August 2021, in the season of the moons' mutual events: three moons before the disc, and Ganymede hides Europa. */
    @Test
    void everyEventHasABoxInItsBandThatEndsAtItsTouchesAndIsHit() {
        Found found = found("2021-08-15", Optional.of(FIELD));
        BandLayout layout = BandLayout.of(found, 900);
        assertThat(layout.names()).containsExactly("Io", "Europa", "Ganymede", "Callisto", "each other");
        assertThat(layout.events().stream().flatMap(List::stream).toList())
                .containsExactlyInAnyOrderElementsOf(found.events());
        for (int band = 0; band < layout.names().size(); band++) {
            for (Happening event : layout.events().get(band)) {
                Rectangle2D box = layout.box(band, event);
                assertThat(Math.abs(box.getCenterY() - layout.middle(band))).isLessThan(BandLayout.BAND_PX / 2.0);
                assertThat(box.getCenterX())
                        .isCloseTo(
                                (layout.axis().x(event.from()) + layout.axis().x(event.to())) / 2, within(1e-6));
                assertThat(layout.at(box.getCenterX(), box.getCenterY())).contains(event);
                assertThat(event.touches())
                        .isSortedAccordingTo((a, b) ->
                                a.contact().time().compareTo(b.contact().time()));
            }
        }
        assertThat(layout.at(400, layout.bottomPx() + 5.0)).isEmpty();
    }

    /** Within minutes of what `oblate events jupiter --mutual` lists, and as deep; that list is tested against published ones in the sky's module. */
    @Test
    @Tag("steady")
    void whatMoonsDoToEachOtherIsListedToo() {
        List<MoonMeeting> meetings = found("2021-08-15", Optional.of(FIELD)).events().stream()
                .filter(MoonMeeting.class::isInstance)
                .map(MoonMeeting.class::cast)
                .toList();
        MoonMeeting first = meetings.get(0);
        assertThat(first.sentence())
                .startsWith("Europa: occultation by Ganymede")
                .contains("before the planet's disc");
        assertThat(first.mid().clockSecondsSince(UtcTime.parse("2021-08-15T16:45:39Z")))
                .isCloseTo(0, within(2.0));
        assertThat(meetings.stream().map(Happening::kind)).contains(EventKind.ECLIPSE, EventKind.OCCULTATION);
        assertThat(first.hindrance()).contains(Hindrance.LOW);
        assertThat(first.moonIds()).containsExactlyInAnyOrder("europa", "ganymede");
    }

    /** The tinted stretch is the one in which both rules hold, at its ends only just. */
    @Test
    void theTintedStretchIsWhenThePlanetIsUpAndTheSkyDark() {
        Found found = found("2021-08-15", Optional.of(FIELD));
        assertThat(found.seen()).hasSize(1);
        var ground = new Grounds(sky).over(found.wish().site()).orElseThrow();
        UtcTime from = found.seen().get(0).from();
        UtcTime to = found.seen().get(0).to();
        for (UtcTime end : List.of(from, to)) {
            var view = ground.view(jupiter, end);
            assertThat(view.altitudeDeg()).isGreaterThan(Hindrance.LOWEST_PLANET_DEG - 0.01);
            assertThat(view.sunAltitudeDeg()).isLessThan(Hindrance.HIGHEST_SUN_DEG + 0.01);
        }
        var before = ground.view(jupiter, from.plusClockSeconds(-60));
        assertThat(before.altitudeDeg() < Hindrance.LOWEST_PLANET_DEG
                        || before.sunAltitudeDeg() > Hindrance.HIGHEST_SUN_DEG)
                .isTrue();
        assertThat(found("2021-08-15", Optional.empty()).seen()).isEmpty();
    }
}
