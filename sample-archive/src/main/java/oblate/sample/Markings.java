package oblate.sample;

import java.util.List;

/** The features as one picture has them, painted over the clouds point by point. Immutable; safe for many threads. */
final class Markings {
    private static final double[] PALE = {0.93, 0.875, 0.77};
    private static final double[] DARK_RIM = {0.50, 0.41, 0.34};

    private final List<Feature> features;
    private final double[] eastDeg;
    private final CloudNoise swirl;

    /**
     * @param features what to paint
     * @param view the globe at the middle of the capture
     * @param day days after the season's epoch
     * @param seed of the fine swirls
     */
    Markings(List<Feature> features, GlobeView view, double day, long seed) {
        this.features = List.copyOf(features);
        eastDeg = new double[features.size()];
        for (int i = 0; i < eastDeg.length; i++) {
            Feature f = features.get(i);
            eastDeg[i] = view.cmDeg().get(f.systemIndex()) - f.lonAtDeg(day);
        }
        swirl = new CloudNoise(Dice.mix(seed + 9));
    }

    /** Paints over a tone (red, green, blue, 0…1) at a latitude (deg, planetographic) and an angle east of the central meridian (deg). */
    void paint(double latDeg, double east, float[] tone) {
        for (int i = 0; i < eastDeg.length; i++) {
            Feature f = features.get(i);
            double north = (latDeg - f.latGraphicDeg()) / f.semiLatDeg();
            if (Math.abs(north) > 5) {
                continue;
            }
            double away = east - eastDeg[i];
            away -= 360 * Math.rint(away / 360);
            double x = away / f.semiLonDeg();
            if (Math.abs(x) > 5) {
                continue;
            }
            switch (f.kind()) {
                case "red oval" -> redOval(f, x, north, tone);
                case "ring oval" -> ringOval(f, Math.hypot(x, north), tone);
                case "dark bar" -> cover(f, Math.pow(Math.pow(Math.abs(x), 2.6) + Math.pow(Math.abs(north), 2.2), 0.42), tone);
                case "dark projection" -> projection(f, away, latDeg, Math.hypot(x, north), tone);
                case "white oval" -> {
                    double r = Math.hypot(x, north);
                    blend(tone, DARK_RIM, 0.30 * ridge(r, 1.45, 0.38));
                    cover(f, r, tone);
                }
                default -> cover(f, Math.hypot(x, north), tone);
            }
        }
    }

    private static void cover(Feature f, double r, float[] tone) {
        blend(tone, f.look(), f.look().strength() * inside(r, 1, 0.55));
    }

    private void redOval(Feature f, double x, double north, float[] tone) {
        double r = Math.hypot(x, north);
        // A pale hollow round it, open toward the equator, bites into the belt.
        blend(tone, PALE, 0.9 * inside(r, north > 0 ? 1.55 : 1.32, 0.30));
        double turn = Math.atan2(north, x) * 1.6 + r * 4;
        double grain = swirl.clouds(Math.toDegrees(turn), r * 20, 40, 7, 3, 0.6);
        double share = f.look().strength() * inside(r, 1, 0.22);
        blend(tone, f.look(), share);
        float depth = (float) (share * (0.10 * grain - 0.10 * inside(r, 0.42, 0.35) - 0.10 * ridge(r, 0.92, 0.16)));
        for (int i = 0; i < tone.length; i++) {
            tone[i] *= 1 + depth;
        }
    }

    private static void ringOval(Feature f, double r, float[] tone) {
        blend(tone, DARK_RIM, 0.62 * ridge(r, 1.12, 0.30));
        blend(tone, f.look(), f.look().strength() * inside(r, 0.85, 0.35));
    }

    private static void projection(Feature f, double away, double latDeg, double r, float[] tone) {
        double depth = f.latGraphicDeg() - latDeg;
        if (depth > 0 && depth < 6) {
            double off = away + 1.9 * depth;
            double width = 1.1 + 0.12 * depth;
            double share = 0.34 * Math.exp(-off * off / (2 * width * width)) * (1 - depth / 6);
            blend(tone, f.look(), share);
        }
        cover(f, r, tone);
    }

    /** 1 inside, 0 outside, falling over {@code soft} about an edge. */
    private static double inside(double r, double edge, double soft) {
        double t = Math.max(0, Math.min(1, (edge - r) / soft + 0.5));
        return t * t * (3 - 2 * t);
    }

    private static double ridge(double r, double at, double width) {
        double t = (r - at) / width;
        return Math.exp(-t * t);
    }

    private static void blend(float[] tone, Feature.Look look, double share) {
        tone[0] += (float) (share * (look.red() - tone[0]));
        tone[1] += (float) (share * (look.green() - tone[1]));
        tone[2] += (float) (share * (look.blue() - tone[2]));
    }

    private static void blend(float[] tone, double[] colour, double share) {
        for (int i = 0; i < colour.length; i++) {
            tone[i] += (float) (share * (colour[i] - tone[i]));
        }
    }
}
