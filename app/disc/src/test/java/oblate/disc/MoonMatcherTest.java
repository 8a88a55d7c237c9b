/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.Sky;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Pictures drawn from a published table of moon places, which our own series has no part in: a round glow with a soft edge, the moons, some false lights,
 * noise. The discs' places are handed over with the errors fits have, and err by them.
 */
@Tag("truth")
class MoonMatcherTest {
    private static final int SIDE = 820;
    private static final double SIGMA_RADIUS = 0.002;
    private static final double SIGMA_ANGLE_DEG = 0.15;
    private static final double SIGMA_CENTRE_PX = 0.1;

    private final Sky sky = Sky.bundled();

    private record Moon(String name, double x, double y, boolean hidden) {}

    private static Map<String, List<Moon>> table() throws IOException {
        Map<String, List<Moon>> instants = new LinkedHashMap<>();
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                MoonMatcherTest.class.getResourceAsStream("galilean-places.csv"), StandardCharsets.UTF_8))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                String[] c = line.split(",");
                if (!line.startsWith("#") && !c[0].equals("time_utc")) {
                    instants.computeIfAbsent(c[0], k -> new ArrayList<>())
                            .add(new Moon(
                                    c[1], Double.parseDouble(c[2]), Double.parseDouble(c[3]), c[4].equals("yes")));
                }
            }
        }
        return instants;
    }

    private static Plane drawn(List<Moon> moons, DiscFrame truth, Random random) {
        Placement p = truth.placement();
        double r = p.equatorialRadiusPx();
        float[] image = new float[SIDE * SIDE];
        for (int i = 0; i < image.length; i++) {
            double d = Math.hypot(i % SIDE - p.centreXPx(), (double) (i / SIDE) - p.centreYPx());
            double glow = 0.03 * Math.exp(-Math.max(0, d - r) / 15);
            image[i] = (float) (1 / (1 + Math.exp((d - 0.97 * r) / 1.2)) + glow + 0.004 * random.nextGaussian());
        }
        for (Moon moon : moons) {
            if (!moon.hidden()) {
                PixelPoint at = truth.placeOffset(moon.x(), moon.y());
                dot(image, at.xPx(), at.yPx(), 0.12 + 0.1 * random.nextDouble(), 1.5);
            }
        }
        for (int k = random.nextInt(4); k > 0; k--) {
            dot(image, random.nextDouble() * SIDE, random.nextDouble() * SIDE, 0.05 + 0.1 * random.nextDouble(), 1.3);
        }
        return new Plane(SIDE, SIDE, image);
    }

    private static void dot(float[] image, double x, double y, double peak, double sigma) {
        for (int iy = Math.max(0, (int) y - 9); iy < Math.min(SIDE, (int) y + 10); iy++) {
            for (int ix = Math.max(0, (int) x - 9); ix < Math.min(SIDE, (int) x + 10); ix++) {
                double d2 = (ix - x) * (ix - x) + (iy - y) * (iy - y);
                image[iy * SIDE + ix] += (float) (peak * Math.exp(-d2 / (2 * sigma * sigma)));
            }
        }
    }

    /** One picture; the stated time is the true one plus a slip. */
    private MoonFinding look(
            String time, List<Moon> moons, double slipS, boolean mirrored, boolean told, Random random) {
        double r = 30 + 14 * random.nextDouble();
        double angle = random.nextDouble() * 360;
        double x = SIDE / 2.0 + 30 * random.nextGaussian();
        double y = SIDE / 2.0 + 30 * random.nextGaussian();
        Instant stated = Instant.parse(time).plusMillis(Math.round(slipS * 1000));
        var disc = sky.disc(new Jupiter(), stated);
        Plane plane = drawn(moons, new DiscFrame(disc, new Placement(x, y, r, angle, mirrored)), random);
        Placement fitted = new Placement(
                x + SIGMA_CENTRE_PX * random.nextGaussian(),
                y + SIGMA_CENTRE_PX * random.nextGaussian(),
                r * (1 + SIGMA_RADIUS * random.nextGaussian()),
                angle + SIGMA_ANGLE_DEG * random.nextGaussian() + (told ? 0 : 180 * random.nextInt(2)),
                told ? mirrored : random.nextBoolean());
        return new MoonMatcher(
                        sky,
                        plane,
                        new DiscFrame(disc, fitted),
                        PlacementCovariance.diagonal(
                                SIGMA_CENTRE_PX, SIGMA_CENTRE_PX, SIGMA_RADIUS * r, SIGMA_ANGLE_DEG))
                .look()
                .orElseThrow();
    }

    @Test
    void turnAndMirrorImageAreFoundFromTheMoons() throws IOException {
        Random random = new Random(11);
        int decided = 0;
        int all = 0;
        for (Map.Entry<String, List<Moon>> instant : table().entrySet()) {
            for (int k = 0; k < 4; k++) {
                boolean mirrored = k % 2 == 1;
                MoonFinding found = look(instant.getKey(), instant.getValue(), 0, mirrored, false, random);
                all++;
                double p = mirrored ? found.mirrored() : 1 - found.mirrored();
                assertThat(p).as(instant.getKey() + " mirrored " + mirrored).isGreaterThan(0.05);
                if (p > 0.95) {
                    decided++;
                    assertThat(found.placement().mirrored()).isEqualTo(mirrored);
                }
            }
        }
        assertThat(decided).isGreaterThan(all * 9 / 10);
    }

    /** Ten minutes are found in nine pictures of ten with two moons; a right clock is never called wrong; errors are honest. */
    @Test
    void wrongClocksAreFoundAndRightOnesLeftAlone() throws IOException {
        Random random = new Random(12);
        int wrong = 0;
        int found = 0;
        int right = 0;
        int inside = 0;
        for (Map.Entry<String, List<Moon>> instant : table().entrySet()) {
            for (double slip : new double[] {0, 0, 0, 0, 600, -600, 600, -600}) {
                MoonFinding look = look(instant.getKey(), instant.getValue(), slip, random.nextBoolean(), true, random);
                ClockFinding clock = look.clock().orElseThrow();
                if (clock.moons() < 2) {
                    continue;
                }
                if (slip == 0) {
                    assertThat(clock.verdict())
                            .as(instant.getKey() + " " + clock)
                            .isNotEqualTo(ClockFinding.Verdict.DISAGREES);
                    right++;
                    inside += Math.abs(clock.offsetS()) < 2 * clock.sigmaS() ? 1 : 0;
                } else {
                    wrong++;
                    boolean hit = clock.verdict() == ClockFinding.Verdict.DISAGREES
                            && Math.abs(clock.offsetS() + slip) < Math.max(60, 5 * clock.sigmaS());
                    found += hit ? 1 : 0;
                }
            }
        }
        assertThat(right).isGreaterThan(20);
        assertThat(inside).isGreaterThan(right * 8 / 10);
        assertThat(found).as(found + " of " + wrong).isGreaterThanOrEqualTo(wrong * 9 / 10);
    }

    @Test
    void likelyReasonsAreTold() throws IOException {
        Map.Entry<String, List<Moon>> instant = table().entrySet().stream()
                .filter(e -> e.getKey().startsWith("2011-04"))
                .findFirst()
                .orElseThrow();
        Random random = new Random(13);
        ClockFinding zone = look(instant.getKey(), instant.getValue(), 3600, false, true, random)
                .clock()
                .orElseThrow();
        assertThat(zone.verdict()).isEqualTo(ClockFinding.Verdict.DISAGREES);
        assertThat(zone.words()).contains("time zone").contains("+1.0 h");
        assertThat(zone.offsetS()).isCloseTo(-3600, within(90.0));
        ClockFinding date = look(instant.getKey(), instant.getValue(), -86_400, false, true, random)
                .clock()
                .orElseThrow();
        assertThat(date.words()).contains("date is off by a day");
        ClockFinding slip = look(instant.getKey(), instant.getValue(), -900, false, true, random)
                .clock()
                .orElseThrow();
        assertThat(slip.words()).contains("later").contains("clock was wrong");
    }

    @Test
    void lightsAreFoundToTenthsOfAPixelAndLettersAreNot() {
        float[] image = new float[SIDE * SIDE];
        Random random = new Random(14);
        for (int i = 0; i < image.length; i++) {
            image[i] = (float) (0.02 + 0.003 * random.nextGaussian());
        }
        dot(image, 200.3, 150.8, 0.2, 1.6);
        for (int x = 600; x < 640; x++) {
            image[300 * SIDE + x] = 0.8f;
            image[301 * SIDE + x] = 0.8f;
        }
        DiscFrame frame = new DiscFrame(
                TestDiscs.disc(TestDiscs.jupiter(), 100, 2, 100, 2), new Placement(400, 500, 30, 10, false));
        List<PointLight> found = new PointFinder(new Plane(SIDE, SIDE, image), frame).find();
        assertThat(found).hasSize(1);
        assertThat(found.get(0).xPx()).isCloseTo(200.3, within(0.15));
        assertThat(found.get(0).yPx()).isCloseTo(150.8, within(0.15));
    }
}
