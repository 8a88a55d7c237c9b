/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import oblate.base.Progress;
import oblate.sky.Sky;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One series of every kit and kind of file, read back by readers that are not ours: the disc, moons and shadows lie where the truth says, and so do the times. */
@Tag("truth")
class PicturesTest {
    @TempDir
    static Path temp;

    private static Path folder;
    private static SampleTruth truth;

    @BeforeAll
    static void draw() {
        Scenario all = Scenario.standard();
        List<String> wanted = List.of(
                "2023-08-24T02:14:18Z",
                "2023-11-14T22:31:00Z",
                "2023-12-07T19:52:42Z",
                "2023-12-01T23:27:36Z",
                "2024-01-10T11:08:06Z");
        List<NightPlan> nights = all.nights().stream()
                .filter(n -> wanted.contains(n.firstMid().toString())
                        || (n.kitId().equals("d") && n.count() == 4)
                        || (n.kitId().equals("b") && n.count() == 3)
                        || (n.kitId().equals("c") && n.evening().isBefore(LocalDate.of(2023, 11, 18))))
                .map(n -> n.kitId().equals("c") && n.count() > 1 ? shortened(n) : n)
                .toList();
        Scenario few = new Scenario(
                "test", all.seed(), all.epoch(), all.sites(), all.kits(), all.bands(), all.features(), nights);
        folder = temp.resolve("few");
        truth = SampleSeason.of(few, Sky.bundled()).writeTo(folder, Progress.SILENT);
    }

    private static NightPlan shortened(NightPlan n) {
        return new NightPlan(
                n.evening(),
                n.kitId(),
                n.firstMid(),
                n.stepS(),
                1,
                n.seeing(),
                n.transparencyMag(),
                n.clockErrorS(),
                n.fileKind(),
                n.carrier());
    }

    @Test
    void everyKitAndKindIsHere() {
        assertThat(truth.pictures()).extracting(SampleTruth.Picture::kitId).contains("a", "b", "c", "d", "e");
        assertThat(truth.pictures()).extracting(SampleTruth.Picture::fileKind).contains(FileKind.values());
        assertThat(truth.pictures()).extracting(SampleTruth.Picture::carrier).contains(TimeCarrier.values());
    }

    @Test
    void theDiscLiesWhereTheTruthSays() throws IOException {
        for (SampleTruth.Picture p : truth.pictures()) {
            Pixels pixels = Pixels.read(folder.resolve(p.file()));
            assertThat(pixels.width()).isEqualTo(p.widthPx());
            assertThat(pixels.height()).isEqualTo(p.heightPx());
            assertThat(pixels.channels()).isEqualTo(p.channels());
            // Inside an ellipse a little larger than the globe, what is brighter than a twentieth of full scale is the
            // globe.
            double sumX = 0;
            double sumY = 0;
            int count = 0;
            float[] plane = pixels.truthPlane();
            for (int i = 0; i < plane.length; i++) {
                double dx = i % p.widthPx() - p.cxPx();
                double dy = (double) (i / p.widthPx()) - p.cyPx();
                if (Math.hypot(dx, dy) < 1.03 * p.rePx() && plane[i] > 0.05) {
                    sumX += dx;
                    sumY += dy;
                    count++;
                }
            }
            // The phase's defect moves the middle along the equator, up to 4 % of a radius far from opposition; nothing
            // moves it along the pole's direction.
            double turn = Math.toRadians(p.poleAngleDeg());
            double alongPole = -(sumX * Math.sin(turn) + sumY * Math.cos(turn)) / count / p.rePx();
            boolean nearOpposition = Math.abs(
                            p.evening().toEpochDay() - LocalDate.of(2023, 11, 3).toEpochDay())
                    < 15;
            assertThat(alongPole).as(p.file()).isCloseTo(0, offset(0.012));
            assertThat(Math.hypot(sumX, sumY) / count / p.rePx())
                    .as(p.file())
                    .isLessThan(nearOpposition ? 0.015 : 0.04);
            assertThat(count / (Math.PI * p.rePx() * p.rePx() * 0.9355))
                    .as(p.file())
                    .isBetween(0.93, 1.03);
        }
    }

    @Test
    void moonsAndShadowsLieWhereTheTruthSays() throws IOException {
        int moons = 0;
        int shadows = 0;
        for (SampleTruth.Mark m : truth.marks()) {
            SampleTruth.Picture p = truth.pictures().stream()
                    .filter(q -> q.file().equals(m.picture()))
                    .findFirst()
                    .orElseThrow();
            int reach = (int) Math.round(0.085 * p.rePx());
            double fromCentre = Math.hypot(m.xPx() - p.cxPx(), m.yPx() - p.cyPx()) / p.rePx();
            boolean inside = m.xPx() > reach + 2
                    && m.yPx() > reach + 2
                    && m.xPx() < p.widthPx() - reach - 3
                    && m.yPx() < p.heightPx() - reach - 3;
            if (m.kind().equals("moon") && fromCentre > 1.15 && inside) {
                near(p, m, reach, 1);
                moons++;
            } else if (m.kind().equals("moon shadow") && m.emissionDeg().getAsDouble() < 65 && alone(m)) {
                near(p, m, reach, -1);
                shadows++;
            }
        }
        assertThat(moons).isGreaterThanOrEqualTo(5);
        assertThat(shadows).isGreaterThanOrEqualTo(2);
    }

    /** Near opposition a moon stands before its own shadow. */
    private static boolean alone(SampleTruth.Mark shadow) {
        return truth.marks().stream()
                .filter(m -> m.picture().equals(shadow.picture()) && m.kind().equals("moon in transit"))
                .noneMatch(m -> Math.hypot(m.xPx() - shadow.xPx(), m.yPx() - shadow.yPx()) < 25);
    }

    private static void near(SampleTruth.Picture p, SampleTruth.Mark m, int reach, int sign) throws IOException {
        double[] middle = Pixels.read(folder.resolve(p.file())).middle(m.xPx(), m.yPx(), reach, sign);
        double off = Math.hypot(middle[0] - m.xPx(), middle[1] - m.yPx());
        assertThat(off).as(p.file() + " " + m.feature()).isLessThan(sign > 0 ? 0.35 : 1.2);
    }

    @Test
    void darkBarsLieWhereTheTruthSays() throws IOException {
        List<Double> east = new ArrayList<>();
        List<Double> north = new ArrayList<>();
        for (SampleTruth.Mark m : truth.marks()) {
            if (!m.kind().equals("dark bar") || m.emissionDeg().getAsDouble() > 35) {
                continue;
            }
            SampleTruth.Picture p = truth.pictures().stream()
                    .filter(q -> q.file().equals(m.picture()))
                    .findFirst()
                    .orElseThrow();
            double[] middle =
                    Pixels.read(folder.resolve(p.file())).middle(m.xPx(), m.yPx(), (int) (0.085 * p.rePx()), -1);
            double x = (middle[0] - m.xPx()) / p.rePx();
            double y = (middle[1] - m.yPx()) / p.rePx();
            double turn = Math.toRadians(p.poleAngleDeg());
            east.add((x * Math.cos(turn) - y * Math.sin(turn)) * (p.mirrored() ? -1 : 1));
            north.add(-(x * Math.sin(turn) + y * Math.cos(turn)));
        }
        // The bars lie on torn clouds, which pull their middles about; on the whole they are in place. A tenth of a
        // radius is 6°.
        assertThat(east).hasSizeGreaterThanOrEqualTo(5).allMatch(v -> Math.abs(v) < 0.035);
        assertThat(north).allMatch(v -> Math.abs(v) < 0.035);
        assertThat(east.stream().mapToDouble(v -> v).average().orElseThrow()).isCloseTo(0, offset(0.010));
        assertThat(north.stream().mapToDouble(v -> v).average().orElseThrow()).isCloseTo(0, offset(0.012));
    }

    @Test
    void timesStandWhereTheTruthSays() throws IOException, ImageProcessingException, FitsException {
        for (SampleTruth.Picture p : truth.pictures()) {
            Path file = folder.resolve(p.file());
            Instant found =
                    switch (p.carrier()) {
                        case NAME_SECONDS -> inName(p.file(), "(\\d{8}T\\d{6})Z", "yyyyMMdd'T'HHmmss");
                        case NAME_TENTH_MINUTE -> tenthMinute(p.file());
                        case EXIF -> exif(file);
                        case FITS -> fits(file, p);
                        case SIDE_NOTE -> note(file);
                        case NONE -> null;
                    };
            assertThat(found).as(p.file()).isEqualTo(p.stated().orElse(null));
            if (p.carrier() != TimeCarrier.NAME_SECONDS && p.carrier() != TimeCarrier.NAME_TENTH_MINUTE) {
                assertThat(file.getFileName().toString()).doesNotContainPattern("\\d{6}");
            }
            if (p.carrier() != TimeCarrier.EXIF && p.fileKind() != FileKind.FITS_16) {
                assertThat(ImageMetadataReader.readMetadata(file.toFile())
                                .getFirstDirectoryOfType(ExifSubIFDDirectory.class))
                        .isNull();
            }
        }
    }

    private static Instant inName(String name, String pattern, String format) {
        Matcher m = Pattern.compile(pattern).matcher(name);
        assertThat(m.find()).isTrue();
        return LocalDateTime.parse(m.group(1), DateTimeFormatter.ofPattern(format))
                .toInstant(ZoneOffset.UTC);
    }

    private static Instant tenthMinute(String name) {
        Matcher m = Pattern.compile("T\\d{4}\\.(\\d)Z").matcher(name);
        assertThat(m.find()).isTrue();
        return inName(name, "(\\d{8}T\\d{4})", "yyyyMMdd'T'HHmm").plusSeconds(6L * Integer.parseInt(m.group(1)));
    }

    private static Instant exif(Path file) throws IOException, ImageProcessingException {
        Metadata metadata = ImageMetadataReader.readMetadata(file.toFile());
        ExifSubIFDDirectory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        assertThat(exif.getString(ExifSubIFDDirectory.TAG_TIME_ZONE_ORIGINAL)).isIn("+00:00", "+02:00");
        return exif.getDateOriginal().toInstant();
    }

    private static Instant fits(Path file, SampleTruth.Picture p) throws IOException, FitsException {
        try (Fits fits = new Fits(file.toFile())) {
            Header header = fits.readHDU().getHeader();
            Instant start = Instant.parse(header.getStringValue("DATE-OBS") + "Z");
            Instant middle = Instant.parse(header.getStringValue("DATE-AVG") + "Z");
            assertThat(header.getDoubleValue("EXPTIME")).isEqualTo(p.captureS());
            assertThat(header.getStringValue("OBJECT")).isEqualTo("Jupiter");
            assertThat(start.plusMillis(Math.round(p.captureS() * 500))).isEqualTo(middle);
            return middle;
        }
    }

    private static Instant note(Path file) throws IOException {
        String name = file.getFileName().toString();
        String text = Files.readString(file.resolveSibling(name.replace(".png", ".txt")));
        Matcher m = Pattern.compile("Middle of capture: (\\S+)").matcher(text);
        assertThat(m.find()).isTrue();
        return Instant.parse(m.group(1));
    }

    @Test
    void theTablesReadBack() {
        SampleTruth read = SampleTruth.readFrom(folder);
        assertThat(read.features()).isEqualTo(truth.features());
        assertThat(read.epoch()).isEqualTo(truth.epoch());
        assertThat(read.wrongClocks())
                .extracting(SampleTruth.Picture::file)
                .containsExactlyElementsOf(truth.wrongClocks().stream()
                        .map(SampleTruth.Picture::file)
                        .toList());
        assertThat(read.pictures()).hasSameSizeAs(truth.pictures());
        assertThat(read.pictures().get(0).cxPx())
                .isCloseTo(truth.pictures().get(0).cxPx(), offset(5.1e-5));
        assertThat(read.marks())
                .usingRecursiveFieldByFieldElementComparator(
                        org.assertj.core.api.recursive.comparison.RecursiveComparisonConfiguration.builder()
                                .withComparatorForType((a, b) -> Math.abs(a - b) < 6e-4 ? 0 : 1, Double.class)
                                .build())
                .containsExactlyElementsOf(truth.marks());
    }
}
