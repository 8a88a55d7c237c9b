/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;

/** Moons whose spans differ: places are given where all have one, and a refusal names the span in which that is so. */
class MoonSpanTest {
    private static final Sky SKY = Sky.bundled();

    /** Stands still 400 000 km off, in its span. */
    private record Still(double firstTdbDay, double lastTdbDay) implements MoonMotion {
        @Override
        public Vec3 fromPlanetKm(double tdbDays) {
            if (tdbDays < firstTdbDay || tdbDays > lastTdbDay) {
                throw new IllegalStateException("asked outside the span");
            }
            return new Vec3(400000, 0, 0);
        }
    }

    private static final class Planet implements PlanetModel {
        @Override
        public String id() {
            return "test";
        }

        @Override
        public String label() {
            return "Testplanet";
        }

        @Override
        public Globe globe() {
            RotationElements elements =
                    new RotationElements(268, 0, 64.5, 0, List.of(), List.of(), List.of(), "this test");
            return new Globe(
                    5,
                    new Spheroid(71492, 66854, "this test"),
                    elements,
                    List.of(new RotationSystem("3", "System III", 284.95, 870.536, "this test")),
                    "3",
                    LongitudeSense.WEST);
        }

        @Override
        public List<MoonFacts> moons() {
            // 1990-01-01 to 2020-01-01 and 2000-01-01 to 2030-01-01.
            return List.of(
                    new MoonFacts("old", "Old", 100, 0.001, new Still(-3652.5, 7304.5), 1, "this test"),
                    new MoonFacts("new", "New", 100, 0.001, new Still(-0.5, 10957.5), 1, "this test"));
        }
    }

    @Test
    void placesAreGivenWhereAllMoonsHaveOne() {
        for (String time : List.of("2000-01-02T00:00Z", "2010-06-01T00:00Z", "2019-12-31T00:00Z")) {
            assertThat(SKY.moons(new Planet(), UtcTime.parse(time))).hasSize(2);
        }
        for (String time :
                List.of("1985-01-01T00:00Z", "1995-01-01T00:00Z", "2025-01-01T00:00Z", "2035-01-01T00:00Z")) {
            assertThatThrownBy(() -> SKY.moons(new Planet(), UtcTime.parse(time)))
                    .isInstanceOfSatisfying(
                            ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.OUTSIDE_MOONS))
                    .hasMessageContainingAll("Testplanet", "2000-01-01T", "2019-12-31T");
        }
    }

    @Test
    void eachMoonMovesTheCentreInItsOwnSpanOnly() {
        for (String time :
                List.of("1985-01-01T00:00Z", "1995-01-01T00:00Z", "2010-01-01T00:00Z", "2025-01-01T00:00Z")) {
            assertThat(SKY.disc(new Planet(), UtcTime.parse(time)).distanceAu()).isPositive();
        }
        Sighting both = SKY.sighting(new Planet(), UtcTime.parse("2010-01-01T00:00Z"));
        Sighting one = SKY.sighting(new Planet(), UtcTime.parse("1995-01-01T00:00Z"));
        Sighting none = SKY.sighting(new Planet(), UtcTime.parse("1985-01-01T00:00Z"));
        assertThat(both.path().offsetKm().x()).isEqualTo(-800.0);
        assertThat(one.path().offsetKm().x()).isEqualTo(-400.0);
        assertThat(none.path().offsetKm().norm()).isZero();
    }
}
