/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import oblate.image.PixelGrid;

/** One drawn picture with its truth; drawn when asked for, the same every time. */
final class StudioPicture {
    /** How hard a picture is made. */
    enum Grade {
        EASY,
        MEDIUM,
        HARD
    }

    final Circumstances how;
    final Grade grade;
    final double cx;
    final double cy;
    final double radius;
    final double poleDeg;
    final boolean mirrored;
    final int width;
    final int height;
    private final long seed;

    StudioPicture(Circumstances how, Grade grade, long seed) {
        this.how = how;
        this.grade = grade;
        this.seed = seed;
        Random random = new Random(seed);
        double reach = how.body().equals("saturn") ? 2.4 : 1.25;
        double size =
                switch (how.body()) {
                    case "uranus" -> 22 + 14 * random.nextDouble();
                    case "neptune" -> 9 + 8 * random.nextDouble();
                    case "saturn" -> 60 + 50 * random.nextDouble();
                    case "mars", "mercury", "venus" -> 50 + 70 * random.nextDouble();
                    default -> 90 + 80 * random.nextDouble();
                };
        radius = grade == Grade.HARD && size > 40 ? 0.45 * size : size;
        boolean clipped = grade == Grade.HARD && random.nextInt(4) == 0;
        width = (int) (2 * reach * radius + 60 + 60 * random.nextDouble());
        height = (int) (2 * reach * radius + 60 + 40 * random.nextDouble());
        cx = width / 2.0 + 12 * (random.nextDouble() - 0.5) + (clipped ? 0.35 * radius + (reach - 1) * radius + 30 : 0);
        cy = height / 2.0 + 12 * (random.nextDouble() - 0.5);
        poleDeg = random.nextInt(3) == 0 ? 360 * random.nextDouble() - 180 : 30 * random.nextGaussian();
        mirrored = random.nextInt(4) == 0;
    }

    /** A fixed set: 24 of Jupiter, 14 Saturn, 12 Mars, 5 Venus, 5 Mercury, 3 Uranus, 3 Neptune. */
    static List<StudioPicture> set() {
        String[] bodies = {"jupiter", "saturn", "mars", "venus", "mercury", "uranus", "neptune"};
        int[] counts = {24, 14, 12, 5, 5, 3, 3};
        List<StudioPicture> pictures = new ArrayList<>();
        try {
            List<Circumstances> all = Circumstances.all();
            for (int b = 0; b < bodies.length; b++) {
                String body = bodies[b];
                List<Circumstances> own = all.stream()
                        .filter(c -> c.body().equals(body) && c.phase() < 130)
                        .toList();
                for (int k = 0; k < counts[b]; k++) {
                    Grade grade = Grade.values()[k % 5 < 2 ? 0 : k % 5 < 4 ? 1 : 2];
                    pictures.add(new StudioPicture(
                            own.get(k % own.size()), grade, (1000L * b + k + 1) * 0x9E3779B97F4A7C15L));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return pictures;
    }

    PixelGrid draw() {
        Random random = new Random(seed * 7919 + 3);
        Globe3 globe = new Globe3(how, random);
        double poor = grade == Grade.EASY ? 0.7 : grade == Grade.MEDIUM ? 1 : 1.3;
        double fwhm = Math.max(1.8, Math.min(0.16 * radius, poor * (2.6 + 2.4 * random.nextDouble())));
        double[] gains = {1 + 4 * random.nextDouble() * poor, 1 + 4 * random.nextDouble(), 1 + 1.2 * random.nextDouble()
        };
        double noise = (grade == Grade.HARD ? 0.012 : 0.004) * (0.5 + random.nextDouble());
        double gamma = 0.75 + 0.4 * random.nextDouble();
        double bend = 0.3 * random.nextDouble();
        boolean deep = random.nextBoolean();
        boolean colour = random.nextInt(3) > 0;
        boolean jpeg = !deep && random.nextBoolean();
        double shift = colour ? 0.5 * random.nextDouble() * poor : 0;
        double way = random.nextDouble() * 2 * Math.PI;
        double turn = random.nextDouble() * Math.PI;
        double elongation = 1 + 0.06 * random.nextDouble();
        List<float[]> planes = new ArrayList<>();
        for (int c = 0; c < (colour ? 3 : 1); c++) {
            int side = colour ? c - 1 : 0;
            double[] image = scene(globe, cx - side * shift * Math.cos(way), cy - side * shift * Math.sin(way));
            image = Darkroom.blur(image, width, height, fwhm, elongation, turn);
            for (int i = 0; i < image.length; i++) {
                image[i] += 0.004;
            }
            Darkroom.addNoise(image, noise, random);
            image = Darkroom.sharpen(image, width, height, gains);
            float[] finished = Darkroom.finish(image, gamma, bend, deep ? 4095 : 255);
            caption(finished, random);
            planes.add(jpeg ? compressed(finished) : finished);
        }
        return new PixelGrid(width, height, planes, 0, 1);
    }

    private float[] compressed(float[] image) {
        try {
            return Darkroom.jpeg(image, width, height, 0.88f);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Some bars of light in a corner, as burnt-in letters are. */
    private void caption(float[] image, Random random) {
        if (grade == Grade.EASY || Math.floorMod(seed, 3) != 0) {
            return;
        }
        for (int k = 0; k < 9; k++) {
            for (int y = 4; y < 12; y++) {
                image[y * width + 6 + 5 * k] = 0.9f;
                image[(y % 2 == 0 ? 4 : 11) * width + 6 + 5 * k + random.nextInt(4)] = 0.9f;
            }
        }
    }

    /** How much of each pixel the globe covers. */
    double[] outline() {
        Globe3 globe = new Globe3(how, new Random(1));
        double[] image = new double[width * height];
        double a = Math.toRadians(poleDeg);
        for (int i = 0; i < image.length; i++) {
            int n = 5;
            int hits = 0;
            for (int s = 0; s < n * n; s++) {
                double dx = (i % width + (s % n + 0.5) / n - 0.5 - cx) / radius;
                double dy = (i / width + (s / n + 0.5) / n - 0.5 - cy) / radius;
                double right = dx * Math.cos(a) - dy * Math.sin(a);
                hits += globe.covers(mirrored ? -right : right, -dx * Math.sin(a) - dy * Math.cos(a)) ? 1 : 0;
            }
            image[i] = (double) hits / (n * n);
        }
        return image;
    }

    private double[] scene(Globe3 globe, double x0, double y0) {
        double[] image = new double[width * height];
        double a = Math.toRadians(poleDeg);
        double reach = how.body().equals("saturn") ? 2.3 : 1.02;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (Math.hypot(x - x0, y - y0) > reach * radius + 2) {
                    continue;
                }
                double sum = 0;
                int n = 5;
                for (int s = 0; s < n * n; s++) {
                    double dx = (x + (s % n + 0.5) / n - 0.5 - x0) / radius;
                    double dy = (y + (s / n + 0.5) / n - 0.5 - y0) / radius;
                    double right = dx * Math.cos(a) - dy * Math.sin(a);
                    double high = -dx * Math.sin(a) - dy * Math.cos(a);
                    sum += globe.light(mirrored ? -right : right, high);
                }
                image[y * width + x] = sum / (n * n);
            }
        }
        return image;
    }
}
