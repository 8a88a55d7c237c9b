/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.archive.Rating;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.Sky;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class RibbonTest {
    private static final Instant FIRST = Instant.parse("2023-08-20T20:00:00Z");
    private static final Instant LAST = Instant.parse("2024-01-20T20:00:00Z");

    @Test
    void itCoversAllPicturesWithRoomOnBothSides() {
        RibbonScale scale = RibbonScale.covering(List.of(LAST, FIRST), 1000);
        assertThat(scale.xPx(FIRST)).isBetween(10.0, 100.0);
        assertThat(scale.xPx(LAST)).isBetween(900.0, 990.0);
        assertThat(RibbonScale.covering(List.of(FIRST), 1000).spanDays()).isEqualTo(10, offset(1e-9));
    }

    @Property(tries = 200)
    void zoomingKeepsTheInstantUnderThePointer(
            @ForAll @DoubleRange(min = 0, max = 1000) double x,
            @ForAll @DoubleRange(min = 0.3, max = 3) double factor) {
        RibbonScale scale = RibbonScale.covering(List.of(FIRST, LAST), 1000);
        assertThat(scale.zoomedAt(x, factor).secondsAt(x)).isEqualTo(scale.secondsAt(x), offset(1e-3));
    }

    @Test
    void movingByAPixelMovesByAPixel() {
        RibbonScale scale = RibbonScale.covering(List.of(FIRST, LAST), 1000);
        assertThat(scale.movedBy(37).xPx(FIRST)).isEqualTo(scale.xPx(FIRST) - 37, offset(1e-6));
    }

    @Test
    void notchesAreMonthsOverASeasonAndDaysOverAWeek() {
        RibbonScale season = RibbonScale.covering(List.of(FIRST, LAST), 900);
        assertThat(season.notches(100))
                .allMatch(n -> n.step() == RibbonScale.Step.MONTH)
                .hasSize(5);
        assertThat(season.notches(100).get(0).date()).isEqualTo(LocalDate.of(2023, 9, 1));
        RibbonScale week = new RibbonScale(FIRST.getEpochSecond(), FIRST.getEpochSecond() + 7 * 86_400.0, 900);
        assertThat(week.notches(60))
                .allMatch(n -> n.step() == RibbonScale.Step.DAY)
                .hasSize(7);
        assertThat(season.notches(100))
                .isSortedAccordingTo(java.util.Comparator.comparingDouble(RibbonScale.Notch::xPx));
    }

    @Test
    void seeingScalesThatRunOppositeWaysAreToldApart() {
        double best = SeasonRibbon.quality(Optional.of(new Rating("I", "Antoniadi")));
        assertThat(best)
                .isEqualTo(SeasonRibbon.quality(Optional.of(new Rating("10", "Pickering"))))
                .isEqualTo(1);
        assertThat(SeasonRibbon.quality(Optional.of(new Rating("1", "Antoniadi"))))
                .isEqualTo(1);
        assertThat(SeasonRibbon.quality(Optional.of(new Rating("1", "Pickering"))))
                .isEqualTo(0.25);
        assertThat(SeasonRibbon.quality(Optional.of(new Rating("V", "Antoniadi"))))
                .isEqualTo(0.25);
        assertThat(SeasonRibbon.quality(Optional.empty())).isBetween(0.4, 0.8);
        assertThat(SeasonRibbon.quality(Optional.of(new Rating("fair", "words"))))
                .isBetween(0.4, 0.8);
    }

    /** Opposition of Jupiter on 3 November 2023 about 05 h UT, and conjunction on 18 May 2024, from memory of the yearly almanacs. */
    @Tag("truth")
    @Test
    void theOppositionOf2023IsFound() {
        Season season = Season.of(
                Sky.bundled(),
                new Jupiter(),
                Instant.parse("2023-06-01T00:00:00Z"),
                Instant.parse("2024-08-01T00:00:00Z"));
        assertThat(season.events()).extracting(Season.Event::name).containsExactly("opposition", "conjunction");
        assertThat(season.events().get(0).time())
                .isBetween(Instant.parse("2023-11-01T00:00:00Z"), Instant.parse("2023-11-05T12:00:00Z"));
        assertThat(season.events().get(1).time())
                .isBetween(Instant.parse("2024-05-16T00:00:00Z"), Instant.parse("2024-05-21T00:00:00Z"));
    }

    @Test
    void aSpanOutsideTheEphemerisIsEmptyRatherThanWrong() {
        assertThat(Season.of(
                                Sky.bundled(),
                                new Jupiter(),
                                Instant.parse("1800-01-01T00:00:00Z"),
                                Instant.parse("1801-01-01T00:00:00Z"))
                        .sizes())
                .isEmpty();
    }
}
