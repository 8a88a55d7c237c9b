/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import oblate.base.ProblemException;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.orekit.bodies.CelestialBody;
import org.orekit.bodies.JPLEphemeridesLoader;
import org.orekit.data.DirectoryCrawler;
import org.orekit.data.LazyLoadedDataContext;
import org.orekit.time.AbsoluteDate;
import org.orekit.time.DateTimeComponents;
import org.orekit.utils.Constants;

/** A person's own ephemeris: files of every shape the JPL binary layout has, and files that lie. */
class EphemerisFileTest {
    private static final Ephemeris BUNDLED = Ephemeris.bundled();

    @TempDir
    Path folder;

    private Path write(String name, byte[] bytes) throws IOException {
        return Files.write(folder.resolve(name), bytes);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void everyShapeOfTheLayoutGivesTheSamePlaces(boolean big) throws IOException {
        ByteOrder order = big ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
        JplFile[] shapes = {
            new JplFile().order(order).number(421),
            new JplFile().order(order).number(430).doubled().withAngles(),
            new JplFile().order(order).number(440).constants(645).withAngles(),
            new JplFile().order(order).number(440).constants(645).withAngles().withNewest(),
            new JplFile().order(order).number(432).constants(380).withNewest().doubled(),
        };
        for (JplFile shape : shapes) {
            Ephemeris read = Ephemeris.read(write("any." + big, shape.bytes()));
            for (double day = -14600; day < 21900; day += 2234.567) {
                for (int body : new int[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}) {
                    assertThat(read.bodyKm(body, day)
                                    .minus(BUNDLED.bodyKm(body, day))
                                    .norm())
                            .isLessThan(1e-5);
                }
            }
        }
    }

    /** Orekit's own reader of the layout on the same file: other record length, other byte order, nutation and libration in it. */
    @Test
    @Tag("truth")
    void orekitReadsTheSamePlacesFromTheSameFile() throws IOException {
        for (ByteOrder order : new ByteOrder[] {ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN}) {
            String name = order == ByteOrder.BIG_ENDIAN ? "big.430" : "little.430";
            Path file = write(
                    name,
                    new JplFile()
                            .order(order)
                            .number(430)
                            .doubled()
                            .withAngles()
                            .bytes());
            LazyLoadedDataContext context = new LazyLoadedDataContext();
            context.getDataProvidersManager().addProvider(new DirectoryCrawler(folder.toFile()));
            var scales = new org.orekit.time.TimeScales[] {OrekitAgreementTest.scales()};
            Ephemeris ours = Ephemeris.read(file);
            assertThat(ours.name()).isEqualTo("DE430");
            JPLEphemeridesLoader.EphemerisType[] types = {
                JPLEphemeridesLoader.EphemerisType.MERCURY,
                JPLEphemeridesLoader.EphemerisType.MARS,
                JPLEphemeridesLoader.EphemerisType.JUPITER,
                JPLEphemeridesLoader.EphemerisType.NEPTUNE
            };
            int[] bodies = {1, 4, 5, 8};
            for (int i = 0; i < bodies.length; i++) {
                CelestialBody theirs = new JPLEphemeridesLoader(
                                name.replace(".", "\\."),
                                types[i],
                                context.getDataProvidersManager(),
                                scales[0],
                                OrekitAgreementTest.gcrf())
                        .loadCelestialBody("body");
                CelestialBody sun = new JPLEphemeridesLoader(
                                name.replace(".", "\\."),
                                JPLEphemeridesLoader.EphemerisType.SUN,
                                context.getDataProvidersManager(),
                                scales[0],
                                OrekitAgreementTest.gcrf())
                        .loadCelestialBody("sun");
                for (double day = -12000; day < 21000; day += 9876.5) {
                    AbsoluteDate date = new AbsoluteDate(
                            new DateTimeComponents(
                                    new DateTimeComponents(2000, 1, 1, 12, 0, 0.0), day * Constants.JULIAN_DAY),
                            scales[0].getTDB());
                    Vector3D between = theirs.getPosition(date, OrekitAgreementTest.gcrf())
                            .subtract(sun.getPosition(date, OrekitAgreementTest.gcrf()));
                    Vec3 own = ours.bodyKm(bodies[i], day).minus(ours.bodyKm(Ephemeris.SUN, day));
                    double off = own.minus(new Vec3(between.getX(), between.getY(), between.getZ()).times(1e-3))
                            .norm();
                    // Orekit counts elapsed TT inside a record: see OrekitAgreementTest
                    assertThat(off).as("%s %s", types[i], day).isLessThan(0.12);
                }
            }
        }
    }

    @Test
    void aFileBeyondTheBundledSpanExtendsTheSky() throws IOException {
        // 55,008 days later: 2110 to 2210, an invented future
        Ephemeris later = Ephemeris.read(
                write("later.499", new JplFile().number(499).later(32 * 1719).bytes()));
        Sky sky = Sky.of(later, LeapSeconds.bundled());
        ApparentDisc disc = sky.disc(GroundSkyTest.body(5), UtcTime.parse("2150-06-01T00:00:00Z"));
        assertThat(disc.ephemeris()).isEqualTo("DE499");
        assertThat(disc.distanceAu()).isBetween(3.9, 6.5);
        assertThatThrownBy(() -> sky.disc(GroundSkyTest.body(5), UtcTime.parse("2024-06-01T00:00:00Z")))
                .hasMessageContaining("DE499")
                .hasMessageContaining("2110");
    }

    /** What lies before 1960 is passed over: the file may begin centuries earlier and takes no more room. */
    @Test
    void timeBeforeUtcIsPassedOver() throws IOException {
        Ephemeris early =
                Ephemeris.read(write("early.405", new JplFile().later(-32 * 900).bytes()));
        assertThat(early.firstTdbDay()).isBetween(2436903.5 - 2451545 - 32, 2436903.5 - 2451545);
        assertThat(early.lastTdbDay()).isEqualTo(BUNDLED.lastTdbDay() - 32 - 32 * 900);
        double day = early.firstTdbDay() + 1000.5;
        assertThat(early.bodyKm(5, day)).isEqualTo(BUNDLED.bodyKm(5, day + 32 * 900));
        refused(new JplFile().later(-32 * 1200).bytes(), "before 1960");
    }

    @Test
    void packedFilesAreReadToo() throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(packed)) {
            zip.write(new JplFile().number(421).only(0, 200).bytes());
        }
        assertThat(Ephemeris.read(write("de421.gz", packed.toByteArray())).name())
                .isEqualTo("DE421");
    }

    @Test
    void filesThatLieAreRefusedInOneSentence() throws IOException {
        byte[] good = new JplFile().only(0, 60).bytes();
        assertThat(Ephemeris.read(write("good", good)).lastTdbDay())
                .isCloseTo(BUNDLED.firstTdbDay() + 1920, within(1e-9));
        refused(Arrays.copyOf(good, good.length - 8), "ends after record");
        refused(put(good, 8 * (818 * 5 + 100), Double.NaN), "NaN");
        refused(put(good, 8 * (818 * 5 + 100), Double.POSITIVE_INFINITY), "Infinity");
        refused(put(good, 8 * (818 * 5 + 2), 5e9), "which cannot be");
        refused(put(good, 8 * (818 * 2 + 2), 5e9), "which cannot be");
        refused(put(good, 8 * (818 * 5), 2436912.5), "does not begin");
        refused(put(good, 2660, 2436912.5 + 32 * 600), "it should have");
        refused(put(good, 2660, 9e15), "head");
        refused(put(good, 2660, Double.NaN), "head");
        refused(put(good, 2668, 31), "");
        refused(put(good, 2688, 0.0123), "head");
        refused(new JplFile().only(0, 60).au(1.0).bytes(), "astronomical unit");
        refused(putInts(good, 2696 + 12 * 4, ByteBuffer.wrap(good).getInt(2696)), "one place");
        refused(putInts(good, 2696 + 4, -3), "body 1");
        refused(putInts(good, 2696 + 4, Integer.MAX_VALUE), "body 1");
        refused(putInts(good, 2844, 40_000, 30, 60), "");
        // Jupiter's and Saturn's pointers exchanged: a well-formed file with wrong planets
        byte[] swapped = good.clone();
        System.arraycopy(good, 2696 + 12 * 4, swapped, 2696 + 12 * 5, 12);
        System.arraycopy(good, 2696 + 12 * 5, swapped, 2696 + 12 * 4, 12);
        refused(swapped, "cannot be");
        // the head of one byte order before the records of the other
        byte[] little = new JplFile().only(0, 60).order(ByteOrder.LITTLE_ENDIAN).bytes();
        byte[] mixed = good.clone();
        System.arraycopy(little, 0, mixed, 0, 2 * 818 * 8);
        refused(mixed, "first record");
        // one record shifted by a little: the planets jump where records meet
        refused(put(good, 8 * (818 * 9 + 2), ByteBuffer.wrap(good).getDouble(8 * (818 * 9 + 2)) + 5000), "jumps");
    }

    private static byte[] put(byte[] good, int at, double value) {
        byte[] bad = good.clone();
        ByteBuffer.wrap(bad).putDouble(at, value);
        return bad;
    }

    private static byte[] putInts(byte[] good, int at, int... values) {
        byte[] bad = good.clone();
        for (int i = 0; i < values.length; i++) {
            ByteBuffer.wrap(bad).putInt(at + 4 * i, values[i]);
        }
        return bad;
    }

    private void refused(byte[] bytes, String word) throws IOException {
        Path file = write("bad.405", bytes);
        assertThatThrownBy(() -> Ephemeris.read(file))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.BAD_EPHEMERIS))
                .hasMessageStartingWith("bad.405:")
                .hasMessageContaining(word);
    }
}
