/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import oblate.archive.ArchivedPicture;
import oblate.archive.Rating;
import oblate.image.CaptureTime;
import oblate.image.TimeMeaning;
import oblate.image.TimeSource;
import oblate.workbench.look.StateGlyph.State;
import org.junit.jupiter.api.Test;

class RibbonTicksTest {
    private static final Instant START = Instant.parse("2031-01-01T21:00:00Z");

    private static ArchivedPicture at(long id, Instant mid, int seeing) {
        CaptureTime time = new CaptureTime(
                mid, OptionalDouble.empty(), TimeSource.USER, "", "", TimeMeaning.MIDDLE, false, false, 1, List.of());
        LocalDate night = mid.atOffset(ZoneOffset.UTC).minusHours(12).toLocalDate();
        return new ArchivedPicture(
                id,
                "00",
                "p",
                "p",
                "png",
                10,
                10,
                1,
                Optional.of("jupiter"),
                Optional.of(time),
                Optional.of(night),
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Rating(Integer.toString(seeing), "Pickering")),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Instant.EPOCH,
                false,
                0);
    }

    private static List<ArchivedPicture> pictures(List<Integer> hours) {
        List<ArchivedPicture> all = new ArrayList<>();
        for (int hour : hours) {
            all.add(at(all.size() + 1, START.plusSeconds(3600L * hour), 1 + hour % 10));
        }
        return all;
    }

    @Property(tries = 150)
    void columnsHoldTheTallestTickOfTheirPixelAndLoseNone(
            @ForAll @Size(min = 1, max = 60) List<@IntRange(min = 0, max = 9000) Integer> hours,
            @ForAll @IntRange(min = 50, max = 2000) int widthPx) {
        List<ArchivedPicture> all = pictures(hours);
        RibbonTicks ticks = RibbonTicks.of(all, p -> State.NEW);
        RibbonScale scale = RibbonScale.covering(ticks.ends(), widthPx);
        List<RibbonTicks.Column> columns = ticks.columns(scale);
        long pixels = all.stream()
                .map(p -> (long) Math.floor(scale.xPx(p.time().orElseThrow().midUtc())))
                .distinct()
                .count();
        assertThat(columns).hasSize((int) pixels);
        double tallest = all.stream()
                .mapToDouble(p -> SeasonRibbon.quality(p.seeing()))
                .max()
                .orElseThrow();
        assertThat(columns.stream().mapToDouble(RibbonTicks.Column::height).max())
                .hasValue(tallest);
        assertThat(columns).isSortedAccordingTo(Comparator.comparingDouble(RibbonTicks.Column::xPx));
    }

    @Property(tries = 150)
    void theNearestIsTheNearest(
            @ForAll @Size(min = 1, max = 40) List<@IntRange(min = 0, max = 9000) Integer> hours,
            @ForAll @IntRange(min = -100, max = 9100) int at) {
        List<ArchivedPicture> all = pictures(hours);
        double second = START.getEpochSecond() + 3600.0 * at;
        double least =
                hours.stream().mapToDouble(h -> Math.abs(h - at) * 3600.0).min().orElseThrow();
        Instant found = RibbonTicks.of(all, p -> State.NEW)
                .nearest(second)
                .flatMap(ArchivedPicture::time)
                .orElseThrow()
                .midUtc();
        assertThat(Math.abs(found.getEpochSecond() - second)).isEqualTo(least);
    }

    @Test
    void whatNeedsALookShowsBeforeAllElseInItsColumn() {
        List<ArchivedPicture> all = pictures(List.of(0, 0, 0));
        RibbonTicks ticks = RibbonTicks.of(all, p -> p.id() == 2 ? State.NEEDS_A_LOOK : State.MEASURED);
        assertThat(ticks.columns(RibbonScale.covering(ticks.ends(), 500)))
                .singleElement()
                .extracting(RibbonTicks.Column::state)
                .isEqualTo(State.NEEDS_A_LOOK);
    }

    @Test
    void arrowsGoToTheFirstPictureOfTheNightBesideAndStayAtTheEnds() {
        List<ArchivedPicture> all = pictures(List.of(0, 1, 24, 25, 26, 48));
        RibbonTicks ticks = RibbonTicks.of(all, p -> State.NEW);
        assertThat(ticks.nightBeside(Optional.of(all.get(1)), 1)).contains(all.get(2));
        assertThat(ticks.nightBeside(Optional.of(all.get(4)), -1)).contains(all.get(0));
        assertThat(ticks.nightBeside(Optional.of(all.get(5)), 1)).contains(all.get(5));
        assertThat(ticks.nightBeside(Optional.of(all.get(0)), -1)).contains(all.get(0));
        assertThat(ticks.nightBeside(Optional.empty(), 1)).contains(all.get(0));
        assertThat(RibbonTicks.none().nightBeside(Optional.empty(), 1)).isEmpty();
    }

    @Test
    void aSpanCountsWhatLiesInIt() {
        List<ArchivedPicture> all = pictures(List.of(0, 10, 20, 30));
        Selection.Span span = new Selection.Span(START.plusSeconds(20 * 3600L), START.plusSeconds(10 * 3600L));
        assertThat(span.from()).isBefore(span.to());
        assertThat(RibbonTicks.of(all, p -> State.NEW).countIn(span)).isEqualTo(2);
    }

    @Test
    void aHundredThousandPicturesAreAtMostOneColumnPerPixel() {
        List<Integer> hours = new ArrayList<>();
        for (int i = 0; i < 100_000; i++) {
            hours.add(i);
        }
        RibbonTicks ticks = RibbonTicks.of(pictures(hours), p -> State.NEW);
        assertThat(ticks.columns(RibbonScale.covering(ticks.ends(), 1400)).size())
                .isBetween(1000, 1400);
    }
}
