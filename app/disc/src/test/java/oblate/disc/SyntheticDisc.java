/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import oblate.image.PixelGrid;

/**
 * Draws a globe for tests by rotation matrices and ray casting, sharing no code with the model under test: another limb law (quadratic in the emission cosine times a power
 * of the incidence cosine), belts as a sum of waves, sharpening as two unsharp masks, noise, clip and gamma.
 */
final class SyntheticDisc {
    int width = 150;
    int height = 140;
    double cx = 73.3;
    double cy = 68.7;
    double radius = 48;
    double ratio = 0.93513;
    double subLatDeg = 2;
    double sunEastDeg;
    double sunLatDeg = 2;
    double poleDeg = 20;
    boolean mirrored;
    double blur = 1.6;
    double sharpen = 1.5;
    double noise = 0.004;
    double belts = 0.25;
    double ringInner;
    double ringOuter;
    boolean gamma = true;
    long seed = 1;
    /** East (deg), planetocentric latitude (deg), half width (deg), contrast. */
    final List<double[]> spots = new ArrayList<>();

    private double[][] toBody;
    private double[] sun;

    PixelGrid grey() {
        return new PixelGrid(width, height, List.of(draw()), 0, 1);
    }

    float[] draw() {
        toBody = product(turnY(-subLatDeg), new double[][] {{0, 0, 1}, {1, 0, 0}, {0, 1, 0}});
        double la = Math.toRadians(sunLatDeg);
        double lo = Math.toRadians(sunEastDeg);
        sun = new double[] {Math.cos(la) * Math.cos(lo), Math.cos(la) * Math.sin(lo), Math.sin(la)};
        double[] image = new double[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double sum = 0;
                for (int s = 0; s < 25; s++) {
                    sum += light(x + (s % 5 - 2) / 5.0, y + (s / 5 - 2) / 5.0);
                }
                image[y * width + x] = sum / 25;
            }
        }
        image = smooth(image, blur);
        double[] fine = smooth(image, 1.4);
        double[] coarse = smooth(image, 3.5);
        Random random = new Random(seed);
        float[] out = new float[image.length];
        for (int i = 0; i < out.length; i++) {
            double v = image[i] + sharpen * (image[i] - fine[i]) + 0.4 * sharpen * (image[i] - coarse[i]);
            v = 0.75 * v + noise * random.nextGaussian();
            v = Math.max(0, Math.min(1, v));
            out[i] = Math.round(255 * (gamma ? Math.pow(v, 0.9) : v)) / 255f;
        }
        return out;
    }

    private double light(double px, double py) {
        double a = Math.toRadians(poleDeg);
        double dx = (px - cx) / radius;
        double dy = -(py - cy) / radius;
        double right = dx * Math.cos(a) + dy * Math.sin(a);
        double up = -dx * Math.sin(a) + dy * Math.cos(a);
        if (mirrored) {
            right = -right;
        }
        double[] origin = apply(toBody, new double[] {right, up, 10});
        double[] direction = apply(toBody, new double[] {0, 0, -1});
        double globe = cast(origin, direction);
        if (ringOuter > 0 && direction[2] != 0) {
            double t = -origin[2] / direction[2];
            double r = Math.hypot(origin[0] + t * direction[0], origin[1] + t * direction[1]);
            if (r > ringInner && r < ringOuter && (Double.isNaN(globe) || t < globe)) {
                return 0.55 + 0.3 * Math.sin(20 * r);
            }
        }
        if (Double.isNaN(globe)) {
            return 0;
        }
        double[] p = new double[3];
        for (int i = 0; i < 3; i++) {
            p[i] = origin[i] + globe * direction[i];
        }
        return surface(p, direction);
    }

    private double surface(double[] p, double[] direction) {
        double[] n = {p[0], p[1], p[2] / (ratio * ratio)};
        double length = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
        double incidence = (n[0] * sun[0] + n[1] * sun[1] + n[2] * sun[2]) / length;
        double emission = -(n[0] * direction[0] + n[1] * direction[1] + n[2] * direction[2]) / length;
        if (incidence <= 0) {
            return 0;
        }
        double lat = Math.toDegrees(Math.atan2(p[2], Math.hypot(p[0], p[1])));
        double east = Math.toDegrees(Math.atan2(p[1], p[0]));
        double value =
                1 - belts * Math.cos(Math.toRadians(11 * lat + 40)) - 0.4 * belts * Math.sin(Math.toRadians(23 * lat));
        for (double[] s : spots) {
            double d = Math.hypot((east - s[0]) * Math.cos(Math.toRadians(lat)), lat - s[1]) / s[2];
            value += s[3] * Math.exp(-d * d);
        }
        return value * Math.pow(incidence, 0.85) * (0.75 + 0.45 * emission - 0.2 * emission * emission);
    }

    /** Distance along a ray to the spheroid, NaN when it misses. */
    private double cast(double[] o, double[] d) {
        double a = 0;
        double b = 0;
        double c = -1;
        for (int i = 0; i < 3; i++) {
            double s = i == 2 ? ratio : 1;
            a += d[i] * d[i] / (s * s);
            b += o[i] * d[i] / (s * s);
            c += o[i] * o[i] / (s * s);
        }
        double root = b * b - a * c;
        return root < 0 ? Double.NaN : (-b - Math.sqrt(root)) / a;
    }

    private static double[][] turnY(double deg) {
        double c = Math.cos(Math.toRadians(deg));
        double s = Math.sin(Math.toRadians(deg));
        return new double[][] {{c, 0, s}, {0, 1, 0}, {-s, 0, c}};
    }

    private static double[][] product(double[][] a, double[][] b) {
        double[][] out = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                for (int k = 0; k < 3; k++) {
                    out[i][j] += a[i][k] * b[k][j];
                }
            }
        }
        return out;
    }

    private static double[] apply(double[][] m, double[] v) {
        double[] out = new double[3];
        for (int i = 0; i < 3; i++) {
            out[i] = m[i][0] * v[0] + m[i][1] * v[1] + m[i][2] * v[2];
        }
        return out;
    }

    private double[] smooth(double[] in, double sigma) {
        int reach = (int) Math.ceil(4 * sigma);
        double[] rows = new double[in.length];
        double[] out = new double[in.length];
        double total = 0;
        for (int k = -reach; k <= reach; k++) {
            total += Math.exp(-k * k / (2 * sigma * sigma));
        }
        for (int pass = 0; pass < 2; pass++) {
            double[] from = pass == 0 ? in : rows;
            double[] to = pass == 0 ? rows : out;
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    double sum = 0;
                    for (int k = -reach; k <= reach; k++) {
                        int xx = Math.max(0, Math.min(width - 1, pass == 0 ? x + k : x));
                        int yy = Math.max(0, Math.min(height - 1, pass == 0 ? y : y + k));
                        sum += Math.exp(-k * k / (2 * sigma * sigma)) * from[yy * width + xx];
                    }
                    to[y * width + x] = sum / total;
                }
            }
        }
        return out;
    }
}
