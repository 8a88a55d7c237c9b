package oblate.sample;

/** Smooth random fields on a globe, seamless in longitude: gradient noise in three dimensions, sampled on a cylinder. Immutable. */
final class CloudNoise {
    private final byte[] lattice = new byte[512];

    CloudNoise(long seed) {
        Dice dice = new Dice(seed);
        int[] order = new int[256];
        for (int i = 0; i < 256; i++) {
            order[i] = i;
        }
        for (int i = 255; i > 0; i--) {
            int j = dice.whole(0, i);
            int keep = order[i];
            order[i] = order[j];
            order[j] = keep;
        }
        for (int i = 0; i < 512; i++) {
            lattice[i] = (byte) order[i & 255];
        }
    }

    /**
     * Field of one grain, about −1…1.
     *
     * @param lonDeg longitude (deg)
     * @param latDeg latitude (deg)
     * @param lonGrainDeg size of a cloud along the parallel (deg)
     * @param latGrainDeg size of a cloud along the meridian (deg)
     */
    double field(double lonDeg, double latDeg, double lonGrainDeg, double latGrainDeg) {
        double radius = 180 / Math.PI / lonGrainDeg;
        double lon = Math.toRadians(lonDeg);
        return at(radius * Math.cos(lon) + 131.7, radius * Math.sin(lon) + 57.3, latDeg / latGrainDeg + 211.1);
    }

    /** Several grains on top of each other, each half the size and weaker by {@code fall}; about −1…1. */
    double clouds(double lonDeg, double latDeg, double lonGrainDeg, double latGrainDeg, int octaves, double fall) {
        double sum = 0;
        double weight = 1;
        double total = 0;
        double scale = 1;
        double cos = Math.cos(Math.toRadians(lonDeg));
        double sin = Math.sin(Math.toRadians(lonDeg));
        for (int i = 0; i < octaves; i++) {
            double radius = 180 / Math.PI / (lonGrainDeg * scale);
            double lift = 31.7 * i;
            sum += weight * at(radius * cos + 131.7 + lift, radius * sin + 57.3 - lift, latDeg / (latGrainDeg * scale) + 211.1 + lift);
            total += weight * weight;
            weight *= fall;
            scale *= 0.5;
        }
        return sum / Math.sqrt(total) * 1.5;
    }

    private double at(double x, double y, double z) {
        double fx = Math.floor(x);
        double fy = Math.floor(y);
        double fz = Math.floor(z);
        int ix = (int) fx & 255;
        int iy = (int) fy & 255;
        int iz = (int) fz & 255;
        double dx = x - fx;
        double dy = y - fy;
        double dz = z - fz;
        double u = fade(dx);
        double v = fade(dy);
        double w = fade(dz);
        int a = corner(corner(ix) + iy);
        int b = corner(corner(ix + 1) + iy);
        int c = corner(corner(ix) + iy + 1);
        int d = corner(corner(ix + 1) + iy + 1);
        double low = mixed(
                mixed(slope(corner(a + iz), dx, dy, dz), slope(corner(b + iz), dx - 1, dy, dz), u),
                mixed(slope(corner(c + iz), dx, dy - 1, dz), slope(corner(d + iz), dx - 1, dy - 1, dz), u),
                v);
        double high = mixed(
                mixed(slope(corner(a + iz + 1), dx, dy, dz - 1), slope(corner(b + iz + 1), dx - 1, dy, dz - 1), u),
                mixed(slope(corner(c + iz + 1), dx, dy - 1, dz - 1), slope(corner(d + iz + 1), dx - 1, dy - 1, dz - 1), u),
                v);
        return mixed(low, high, w);
    }

    private int corner(int index) {
        return lattice[index & 511] & 255;
    }

    private static double fade(double t) {
        return t * t * t * (t * (t * 6 - 15) + 10);
    }

    private static double mixed(double a, double b, double t) {
        return a + t * (b - a);
    }

    /** Scalar product with one of the twelve edge directions of a cube. */
    private static double slope(int hash, double x, double y, double z) {
        int h = hash & 15;
        double u = h < 8 ? x : y;
        double v = h < 4 ? y : h == 12 || h == 14 ? x : z;
        return ((h & 1) == 0 ? u : -u) + ((h & 2) == 0 ? v : -v);
    }
}
