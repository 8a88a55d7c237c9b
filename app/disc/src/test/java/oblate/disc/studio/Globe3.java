/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import java.util.Random;

/**
 * An invented globe as seen along one line of sight: casts rays at the spheroid (and the rings), and lights what they hit by a law that is no power law:
 * a share of Lommel–Seeliger light, which does not vanish at the limb, on one of Lambert's.
 */
final class Globe3 {
    private final Circumstances how;
    private final double[] sight;
    private final double[] up;
    private final double[] sun;
    private final double q;
    private final double hard;
    private final double contrast;
    private final double[] phase = new double[8];
    private final double[][] spots;
    private final boolean ringed;

    Globe3(Circumstances how, Random random) {
        this.how = how;
        double b = Math.toRadians(how.earthLat());
        sight = new double[] {Math.cos(b), 0, Math.sin(b)};
        up = new double[] {-Math.sin(b), 0, Math.cos(b)};
        sun = how.sun();
        q = how.polarRatio();
        ringed = how.body().equals("saturn");
        switch (how.body()) {
            case "jupiter" -> {
                hard = 0.15 + 0.35 * random.nextDouble();
                contrast = 0.22;
            }
            case "saturn" -> {
                hard = 0.2 + 0.2 * random.nextDouble();
                contrast = 0.12;
            }
            case "mars" -> {
                hard = 0.5 + 0.3 * random.nextDouble();
                contrast = 0.18;
            }
            case "mercury" -> {
                hard = 0.8;
                contrast = 0.12;
            }
            case "venus" -> {
                hard = 0.15;
                contrast = 0.04;
            }
            default -> {
                hard = 0.25;
                contrast = 0.05;
            }
        }
        for (int i = 0; i < phase.length; i++) {
            phase[i] = random.nextDouble() * 2 * Math.PI;
        }
        spots = new double[how.body().equals("jupiter") ? 7 : how.body().equals("mars") ? 12 : 4][];
        for (int i = 0; i < spots.length; i++) {
            spots[i] = new double[] {
                (random.nextDouble() - 0.5) * 2.6,
                (random.nextDouble() - 0.5) * 1.9,
                0.05 + (how.body().equals("mars") ? 0.3 : 0.08) * random.nextDouble(),
                contrast * (random.nextBoolean() ? 1.3 : -1.3)
            };
        }
    }

    /** Brightness of the point at (right, up) in equatorial radii, planetary east to the right. */
    double light(double right, double high) {
        double[] o = new double[3];
        for (int i = 0; i < 3; i++) {
            o[i] = high * up[i] + 9 * sight[i];
        }
        o[1] += right;
        double globe = hit(o, -sight[0], -sight[1], -sight[2]);
        if (ringed) {
            double ring = ringLight(o, globe);
            if (ring >= 0) {
                return ring;
            }
        }
        if (Double.isNaN(globe)) {
            return 0;
        }
        double[] p = {o[0] - globe * sight[0], o[1] - globe * sight[1], o[2] - globe * sight[2]};
        return surface(p);
    }

    /** Whether the globe is there, lit or not. */
    boolean covers(double right, double high) {
        double[] o = {high * up[0] + 9 * sight[0], right + 9 * sight[1], high * up[2] + 9 * sight[2]};
        return !Double.isNaN(hit(o, -sight[0], -sight[1], -sight[2]));
    }

    private double hit(double[] o, double dx, double dy, double dz) {
        double a = dx * dx + dy * dy + dz * dz / (q * q);
        double h = o[0] * dx + o[1] * dy + o[2] * dz / (q * q);
        double c = o[0] * o[0] + o[1] * o[1] + o[2] * o[2] / (q * q) - 1;
        double root = h * h - a * c;
        return root < 0 ? Double.NaN : (-h - Math.sqrt(root)) / a;
    }

    private double surface(double[] p) {
        double[] n = {p[0], p[1], p[2] / (q * q)};
        double length = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
        double mu0 = (n[0] * sun[0] + n[1] * sun[1] + n[2] * sun[2]) / length;
        double mu = (n[0] * sight[0] + n[1] * sight[1] + n[2] * sight[2]) / length;
        if (mu0 <= 0 || mu <= 0) {
            return 0;
        }
        double shade = 1;
        if (ringed && p[2] * sun[2] < 0) {
            double t = -p[2] / sun[2];
            double density = density(Math.hypot(p[0] + t * sun[0], p[1] + t * sun[1]));
            shade = 1 - 0.9 * density;
        }
        double law = hard * 2 * mu0 / (mu0 + mu) * (0.45 + 0.55 * mu) + (1 - hard) * mu0;
        return shade * law * albedo(p);
    }

    private double albedo(double[] p) {
        double lat = Math.atan2(p[2], Math.hypot(p[0], p[1]));
        double lon = Math.atan2(p[1], p[0]);
        double value = 1;
        if (how.body().equals("jupiter")
                || ringed
                || how.body().equals("neptune")
                || how.body().equals("uranus")) {
            double wavy = lat + 0.012 * Math.sin(7 * lon + phase[0]) + 0.01 * Math.sin(13 * lon + phase[1]);
            value += contrast
                    * (Math.sin(9 * wavy + phase[2])
                            + 0.6 * Math.sin(17 * wavy + phase[3])
                            + 0.3 * Math.sin(31 * lat + phase[4]));
            value += 0.3 * contrast * Math.sin(11 * lon + 25 * lat + phase[5]) * Math.exp(-lat * lat / 0.02);
        } else {
            value += contrast
                    * 0.5
                    * (Math.sin(2 * lon + phase[0]) * Math.cos(3 * lat + phase[1])
                            + Math.sin(5 * lon + 2 * lat + phase[2]));
        }
        for (double[] s : spots) {
            double d = Math.hypot((lon - s[0]) * Math.cos(s[1]), lat - s[1]) / s[2];
            value += s[3] / (1 + d * d * d * d);
        }
        return Math.max(0.15, value);
    }

    /** Brightness of the ring at a ray, or −1 where none is seen. */
    private double ringLight(double[] o, double globe) {
        if (Math.abs(sight[2]) < 1e-9) {
            return -1;
        }
        double t = o[2] / sight[2];
        double x = o[0] - t * sight[0];
        double y = o[1] - t * sight[1];
        double density = density(Math.hypot(x, y));
        if (density == 0 || !Double.isNaN(globe) && globe < t) {
            return -1;
        }
        boolean litSide = sight[2] * sun[2] > 0;
        double[] from = {x + 9 * sun[0], y + 9 * sun[1], 9 * sun[2]};
        double shadow = hit(from, -sun[0], -sun[1], -sun[2]);
        double ring = !Double.isNaN(shadow) && shadow < 9 ? 0 : litSide ? 0.95 * density : 0.15 * density;
        if (Double.isNaN(globe)) {
            return ring;
        }
        double[] p = {o[0] - globe * sight[0], o[1] - globe * sight[1], o[2] - globe * sight[2]};
        return ring + (1 - density) * surface(p);
    }

    /** Share of light a ring stops: the edges of the C, B and A rings and the division (radii of Saturn, common knowledge). */
    private double density(double r) {
        if (r < 1.239 || r > 2.27) {
            return 0;
        }
        if (r < 1.526) {
            return 0.12;
        }
        if (r < 1.95) {
            return 0.9 + 0.08 * Math.sin(40 * r + phase[6]);
        }
        return r < 2.025 ? 0.06 : 0.6;
    }
}
