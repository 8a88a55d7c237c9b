/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import static oblate.drift.timing.Bench.JUPITER;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import oblate.base.ProblemException;
import oblate.sky.MoonFacts;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Times of contacts between pictures, against contacts of an independent table (named in its head). */
class ContactTimingTest {
    /** Io's transit of the table. */
    private static final Instant T1 = Instant.parse("2027-09-26T09:32:59Z");

    private static final Instant T2 = Instant.parse("2027-09-26T09:36:35Z");
    private static final Instant MID = Instant.parse("2027-09-26T10:43:31Z");

    private static StateSaid said(String moon, Phenomenon phenomenon, MoonState state, Instant utc, double sigmaS) {
        return new StateSaid(
                Shot.look(utc.toString(), utc, sigmaS, "", Optional.empty()),
                Bench.moon(JUPITER, moon),
                Optional.of(phenomenon),
                state,
                phenomenon == Phenomenon.SHADOW_TRANSIT);
    }

    private static StateSaid io(MoonState state, Instant utc) {
        return said("io", Phenomenon.TRANSIT, state, utc, 1);
    }

    private static List<Timing> timed(StateSaid... states) {
        return Bench.work(JUPITER, List.of(), List.of(states)).events();
    }

    private static Instant time(CSVRecord row, String column) {
        return Instant.parse(row.get(column));
    }

    /** What a person would see at a true moment. */
    private static MoonState seen(CSVRecord row, Phenomenon phenomenon, Instant true_) {
        boolean outside = true_.isBefore(time(row, "t1_utc")) || true_.isAfter(time(row, "t4_utc"));
        boolean inside = !true_.isBefore(time(row, "t2_utc")) && !true_.isAfter(time(row, "t3_utc"));
        if (phenomenon == Phenomenon.SHADOW_TRANSIT) {
            return outside ? MoonState.NOT_SEEN : inside ? MoonState.ON_DISC : MoonState.ON_LIMB;
        }
        if (phenomenon == Phenomenon.TRANSIT) {
            return outside ? MoonState.CLEAR : inside ? MoonState.ON_DISC : MoonState.ON_LIMB;
        }
        return outside ? MoonState.CLEAR : inside ? MoonState.GONE : MoonState.ON_LIMB;
    }

    /** Ends of an event of the table that can be seen, at the edge of the whole disc. */
    private static List<Boolean> ends(CSVRecord row) {
        List<Boolean> ends = new ArrayList<>();
        for (boolean coming : new boolean[] {true, false}) {
            String name = coming ? "ingress" : "egress";
            boolean hidden = row.get(name + "_visible").equals("no");
            String seen = row.get("seen_" + name + "_utc");
            boolean farSide = row.get("kind").equals("shadow_transit") && !seen.equals(row.get(name + "_centre_utc"));
            if (!hidden && !farSide) {
                ends.add(coming);
            }
        }
        return ends;
    }

    /** Pictures at even steps about a contact, by a clock that is off. */
    private static List<StateSaid> about(
            CSVRecord row, Phenomenon phenomenon, boolean coming, double stepS, double phaseS, double clockS) {
        Instant centre = time(row, coming ? "ingress_centre_utc" : "egress_centre_utc");
        List<StateSaid> states = new ArrayList<>();
        for (double s = -1500 + phaseS; s < 1500; s += stepS) {
            Instant at = Bench.plus(centre, s);
            states.add(said(
                    row.get("moon"),
                    phenomenon,
                    seen(row, phenomenon, at),
                    Bench.plus(at, clockS),
                    Math.abs(SIGMA_CLOCK_S)));
        }
        return states;
    }

    private static final double SIGMA_CLOCK_S = 15;

    /** The table counts from the outline: an end over the unlit limb, minutes later by the eye, is no test of these errors. */
    private static final double MOST_SOFT_S = 3;

    private static boolean isAtLitLimb(CSVRecord row, Phenomenon phenomenon, boolean coming) {
        Instant mid = time(row, "mid_utc");
        MoonFacts moon = Bench.moon(JUPITER, row.get("moon"));
        Shot shot = Shot.look("", mid, 0, "", Optional.empty());
        return new EventBook(new Standpoints(Bench.SKY), JUPITER, List.of(shot), Set.of(moon))
                .nearest(moon, EnumSet.of(phenomenon.kind().orElseThrow()), shot, EventBook.NEAR)
                .flatMap(e ->
                        ForetoldContact.of(e.passage(), coming ? TimedPoint.INGRESS_CENTRE : TimedPoint.EGRESS_CENTRE))
                .filter(c -> c.softS() < MOST_SOFT_S)
                .isPresent();
    }

    /** Pictures every two seconds find every contact of the table to the second or two of table, orbit and steps; and a clock that is off. */
    @Test
    @Tag("truth")
    void contactsOfAnotherTableAreFound() {
        int found = 0;
        for (CSVRecord row : Bench.rows("moon_events.csv")) {
            Phenomenon phenomenon = Phenomenon.named(row.get("kind"), "row");
            for (boolean coming : ends(row)) {
                Timings timings = Bench.work(JUPITER, List.of(), about(row, phenomenon, coming, 2, 0.7, 40));
                for (Timing t : timings.events()) {
                    if (t.method() == Timing.Method.BRACKET) {
                        found++;
                        assertThat(t.phenomenon()).isEqualTo(phenomenon);
                        // Transits and occultations near the unlit edge carry the error of where a soft edge is seen.
                        assertThat(t.oMinusPS())
                                .as("%s %s %s %s", row.get("moon"), row.get("kind"), row.get("mid_utc"), t.point())
                                .isCloseTo(40, within(3 + 4 * t.errors().ownS()));
                    }
                }
            }
        }
        assertThat(found).isGreaterThan(60);
    }

    /**
     * Times another institute printed to the minute, taken as if seen: before the half minute ahead of them, after the half minute behind. All O−P lie within a minute,
     * which is that table's rounding and the other theory; transits of early 2016 left over the unlit limb, so the edge that is seen is tested too.
     */
    @Test
    @Tag("truth")
    void printedPhenomenaTakenAsObservationsComeOutAtTheirTimes() {
        List<Double> off = new ArrayList<>();
        for (CSVRecord row : Bench.rows("phenomena_2016.csv")) {
            Phenomenon phenomenon = Phenomenon.named(row.get("kind"), "row");
            boolean coming = row.get("end").equals("coming");
            MoonState outside = phenomenon == Phenomenon.SHADOW_TRANSIT
                    ? MoonState.NOT_SEEN
                    : phenomenon == Phenomenon.ECLIPSE ? MoonState.SEEN : MoonState.CLEAR;
            MoonState inside = phenomenon == Phenomenon.SHADOW_TRANSIT
                    ? MoonState.SEEN
                    : phenomenon == Phenomenon.TRANSIT ? MoonState.ON_DISC : MoonState.GONE;
            Instant time = time(row, "time_utc");
            List<Timing> timings = timed(
                    said(row.get("moon"), phenomenon, coming ? outside : inside, time.minusSeconds(30), 1),
                    said(row.get("moon"), phenomenon, coming ? inside : outside, time.plusSeconds(30), 1));
            assertThat(timings).as("%s", row).hasSize(1);
            Timing t = timings.get(0);
            assertThat(t.point()).isEqualTo(coming ? TimedPoint.INGRESS_CENTRE : TimedPoint.EGRESS_CENTRE);
            assertThat(t.observedUtc()).contains(time);
            assertThat(t.oMinusPS()).as("%s", row).isCloseTo(0, within(60.0));
            assertThat(Math.abs(t.oMinusPS()) / t.errors().totalS())
                    .as("%s", row)
                    .isLessThan(3);
            assertThat(t.doubts()).as("%s", row).isEmpty();
            off.add(t.oMinusPS());
        }
        assertThat(off).hasSizeGreaterThan(55);
        assertThat(off.stream().mapToDouble(d -> d).average().orElseThrow()).isCloseTo(0, within(10.0));
    }

    /** Over many simulated contacts, with pictures minutes apart at random and a clock off at random, errors are as large as said. */
    @Test
    void errorsOfContactsAreHonest() {
        Random random = new Random(20_270_922L);
        Share share = new Share();
        for (CSVRecord row : Bench.rows("moon_events.csv")) {
            Phenomenon phenomenon = Phenomenon.named(row.get("kind"), "row");
            for (boolean coming : ends(row)) {
                if (!isAtLitLimb(row, phenomenon, coming)) {
                    continue;
                }
                for (int k = 0; k < 11; k++) {
                    double step = 30 + 60 * random.nextDouble();
                    double clock = SIGMA_CLOCK_S * random.nextGaussian();
                    Timing t = Bench.work(
                                    JUPITER,
                                    List.of(),
                                    about(row, phenomenon, coming, step, step * random.nextDouble(), clock))
                            .best()
                            .get(0);
                    share.add(t.oMinusPS() / t.errors().totalS());
                }
            }
        }
        assertThat(share.count()).isGreaterThan(300);
        share.isHonest();
    }

    @Test
    void theContactLiesInTheMiddleOfItsPictures() {
        List<Timing> timings = timed(
                io(MoonState.CLEAR, Bench.plus(T1, -60)),
                io(MoonState.ON_LIMB, Bench.plus(T1, 60)),
                io(MoonState.ON_DISC, Bench.plus(T2, 40)));
        assertThat(timings).extracting(Timing::point).contains(TimedPoint.T1, TimedPoint.T2, TimedPoint.MID);
        Timing first = timings.get(0);
        assertThat(first.observedUtc()).contains(T1);
        assertThat(first.oMinusPS()).isCloseTo(0, within(1.5));
        assertThat(first.errors().ownS()).isCloseTo(120 / Math.sqrt(12), within(1e-6));
        assertThat(first.errors().clockS()).isCloseTo(1, within(1e-6));
        assertThat(first.notBeforeUtc()).contains(Bench.plus(T1, -60));
        assertThat(first.notAfterUtc()).contains(Bench.plus(T1, 60));
        assertThat(first.pictures()).hasSize(2);
        Timing both = timings.stream()
                .filter(t -> t.method() == Timing.Method.COMBINED)
                .findFirst()
                .orElseThrow();
        assertThat(both.errors().ownS()).isLessThan(first.errors().ownS());
        assertThat(both.errors().clockS()).isCloseTo(1, within(1e-6));
    }

    /** Captures of two minutes do not date a state to the second. */
    @Test
    void longCapturesCountInTheError() {
        Shot before = new Shot(
                "a",
                Bench.plus(T1, -60),
                1,
                120,
                Shot.look("", T1, 1, "", Optional.empty()).night(),
                "",
                Optional.empty());
        Shot after = new Shot("b", Bench.plus(T1, 60), 1, 120, before.night(), "", Optional.empty());
        var moon = Bench.moon(JUPITER, "io");
        Timing t = timed(
                        new StateSaid(before, moon, Optional.empty(), MoonState.CLEAR, false),
                        new StateSaid(after, moon, Optional.empty(), MoonState.ON_LIMB, false))
                .get(0);
        assertThat(t.errors().ownS()).isCloseTo(Math.sqrt(120 * 120 / 12.0 + 120 * 120 / 24.0), within(1e-6));
    }

    @Test
    void onePictureGivesALimitOnly() {
        Timing before = timed(io(MoonState.CLEAR, Bench.plus(T1, -200))).get(0);
        assertThat(before.method()).isEqualTo(Timing.Method.LIMIT);
        assertThat(before.hasTime()).isFalse();
        assertThat(before.notBeforeUtc()).contains(Bench.plus(T1, -200));
        assertThat(before.notAfterUtc()).isEmpty();
        assertThat(before.oMinusPS()).isNaN();
        Timing after = timed(io(MoonState.ON_DISC, Bench.plus(T2, 200))).get(0);
        assertThat(after.hasTime()).isFalse();
        assertThat(after.notAfterUtc()).contains(Bench.plus(T2, 200));
        assertThat(after.notBeforeUtc()).isEmpty();
    }

    @Test
    void statesThatContradictEachOtherAreToldAndNotTimed() {
        List<Timing> timings = timed(
                io(MoonState.CLEAR, Bench.plus(T1, -300)),
                io(MoonState.ON_DISC, Bench.plus(T1, -120)),
                io(MoonState.CLEAR, Bench.plus(T1, -60)),
                io(MoonState.ON_DISC, Bench.plus(T2, 60)));
        assertThat(timings).hasSize(1);
        assertThat(timings.get(0).hasTime()).isFalse();
        assertThat(timings.get(0).doubts().get(0))
                .startsWith("contradiction: on disc at 09:30:59")
                .contains("but clear at 09:31:59");
    }

    /** A shadow is seen from somewhere between the touches on; that is in the error, and the time that of the centre. */
    @Test
    void theEyesThresholdOfAShadowIsInItsError() {
        Instant centre = Instant.parse("2027-09-26T09:09:09Z");
        Timing t = timed(
                        said("io", Phenomenon.SHADOW_TRANSIT, MoonState.NOT_SEEN, Bench.plus(centre, -30), 1),
                        said("io", Phenomenon.SHADOW_TRANSIT, MoonState.SEEN, Bench.plus(centre, 30), 1))
                .get(0);
        assertThat(t.point()).isEqualTo(TimedPoint.INGRESS_CENTRE);
        assertThat(t.errors().ownS()).isCloseTo(Math.hypot(60, 216) / Math.sqrt(12), within(0.5));
    }

    /** Clear, and at the next picture wholly on the disc: the centre, which cannot be within half a crossing of either. */
    @Test
    void aWideStepTellsTheCentreMoreCloselyThanItsWidth() {
        List<Timing> timings =
                timed(io(MoonState.CLEAR, Bench.plus(T1, -100)), io(MoonState.ON_DISC, Bench.plus(T2, 100)));
        assertThat(timings).hasSize(1);
        assertThat(timings.get(0).point()).isEqualTo(TimedPoint.INGRESS_CENTRE);
        assertThat(timings.get(0).errors().ownS()).isCloseTo(200 / Math.sqrt(12), within(1.0));
    }

    /** The table has this eclipse end behind the planet. */
    @Test
    void aContactThatCannotBeSeenIsDoubted() {
        Timing t = timed(
                        said("io", Phenomenon.ECLIPSE, MoonState.GONE, Instant.parse("2027-09-27T08:33:00Z"), 1),
                        said("io", Phenomenon.ECLIPSE, MoonState.SEEN, Instant.parse("2027-09-27T08:38:00Z"), 1))
                .get(0);
        assertThat(t.doubts())
                .anySatisfy(d -> assertThat(d).contains("cannot be seen").contains("behind the planet"));
        assertThat(t.hasTime()).isTrue();
    }

    @Test
    void aStateFarFromAnyEventIsPassedOverWithWords() {
        Timings timings = Bench.work(JUPITER, List.of(), List.of(io(MoonState.CLEAR, MID.plusSeconds(20 * 3600))));
        assertThat(timings.events()).isEmpty();
        assertThat(timings.remarks()).hasSize(1);
        assertThat(timings.remarks().get(0)).contains("no transit of Io is foretold within 6 h");
    }

    /** One picture of a year without moons costs that picture, with words. */
    @Test
    void aYearWithoutMoonsIsPassedOverWithWords() {
        Timings timings = Bench.work(
                JUPITER,
                List.of(),
                List.of(
                        io(MoonState.CLEAR, Instant.parse("1955-03-03T00:00:00Z")),
                        io(MoonState.CLEAR, Bench.plus(T1, -60)),
                        io(MoonState.ON_LIMB, Bench.plus(T1, 60))));
        assertThat(timings.remarks()).hasSize(1);
        assertThat(timings.remarks().get(0)).startsWith("1955-03-03T00:00:00Z: ");
        assertThat(timings.best()).hasSize(1);
    }

    @Test
    void wordsThatAreNoStatesAreRefused() {
        assertThatThrownBy(() -> MoonState.named("gone", Phenomenon.TRANSIT, "f.csv, row 3"))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(TimingProblem.NO_SUCH_STATE))
                .hasMessageStartingWith(
                        "f.csv, row 3: \"gone\" is no state of a transit (known: clear, on_limb, on_disc)");
        assertThat(MoonState.named("On limb", Phenomenon.ECLIPSE, "")).isEqualTo(MoonState.ON_LIMB);
        assertThatThrownBy(() -> Phenomenon.named("beside", "f.csv, row 3")).isInstanceOf(ProblemException.class);
        assertThat(Phenomenon.named("shadow", "")).isEqualTo(Phenomenon.SHADOW_TRANSIT);
    }
}
