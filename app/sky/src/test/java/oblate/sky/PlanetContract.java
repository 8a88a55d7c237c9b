/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.ServiceLoader;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;
import org.junit.jupiter.api.TestReporter;

/** What every planet's plug-in must hold to; a test class of the plug-in extends this and keeps a {@code physical.csv} beside it. */
public abstract class PlanetContract {
    private static final Sky SKY = Sky.bundled();

    /** The planet under test. */
    protected abstract PlanetModel planet();

    /** The sky all planets are looked at in. */
    protected static Sky sky() {
        return SKY;
    }

    @Test
    @Tag("truth")
    void discAgreesWithTheReferenceTable() throws IOException {
        PhysicalTable table = PhysicalTable.beside(getClass(), "physical.csv");
        assertThat(table.rowsOf(planet())).isGreaterThanOrEqualTo(5);
        List<PhysicalTable.Difference> differences = table.differences(SKY, planet());
        assertThat(differences).hasSizeGreaterThan(20 * table.rowsOf(planet()));
        assertThat(differences).allMatch(PhysicalTable.Difference::holds);
    }

    /**
     * The whole table; runs with {@code -DexcludedTags= -Doblate.physical=FILE}. The largest differences go to the test's report.
     */
    @Test
    @Tag("whole-table")
    void discAgreesWithTheWholeTable(TestInfo info, TestReporter reporter) throws IOException {
        String path = System.getProperty("oblate.physical");
        assertThat(path).as("-Doblate.physical=FILE").isNotNull();
        PhysicalTable table = PhysicalTable.of(Path.of(path));
        List<PhysicalTable.Difference> differences = table.differences(SKY, planet());
        reporter.publishEntry(planet().id(), PhysicalTable.largest(differences));
        assertThat(table.rowsOf(planet())).as(info.getDisplayName()).isPositive();
        assertThat(differences).allMatch(PhysicalTable.Difference::holds);
    }

    @Test
    void planetIsFoundAsAPlugin() {
        assertThat(ServiceLoader.load(PlanetModel.class)).anyMatch(p -> p.getClass() == planet().getClass());
        assertThat(planet().id()).isEqualTo(planet().label().toLowerCase(java.util.Locale.ROOT));
    }

    @Test
    void everyValueNamesItsSource() {
        Globe globe = planet().globe();
        assertThat(globe.figure().source()).isNotBlank();
        assertThat(globe.elements().source()).isNotBlank();
        assertThat(globe.systems()).allMatch(s -> !s.source().isBlank());
        assertThat(planet().moons()).allMatch(m -> !m.source().isBlank());
        planet().rings().ifPresent(r -> assertThat(r.source()).isNotBlank());
    }

    @Test
    void regionsFollowOneAnotherFromPoleToPole() {
        double south = -90;
        for (Region region : planet().regions()) {
            assertThat(region.southLatGraphicDeg()).as(region.name()).isEqualTo(south);
            assertThat(region.northLatGraphicDeg()).as(region.name()).isGreaterThan(south);
            south = region.northLatGraphicDeg();
        }
        assertThat(south).isEqualTo(planet().regions().isEmpty() ? -90 : 90);
    }

    @Test
    void customarySystemIsOneOfThePlanets() {
        for (double lat = -90; lat <= 90; lat += 5) {
            assertThat(planet().globe().systems()).contains(planet().customarySystem(lat));
        }
    }

    @Test
    void centralMeridianTurnsWithEachSystem() {
        // The definition, not the code: over one rotation of a system its central meridian comes back, but for the
        // motion of the line of sight and the change of light time, which are bounded by the speed of the planets.
        for (RotationSystem system : planet().globe().systems()) {
            Instant start = Instant.parse("2024-05-01T00:00:00Z");
            double days = Math.min(360 / Math.abs(system.degPerDay()), 0.5);
            ApparentDisc before = SKY.disc(planet(), start);
            ApparentDisc after = SKY.disc(planet(), start.plusNanos(Math.round(days * 86400e9)));
            double turned = after.centralMeridianDeg(system) - before.centralMeridianDeg(system);
            double expected = Math.abs(system.degPerDay()) * days;
            assertThat(Math.IEEEremainder(turned - expected, 360))
                    .as(system.label())
                    .isCloseTo(0, within(3 * days));
        }
    }

    @Test
    void anglesKeepTheirRangesAndSystemsConvertBack() {
        Random random = new Random(20240501);
        for (int i = 0; i < 200; i++) {
            UtcTime time = new UtcTime(-3600 + random.nextInt(36000), random.nextDouble() * 86400);
            ApparentDisc disc = SKY.disc(planet(), time);
            for (double deg : List.of(
                    disc.raApparentDeg(),
                    disc.northPolePaDeg(),
                    disc.northPolePaIcrfDeg(),
                    disc.brightLimbPaDeg(),
                    disc.defectPaDeg())) {
                assertThat(deg).as("%s", time).isBetween(0.0, Math.nextDown(360.0));
            }
            assertThat(disc.subEarth().lonDeg()).allMatch(lon -> lon >= 0 && lon < 360);
            assertThat(disc.subSolar().lonDeg()).allMatch(lon -> lon >= 0 && lon < 360);
            assertThat(disc.phaseAngleDeg() + disc.elongationDeg()).isLessThan(180.1);
            double lon = random.nextDouble() * 360;
            for (RotationSystem from : planet().globe().systems()) {
                for (RotationSystem to : planet().globe().systems()) {
                    double back = disc.convertLonDeg(disc.convertLonDeg(lon, from, to), to, from);
                    assertThat(Math.IEEEremainder(back - lon, 360)).isCloseTo(0, within(1e-9));
                }
            }
        }
    }

    @Test
    void dateOutsideTheEphemerisIsRefusedWithItsSpan() {
        for (String time : List.of(
                "1900-01-01T00:00:00Z", "1959-12-10T23:59:59Z", "2060-01-29T00:00:01Z", "2100-01-01T00:00:00Z")) {
            assertThatThrownBy(() -> SKY.disc(planet(), UtcTime.parse(time)))
                    .isInstanceOfSatisfying(
                            ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.OUTSIDE_EPHEMERIS))
                    .hasMessageContainingAll("1959-12-11T00:00:00Z", "2060-01-29T00:00:00Z", "DE405");
        }
        assertThat(SKY.disc(planet(), SKY.firstInstant()).distanceAu()).isPositive();
        assertThat(SKY.disc(planet(), SKY.lastInstant()).distanceAu()).isPositive();
    }
}
