/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.archive.ArchivedPicture;
import oblate.image.CaptureTime;
import oblate.image.TimeMeaning;
import oblate.image.TimeSource;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.ApparentDisc;
import oblate.sky.RotationSystem;
import oblate.sky.Sky;
import org.junit.jupiter.api.Test;

class SeasonCoverageTest {
    private static final Sky SKY = Sky.bundled();
    private static final Jupiter JUPITER = new Jupiter();
    private static final RotationSystem SYSTEM = JUPITER.globe().system("2").orElseThrow();

    private static ArchivedPicture at(long id, String time) {
        Instant mid = Instant.parse(time);
        ApparentDisc disc = SKY.disc(JUPITER, mid);
        ArchivedPicture like = WallTest.picture(id, Optional.empty(), false, 0, List.of());
        return new ArchivedPicture(
                id,
                like.sha256(),
                like.relativePath(),
                like.originalName(),
                "png",
                640,
                480,
                3,
                Optional.of("jupiter"),
                Optional.of(new CaptureTime(
                        mid,
                        OptionalDouble.empty(),
                        TimeSource.USER,
                        "",
                        "",
                        TimeMeaning.MIDDLE,
                        false,
                        false,
                        1,
                        List.of())),
                Optional.of(LocalDate.parse(time.substring(0, 10))),
                Map.of("2", disc.centralMeridianDeg(SYSTEM)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Instant.EPOCH,
                false,
                0);
    }

    /**
     * At 2023-11-03 Jupiter stood 3.6 deg north of its equator as seen from Earth (sub-Earth latitude); on a sphere a place of the same latitude
     * lies acos(sin² + cos² cos) of the centre. The figures are of that formula, worked by hand calculator: 30 deg away 29.9 deg, 50 deg away 49.9
     * deg.
     */
    @Test
    void emissionGrowsWithTheDistanceFromTheMeridian() {
        SeasonCoverage coverage = SeasonCoverage.of(SKY, JUPITER, SYSTEM, List.of(at(7, "2023-11-03T22:00:00Z")));
        SeasonCoverage.Night night = coverage.nights().get(0);
        int meridian = (int) Math.floor(
                SKY.disc(JUPITER, Instant.parse("2023-11-03T22:00:00Z")).centralMeridianDeg(SYSTEM));
        assertThat(night.bestDeg()[meridian]).isLessThanOrEqualTo(1);
        assertThat(night.bestDeg()[(meridian + 30) % 360]).isBetween(29, 31);
        assertThat(night.bestDeg()[(meridian + 310) % 360]).isBetween(49, 51);
        assertThat(night.bestDeg()[(meridian + 180) % 360]).isEqualTo(SeasonCoverage.UNSEEN_DEG);
        assertThat(night.bestPicture()[meridian]).isEqualTo(7);
        assertThat(Coverage.seenDeg(coverage.bestOfAllDeg())).isBetween(99, 102);
        assertThat(coverage.gaps()).hasSize(1);
    }

    @Test
    void theBestOfANightCountsAndOtherPlanetsDoNot() {
        ArchivedPicture early = at(1, "2023-11-03T19:00:00Z");
        ArchivedPicture late = at(2, "2023-11-03T23:50:00Z");
        SeasonCoverage one = SeasonCoverage.of(SKY, JUPITER, SYSTEM, List.of(early));
        SeasonCoverage both = SeasonCoverage.of(SKY, JUPITER, SYSTEM, List.of(early, late));
        assertThat(both.nights()).hasSize(1);
        for (int lon = 0; lon < 360; lon++) {
            assertThat(both.bestOfAllDeg()[lon]).isLessThanOrEqualTo(one.bestOfAllDeg()[lon]);
        }
        assertThat(Coverage.seenDeg(both.bestOfAllDeg())).isGreaterThan(Coverage.seenDeg(one.bestOfAllDeg()) + 80);
    }

    @Test
    void longGapsPartSeasons() {
        List<LocalDate> nights = List.of(
                LocalDate.of(2030, 11, 1),
                LocalDate.of(2031, 1, 10),
                LocalDate.of(2031, 9, 1),
                LocalDate.of(2031, 9, 2));
        assertThat(SeasonCoverage.seasons(nights)).containsExactly(nights.subList(0, 2), nights.subList(2, 4));
        assertThat(SeasonCoverage.seasons(List.of())).isEmpty();
    }

    @Test
    void gapsAreSaidInOnePieceAcrossZero() {
        SeasonCoverage.Night night = new SeasonCoverage.Night(LocalDate.EPOCH, new int[360], new long[360]);
        for (int lon : new int[] {350, 359, 0, 9}) {
            night.bestDeg()[lon] = 70;
        }
        for (int lon = 350; lon < 370; lon++) {
            night.bestDeg()[lon % 360] = 70;
        }
        assertThat(new SeasonCoverage(JUPITER, SYSTEM, List.of(night)).gaps()).containsExactly("350°–10°");
        assertThat(new SeasonCoverage(JUPITER, SYSTEM, List.of()).gaps()).containsExactly("0°–360°");
    }
}
