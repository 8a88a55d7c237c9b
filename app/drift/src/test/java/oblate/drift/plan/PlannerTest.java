/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.planet.jupiter.Jupiter;
import oblate.planet.mars.Mars;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.sky.Sky;
import oblate.sky.event.ContactKind;
import oblate.sky.event.Passage;
import org.junit.jupiter.api.Test;

class PlannerTest {
    private static final Sky SKY = Sky.bundled();
    private static final PlanetModel JUPITER = new Jupiter();
    private static final RotationSystem II = JUPITER.globe().system("2").orElseThrow();
    private static final GroundSky GARDEN = GroundSky.over(SKY, new GroundSite(48.2, 16.3, 170));
    private static final Instant START = Instant.parse("2024-10-20T22:00:00Z");

    private static PlanWish wish(PlanetModel planet, GroundSky ground, String first, String last) {
        return new PlanWish(
                planet, ground, LocalDate.parse(first), LocalDate.parse(last), -6, 20, SmearLimit.ofDeg(1), 450, 650);
    }

    /** Marks every two days of a feature that drifts evenly and bends as told. */
    private static LongitudeSeries series(String name, double lonDeg, double degPerDay, double bend, int marks) {
        Random random = new Random(5);
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < marks; i++) {
            double day = 2 * i;
            double lon = lonDeg + degPerDay * day + bend * day * day + 0.4 * random.nextGaussian();
            points.add(new LongitudePoint(
                    START.plusSeconds(Math.round(day * 86_400)),
                    ((lon % 360) + 360) % 360,
                    0.4,
                    OptionalDouble.of(-22),
                    OptionalDouble.of(0.4)));
        }
        return new LongitudeSeries(name, JUPITER, II, points);
    }

    private static Plan plan(PlanWish wish, LongitudeSeries... series) {
        return new Planner().plan(wish, FollowedFeatures.of(List.of(series), new DriftFitter()));
    }

    /** The meridian's own longitude at each time told is the one expected, and the true motion agrees within the error told. */
    @Test
    void crossingsStandOnTheMeridian() {
        Plan plan = plan(
                wish(JUPITER, GARDEN, "2024-12-07", "2024-12-09"),
                series("Even", 40, -0.3, 0, 20),
                series("Bent", 200, 0.2, 0.004, 20));
        List<PlanItem> crossings = plan.nights().stream()
                .flatMap(n -> n.items().stream())
                .filter(i -> i.kind() == PlanItem.Kind.CROSSING)
                .toList();
        assertThat(crossings).hasSizeBetween(13, 16);
        for (PlanItem item : crossings) {
            Expected expected = item.expected().orElseThrow();
            double meridian = SKY.disc(JUPITER, item.time()).centralMeridianDeg(II);
            assertThat(Math.IEEEremainder(meridian - expected.lonDeg(), 360)).isCloseTo(0, within(0.002));
            double day = (item.time().toInstant().getEpochSecond() - START.getEpochSecond()) / 86_400.0;
            double truth = item.subject().equals("Even") ? 40 - 0.3 * day : 200 + 0.2 * day + 0.004 * day * day;
            assertThat(Math.abs(Math.IEEEremainder(truth - expected.lonDeg(), 360)))
                    .isLessThan(3 * expected.sigmaLonDeg());
            assertThat(item.sigmaMin() * 0.6045).isCloseTo(expected.sigmaLonDeg(), within(0.02));
            assertThat(expected.daysBeyondArc()).isBetween(9.0, 13.0);
        }
    }

    @Test
    void observableIsWhatFallsIntoTheWindow() {
        Plan plan = plan(wish(JUPITER, GARDEN, "2024-12-07", "2024-12-13"), series("Even", 40, -0.3, 0, 20));
        for (PlanNight night : plan.nights()) {
            assertThat(night.windows()).hasSize(1);
            assertThat(night.bestHour().orElseThrow().clockSeconds()).isCloseTo(3600, within(1e-6));
            assertThat(night.best().orElseThrow().altitudeDeg()).isBetween(63.5, 64.5);
            // 1 deg over the rotation of System II, 0.6043 deg a minute.
            assertThat(night.longestCaptureS().orElseThrow()).isBetween(97.0, 101.0);
            for (PlanItem item : night.items()) {
                boolean inside = item.view().altitudeDeg() > 20 && item.view().sunAltitudeDeg() < -6;
                assertThat(item.isObservable()).as(item.toString()).isEqualTo(inside);
            }
        }
        assertThat(plan.nights().stream().flatMap(n -> n.observable().stream()).map(PlanItem::kind))
                .contains(PlanItem.Kind.CROSSING, PlanItem.Kind.MOON);
    }

    @Test
    void whatCannotBeTimedIsListedWithTheReason() {
        LongitudeSeries two = new LongitudeSeries(
                "Brief",
                JUPITER,
                II,
                series("x", 100, 0, 0, 2).points().stream()
                        .map(p -> new LongitudePoint(
                                START.plusSeconds(p.time().equals(START) ? 0 : 3600),
                                100,
                                0.4,
                                p.latGraphicDeg(),
                                p.sigmaLatDeg()))
                        .toList());
        Plan plan = plan(wish(JUPITER, GARDEN, "2024-12-07", "2024-12-07"), two, series("Lone", 1, 0, 0, 1));
        assertThat(plan.untimed()).extracting(Untimed::feature).containsExactlyInAnyOrder("Brief", "Lone");
        assertThat(plan.untimed().stream()
                        .filter(u -> u.feature().equals("Brief"))
                        .findFirst()
                        .orElseThrow()
                        .why())
                .contains("may be anywhere");
        assertThat(plan.untimed().stream()
                        .filter(u -> u.feature().equals("Lone"))
                        .findFirst()
                        .orElseThrow()
                        .why())
                .startsWith("has 1 usable marks");
        assertThat(plan.nights().get(0).items()).noneMatch(i -> i.kind() == PlanItem.Kind.CROSSING);
    }

    @Test
    void aPlanetThatIsNeverUpInTheDarkTellsWhenItIsNext() {
        Plan plan = plan(wish(new Mars(), GARDEN, "2023-12-07", "2023-12-08"));
        assertThat(plan.hasWindow()).isFalse();
        LocalDate next = plan.nextWindow().orElseThrow();
        PlanNight then = plan(wish(new Mars(), GARDEN, next.toString(), next.toString()))
                .nights()
                .get(0);
        assertThat(then.windows()).isNotEmpty();
        String before = next.minusDays(1).toString();
        assertThat(plan(wish(new Mars(), GARDEN, before, before)).hasWindow()).isFalse();
    }

    @Test
    void polarSummerHasNoWindow() {
        GroundSky north = GroundSky.over(SKY, new GroundSite(78, 16, 20));
        Plan plan = plan(wish(JUPITER, north, "2024-06-10", "2024-06-10"));
        assertThat(plan.hasWindow()).isFalse();
        assertThat(plan.nights().get(0).sun().alwaysUp()).isTrue();
        assertThat(plan.nextWindow().orElseThrow()).isBetween(LocalDate.of(2024, 8, 20), LocalDate.of(2024, 10, 10));
    }

    @Test
    void outsideTheEphemerisIsRefused() {
        assertThatThrownBy(() -> plan(wish(JUPITER, GARDEN, "1900-01-01", "1900-01-01")))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("reach from");
    }

    @Test
    void theComingNightGoesByTheSunOfThePlace() {
        assertThat(coming(16.3, "2024-12-07T20:00:00Z")).isEqualTo("2024-12-07");
        assertThat(coming(16.3, "2024-12-08T04:00:00Z")).isEqualTo("2024-12-07");
        assertThat(coming(16.3, "2024-12-08T08:00:00Z")).isEqualTo("2024-12-08");
        assertThat(coming(16.3, "2024-12-08T13:00:00Z")).isEqualTo("2024-12-08");
        assertThat(coming(-150, "2024-12-08T08:00:00Z")).isEqualTo("2024-12-07");
        assertThat(coming(170, "2024-12-08T08:00:00Z")).isEqualTo("2024-12-08");
    }

    private static String coming(double lonEastDeg, String now) {
        GroundSky ground = GroundSky.over(SKY, new GroundSite(40, lonEastDeg, 0));
        return Planner.comingNight(ground, Instant.parse(now), -6).toString();
    }

    @Test
    void limitsAreInWords() {
        assertThat(SmearLimit.ofDeg(1).said()).isEqualTo("1 deg of rotation");
        assertThat(SmearLimit.ofPx(1.5, 0.1).said()).isEqualTo("1.5 px of 0.1 arcsec");
        assertThatThrownBy(() -> SmearLimit.ofDeg(0)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Progress names every night before it is planned; stopped, the plan ends with what is done and looks no further. */
    @Test
    void aPlanTellsItsProgressAndCanBeStopped() {
        List<String> told = new ArrayList<>();
        Progress stopsAtTheThird = new Progress() {
            @Override
            public void report(long done, long total, String message) {
                told.add(done + "/" + total + " " + message);
            }

            @Override
            public boolean isCancelled() {
                return told.size() == 2;
            }
        };
        Plan plan = new Planner()
                .plan(wish(JUPITER, GARDEN, "2024-12-07", "2024-12-31"), FollowedFeatures.none(), stopsAtTheThird);
        assertThat(told).containsExactly("0/25 2024-12-07", "1/25 2024-12-08");
        assertThat(plan.nights()).hasSize(2);
        assertThat(plan.nextWindow()).isEmpty();
    }

    /** A beginning and an end of one passage know it, and lie within its touches. */
    @Test
    void aMoonsItemsKnowTheirPassage() {
        Plan plan = plan(wish(JUPITER, GARDEN, "2024-12-07", "2024-12-12"));
        List<PlanItem> moons = plan.nights().stream()
                .flatMap(n -> n.items().stream())
                .filter(i -> i.kind() == PlanItem.Kind.MOON)
                .toList();
        assertThat(moons).hasSizeGreaterThan(20).allSatisfy(i -> {
            Passage passage = i.passage().orElseThrow();
            assertThat(passage.moon().name()).isEqualTo(i.subject());
            assertThat(i.time())
                    .isBetween(
                            passage.contact(ContactKind.T1).orElseThrow().time(),
                            passage.contact(ContactKind.T4).orElseThrow().time());
        });
        assertThat(moons.stream().map(i -> i.passage().orElseThrow()).distinct().count())
                .isLessThan(moons.size());
    }
}
