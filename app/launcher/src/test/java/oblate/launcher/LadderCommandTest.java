/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.NewMark;
import oblate.archive.StoredFit;
import oblate.archive.testing.PracticePictures;
import oblate.disc.DiscFit;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.SurfacePoint;
import oblate.disc.Trust;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.ApparentDisc;
import oblate.sky.RotationSystem;
import oblate.sky.Sky;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A spot that runs -7.5 deg a day in System II, drawn onto plain discs by the plain orthographic projection (x = R cos lat sin(CM - lon), the pole upright), not by the
 * program's own.
 */
class LadderCommandTest {
    private static final Instant START = Instant.parse("2024-12-01T00:00:00Z");
    private static final double LON_DEG = 200;
    private static final double DEG_PER_DAY = -7.5;
    private static final int SIZE = 240;
    private static final double RADIUS_PX = 100;
    private static final int STRIPS = 5;

    @TempDir
    Path work;

    private final Jupiter jupiter = new Jupiter();
    private final RotationSystem two = jupiter.globe().system("2").orElseThrow();
    private final Sky sky = Sky.bundled();
    private Path archive;
    private final List<Instant> times = new ArrayList<>();

    private static double lonAt(Instant time) {
        return LON_DEG + DEG_PER_DAY * Duration.between(START, time).toMillis() / 86_400_000.0;
    }

    @BeforeEach
    void makeASeason() throws IOException {
        archive = work.resolve("season");
        Clock clock = Clock.fixed(Instant.parse("2025-01-08T00:00:00Z"), ZoneOffset.UTC);
        try (Archive open = Archive.create(archive, List.of(jupiter), clock)) {
            PracticePictures pictures = new PracticePictures(open, List.of(jupiter), work);
            long spot = pictures.feature("runner", "spot", Optional.of("2"));
            // Steps of 67 minutes: about every ninth shows the spot near the middle.
            for (int i = 0; times.size() < STRIPS + 2; i++) {
                Instant time = START.plus(Duration.ofMinutes(67L * i));
                ApparentDisc disc = sky.disc(jupiter, time);
                double west = Math.IEEEremainder(disc.centralMeridianDeg(two) - lonAt(time), 360);
                boolean apart = times.isEmpty()
                        || Duration.between(times.get(times.size() - 1), time).toHours() > 30;
                if (Math.abs(west) < 25 && apart) {
                    times.add(time);
                    boolean doubtful = times.size() == STRIPS + 1;
                    keep(open, pictures, spot, time, disc, west, doubtful);
                } else if (Math.abs(west) > 150 && times.size() == 1 && i % 3 == 0) {
                    // Pictures of the far side take no part.
                    keep(open, pictures, 0, time, disc, west, false);
                }
            }
        }
    }

    @SuppressWarnings("checkstyle:ParameterNumber") // a fixture
    private void keep(
            Archive open,
            PracticePictures pictures,
            long spot,
            Instant time,
            ApparentDisc disc,
            double west,
            boolean doubtful)
            throws IOException {
        ArchivedPicture picture = filed(pictures, time, west);
        Placement placement = new Placement((SIZE - 1) / 2.0, (SIZE - 1) / 2.0, RADIUS_PX, 0, false);
        DiscFit fit = new DiscFit(
                placement,
                PlacementCovariance.diagonal(0.1, 0.1, 0.1, 0.3),
                doubtful ? Trust.DOUBTFUL : Trust.TRUSTED,
                doubtful ? List.of("the edge is faint") : List.of(),
                "forward model 1",
                "grey",
                0.2,
                200,
                List.of());
        StoredFit stored = open.keepFit(picture.id(), fit, "DE405", "Oblate 0.1.0");
        if (spot > 0) {
            double lon = disc.convertLonDeg(lonAt(time), two, jupiter.globe().iauSystem());
            open.addMark(new NewMark(
                    picture.id(),
                    Optional.of(stored.id()),
                    Optional.of(spot),
                    new PixelPoint(SIZE / 2.0, SIZE / 2.0),
                    0.3,
                    Optional.of(new SurfacePoint(lon, 0, 0, 10, 11, west)),
                    Optional.of(PracticePictures.errors()),
                    "centre",
                    "A. Measurer"));
        }
    }

    private ArchivedPicture filed(PracticePictures pictures, Instant time, double west) throws IOException {
        BufferedImage image = new BufferedImage(SIZE, SIZE, BufferedImage.TYPE_BYTE_GRAY);
        double middle = (SIZE - 1) / 2.0;
        double flat = 66_854.0 / 71_492;
        // Longitude grows to the west, on the left with north up: what the meridian has passed lies to the right.
        double spotX = middle + RADIUS_PX * Math.sin(Math.toRadians(west));
        boolean near = Math.abs(west) < 90;
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                boolean disc = Math.hypot(x - middle, (y - middle) / flat) <= RADIUS_PX;
                boolean spot = near && Math.hypot(x - spotX, y - middle) <= 4;
                image.getRaster().setSample(x, y, 0, spot ? 255 : disc ? 110 : 0);
            }
        }
        // No two pictures are the same file.
        image.getRaster().setSample((int) (time.getEpochSecond() / 60 % SIZE), 0, 0, 1 + times.size());
        image.getRaster().setSample((int) (time.getEpochSecond() / 3600 % SIZE), 1, 0, 1);
        return pictures.filed("jupiter-" + time.getEpochSecond(), image, PracticePictures.facts(time));
    }

    private CommandRun ladder(Path out, String... more) {
        List<String> words = new ArrayList<>(List.of(
                "chart",
                "--archive",
                archive.toString(),
                "--kind",
                "ladder",
                "--feature",
                "runner",
                "--system",
                "2",
                "--out",
                out.toString()));
        words.addAll(List.of(more));
        return CommandRun.of(work.resolve("settings"), "", words.toArray(String[]::new));
    }

    /** How far (deg of longitude) the brightest column of each strip in an SVG is from its middle, in order of time. */
    private static List<Double> offsets(Path svg, double widthDeg) throws IOException {
        Matcher images =
                Pattern.compile("data:image/png;base64,([A-Za-z0-9+/=\\s]+)\"").matcher(Files.readString(svg));
        List<Double> offsets = new ArrayList<>();
        while (images.find()) {
            byte[] png = Base64.getMimeDecoder().decode(images.group(1));
            BufferedImage strip = ImageIO.read(new ByteArrayInputStream(png));
            double sum = 0;
            double weighted = 0;
            for (int x = 0; x < strip.getWidth(); x++) {
                for (int y = 0; y < strip.getHeight(); y++) {
                    double light = Math.max(0, (strip.getRGB(x, y) & 255) - 200);
                    sum += light;
                    weighted += light * x;
                }
            }
            double column = weighted / sum - (strip.getWidth() - 1) / 2.0;
            offsets.add(-column * widthDeg / strip.getWidth());
        }
        return offsets;
    }

    @Test
    void aSpotStandsInAStraightColumnOfAFrameThatMovesWithIt() throws IOException {
        Path out = work.resolve("ladder.svg");
        CommandRun run = ladder(out, "--rate", "-7.5", "--height", "1500");
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.err())
                .contains("1 picture with a doubtful fit")
                .containsPattern("[0-9]+ pictures with the place turned away")
                .contains("−7.5000° a day");
        List<Double> offsets = offsets(out, 60);
        assertThat(offsets).hasSize(STRIPS + 1).allSatisfy(o -> assertThat(o).isEqualTo(0, offset(0.6)));
        String text = Files.readString(out);
        assertThat(text).contains("North up, not mirrored").contains("planetographic latitude −6.0° to 6.0°");

        // Of its own drift, which is found from the marks, alike.
        Path own = work.resolve("own.svg");
        assertThat(ladder(own, "--height", "1500").status()).isZero();
        assertThat(offsets(own, 60)).allSatisfy(o -> assertThat(o).isEqualTo(0, offset(0.6)));
    }

    @Test
    void inAFrameThatStandsStillItRunsAway() throws IOException {
        Path out = work.resolve("still.svg");
        assertThat(ladder(out, "--rate", "0", "--width-deg", "180", "--height", "2000")
                        .status())
                .isZero();
        List<Double> offsets = offsets(out, 180);
        Instant first = times.get(0);
        for (int i = 1; i < offsets.size(); i++) {
            Instant time = times.get(i >= STRIPS ? i + 1 : i);
            double days = Duration.between(first, time).toMillis() / 86_400_000.0;
            assertThat(offsets.get(i) - offsets.get(0)).isEqualTo(DEG_PER_DAY * days, offset(1.2));
        }
        assertThat(offsets.get(offsets.size() - 1) - offsets.get(0)).isLessThan(-30);
    }

    @Test
    void crowdedDatesAreThinnedAndTheNumberIsSaid() throws IOException {
        Path out = work.resolve("few.png");
        CommandRun run = ladder(out, "--most-strips", "3", "--width", "500", "--theme", "red");
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.err()).contains("3 pictures where dates crowd");
        assertThat(ImageIO.read(out.toFile()).getWidth()).isEqualTo(500);
    }

    @Test
    void whatALadderCannotDoIsSaidInOneSentence() {
        Path out = work.resolve("no.png");
        CommandRun nobody = ladder(out, "--lat-from", "10", "--lat-to", "10.5");
        assertThat(nobody.status()).isEqualTo(2);
        assertThat(nobody.err()).contains("--lat-from");
        CommandRun narrow = ladder(out, "--width-deg", "1");
        assertThat(narrow.status()).isEqualTo(2);
        CommandRun nameless = CommandRun.of(
                work.resolve("settings"),
                "",
                "chart",
                "--archive",
                archive.toString(),
                "--kind",
                "ladder",
                "--out",
                out.toString());
        assertThat(nameless.status()).isEqualTo(2);
        assertThat(nameless.err()).contains("--feature NAME");
        assertThat(out).doesNotExist();
    }
}
