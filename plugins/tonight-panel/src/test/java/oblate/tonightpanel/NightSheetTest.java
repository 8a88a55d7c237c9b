/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import oblate.drift.plan.PlanItem;
import oblate.planet.venus.Venus;
import oblate.sky.GroundEvent;
import oblate.sky.GroundSite;
import oblate.sky.Twilight;
import oblate.sky.UtcTime;
import oblate.workbench.timeline.TimeAxis;
import org.junit.jupiter.api.Test;

class NightSheetTest {
    private static NightSheet jupiter() {
        return Plans.night(
                Plans.JUPITER, Plans.GARDEN, "2024-12-07", Plans.series("A", 40, -0.3), Plans.series("B", 200, 0.2));
    }

    @Test
    void aNightRunsFromBeforeSunsetToAfterSunriseInUnbrokenStretchesOfLight() {
        NightSheet sheet = jupiter();
        UtcTime sunset =
                sheet.night().sun().first(GroundEvent.Kind.SET).orElseThrow().time();
        assertThat(sunset.clockSecondsSince(sheet.shown().from())).isCloseTo(1_200, within(1e-6));
        List<NightSheet.Light> lights = sheet.lights();
        assertThat(lights.stream().map(NightSheet.Light::twilight))
                .containsExactly(
                        Twilight.DAY,
                        Twilight.CIVIL,
                        Twilight.NAUTICAL,
                        Twilight.ASTRONOMICAL,
                        Twilight.NIGHT,
                        Twilight.ASTRONOMICAL,
                        Twilight.NAUTICAL,
                        Twilight.CIVIL,
                        Twilight.DAY);
        for (int i = 1; i < lights.size(); i++) {
            assertThat(lights.get(i).span().from())
                    .isEqualTo(lights.get(i - 1).span().to());
        }
        assertThat(sheet.track().get(0).time()).isEqualTo(sheet.shown().from());
        assertThat(sheet.track().get(sheet.track().size() - 1).time())
                .isEqualTo(sheet.shown().to());
    }

    @Test
    void whereTheSunStaysDownTheWholeDayIsShown() {
        NightSheet sheet = Plans.night(Plans.JUPITER, new GroundSite(78, 16, 0), "2024-12-21");
        assertThat(sheet.shown()).isEqualTo(sheet.night().span());
        assertThat(sheet.lights().stream().map(NightSheet.Light::twilight))
                .doesNotContain(Twilight.DAY, Twilight.CIVIL);
    }

    @Test
    void rowsHoldEveryThingOfTheNightOnceAndWhatIsNotDrawnIsTold() {
        NightSheet sheet = jupiter();
        List<PlanItem> drawn = sheet.rows().stream()
                .flatMap(r -> r.things().stream())
                .flatMap(t -> t.items().stream())
                .toList();
        assertThat(drawn).doesNotHaveDuplicates();
        List<PlanItem> missing =
                sheet.night().items().stream().filter(i -> !drawn.contains(i)).toList();
        assertThat(missing).allSatisfy(i -> assertThat(i.isObservable()).isFalse());
        assertThat(missing).filteredOn(i -> i.kind() == PlanItem.Kind.CROSSING).isEqualTo(sheet.outside());
        assertThat(sheet.rows().stream().filter(r -> r.kind() == PlanItem.Kind.CROSSING))
                .hasSize(2);
        assertThat(sheet.rows().stream().filter(r -> r.kind() == PlanItem.Kind.MOON))
                .isNotEmpty();
    }

    /** A box's middle is the time told, its ends the error to either side, unless it is widened to be seen. */
    @Test
    void boxesStandWhereTheTimesAre() {
        NightSheet sheet = jupiter();
        RowLayout layout = new RowLayout(new TimeAxis(sheet.shown(), 150, 4150), sheet.rows());
        for (int i = 0; i < layout.rows().size(); i++) {
            for (NightRow.Thing thing : layout.rows().get(i).things()) {
                Rectangle2D box = layout.box(i, thing);
                PlanItem item = thing.items().get(0);
                assertThat(layout.row(i).getMinY()).isLessThan(box.getMinY());
                assertThat(layout.row(i).getMaxY()).isGreaterThan(box.getMaxY());
                if (item.kind() == PlanItem.Kind.CROSSING) {
                    assertThat(box.getCenterX()).isCloseTo(layout.axis().x(item.time()), within(0.01));
                    assertThat(box.getWidth())
                            .isCloseTo(
                                    Math.max(
                                            RowLayout.LEAST_BAR_PX,
                                            layout.axis().px(2 * item.sigmaS())),
                                    within(0.01));
                } else {
                    assertThat(thing.items())
                            .allSatisfy(m -> assertThat(layout.axis().x(m.time()))
                                    .isBetween(box.getMinX() - 0.01, box.getMaxX() + 0.01));
                }
                Optional<PlanItem> hit = layout.itemAt(layout.axis().x(item.time()), box.getCenterY());
                assertThat(hit).contains(item);
            }
        }
        assertThat(layout.rowAt(layout.heightPx() + 1)).isEmpty();
        assertThat(layout.itemAt(20, layout.row(0).getCenterY()).map(PlanItem::subject))
                .contains(layout.rows().get(0).name());
    }

    /** The Earth sees fifty degrees of Jupiter's System II go by in 82.7 min: 50 / 870.27 days. */
    @Test
    void goodViewIsAStretchAboutTheCrossing() {
        PlanItem crossing = jupiter().rows().get(0).things().get(0).items().get(0);
        assertThat(RowLayout.around(crossing, 50).clockSeconds() / 60).isCloseTo(2 * 82.73, within(0.02));
    }

    @Test
    void aPlanetWithoutFeaturesAndMoonsHasACurveAndNoRow() {
        NightSheet sheet = Plans.night(new Venus(), Plans.GARDEN, "2024-12-07");
        assertThat(sheet.rows()).isEmpty();
        assertThat(SkyScales.of(sheet, 900, 250).topDeg()).isEqualTo(30);
        assertThat(sheet.plan().cautions().get(0)).contains("SUN");
    }

    @Test
    void timesAreAsFineAsTheirErrors() {
        UtcTime time = UtcTime.parse("2024-12-07T21:07:24Z");
        assertThat(Say.time(time, 3.6)).isEqualTo("21:07:24 UTC ± 4 s");
        assertThat(Say.time(time, 34)).isEqualTo("21:07:24 UTC ± 30 s");
        assertThat(Say.time(time, 75)).isEqualTo("21:07.4 UTC ± 1.3 min");
        assertThat(Say.time(time, 200)).isEqualTo("21:07 UTC ± 3 min");
        assertThat(Say.time(time, 9_000)).isEqualTo("21:07 UTC ± 3 h");
        assertThat(Say.clock(UtcTime.parse("2024-12-07T23:59:31Z"))).isEqualTo("00:00");
        assertThat(Say.length(98.4)).isEqualTo("98 s");
        assertThat(Say.length(400)).isEqualTo("6.7 min");
    }
}
