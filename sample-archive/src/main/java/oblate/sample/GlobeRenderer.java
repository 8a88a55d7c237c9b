package oblate.sample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Draws the sharp, noiseless scene: globe with phase and limb darkening, features, moons and shadows; three planes of brightness, 1 = a bright zone in full light.
 * Immutable; safe for many threads.
 */
final class GlobeRenderer {
    /** Exponent k of brightness ∝ (cos incidence)^k (cos emission)^(k−1) in red, green and blue. */
    private static final double[] LIMB_DARKENING = {0.97, 0.95, 0.92};

    private static final double DEG_PER_SECOND = 870.27 / 86400;
    private static final int EDGE_SAMPLES = 6;
    private static final double EDGE_MARGIN_PX = 1.6;
    private static final double GRAZING = 0.03;
    /** Places within a capture whose mean is the smear of the globe's turning. */
    private static final double[] SMEAR = {-1.0 / 3, 0, 1.0 / 3};

    private final CloudMap clouds;

    GlobeRenderer(CloudMap clouds) {
        this.clouds = clouds;
    }

    /**
     * What to draw.
     *
     * @param view the globe at the middle of the capture
     * @param markings its features then
     * @param day days after the season's epoch
     * @param captureS length of the capture (s)
     * @param moons moons in and about the frame
     */
    record Scene(GlobeView view, Markings markings, double day, double captureS, List<MoonSpot> moons) {
        Scene {
            moons = List.copyOf(moons);
        }
    }

    /** Planes red, green, blue of {@code width × height} numbers, row by row from the top as displayed. */
    float[][] draw(Scene scene, CameraFrame frame, int width, int height) {
        float[][] planes = new float[CloudMap.CHANNELS][width * height];
        Painter painter = new Painter(scene, frame);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                painter.pixel(x, y);
                for (int c = 0; c < CloudMap.CHANNELS; c++) {
                    planes[c][y * width + x] = painter.sum[c];
                }
            }
        }
        for (MoonSpot moon : scene.moons()) {
            if (moon.lit()) {
                painter.moon(moon, planes, width, height);
            }
        }
        return planes;
    }

    private final class Painter {
        private final Scene scene;
        private final CameraFrame frame;
        private final Ray ray;
        private final double[] shifts;
        private final double ex;
        private final double ey;
        private final double px;
        private final double py;
        private final double outline;
        private final List<double[]> shadows = new ArrayList<>();
        private final float[] tone = new float[CloudMap.CHANNELS];
        private final float[] spot = new float[CloudMap.CHANNELS];
        private final float[] sum = new float[CloudMap.CHANNELS];

        Painter(Scene scene, CameraFrame frame) {
            this.scene = scene;
            this.frame = frame;
            ray = new Ray(scene.view());
            shifts = clouds.shifts(scene.view(), scene.day());
            double re2 = frame.rePx() * frame.rePx();
            ex = frame.eastPx()[0] / re2;
            ey = frame.eastPx()[1] / re2;
            px = frame.polePx()[0] / re2;
            py = frame.polePx()[1] / re2;
            outline = scene.view().outlineRatio();
            for (MoonSpot moon : scene.moons()) {
                moon.shadow().ifPresent(s -> shadow(moon, s));
            }
        }

        private void shadow(MoonSpot moon, MoonSpot.ShadowSpot s) {
            if (ray.cast(s.x(), s.y())) {
                shadows.add(new double[] {ray.e, ray.q, ray.p, moon.radius(), s.penumbra()});
            }
        }

        /** Brightness of one pixel into {@link #sum}. */
        void pixel(int column, int row) {
            Arrays.fill(sum, 0);
            double dx = column - frame.cxPx();
            double dy = row - frame.cyPx();
            double distance = Math.hypot(dx * ex + dy * ey, (dx * px + dy * py) / outline);
            double margin = EDGE_MARGIN_PX / frame.rePx();
            if (distance > 1 + margin) {
                return;
            }
            if (distance < 1 - margin) {
                add(dx, dy, 1);
                return;
            }
            float share = 1f / (EDGE_SAMPLES * EDGE_SAMPLES);
            for (int i = 0; i < EDGE_SAMPLES; i++) {
                for (int j = 0; j < EDGE_SAMPLES; j++) {
                    add(dx + (i + 0.5) / EDGE_SAMPLES - 0.5, dy + (j + 0.5) / EDGE_SAMPLES - 0.5, share);
                }
            }
        }

        private void add(double dx, double dy, float weight) {
            if (!ray.cast(dx * ex + dy * ey, dx * px + dy * py) || ray.mu0 <= 0) {
                return;
            }
            Arrays.fill(tone, 0);
            for (double part : SMEAR) {
                double east = ray.eastDeg - part * scene.captureS() * DEG_PER_SECOND;
                Arrays.fill(spot, 0);
                clouds.add(ray.latGraphicDeg, east, shifts, 1, spot);
                scene.markings().paint(ray.latGraphicDeg, east, spot);
                for (int c = 0; c < tone.length; c++) {
                    tone[c] += spot[c] / SMEAR.length;
                }
            }
            double logMu0 = Math.log(ray.mu0);
            double logMu = Math.log(Math.max(GRAZING, ray.mu));
            double light = weight * sunlight();
            for (int c = 0; c < tone.length; c++) {
                double k = LIMB_DARKENING[c];
                sum[c] += (float) (light * tone[c] * Math.exp(k * logMu0 + (k - 1) * logMu));
            }
        }

        /** Share of sunlight that the moons leave. */
        private double sunlight() {
            double light = 1;
            GlobeView view = scene.view();
            for (double[] s : shadows) {
                double de = ray.e - s[0];
                double dq = ray.q - s[1];
                double dp = ray.p - s[2];
                double along = de * view.sunE() + dq * view.sunQ() + dp * view.sunP();
                double away = Math.sqrt(Math.max(0, de * de + dq * dq + dp * dp - along * along));
                light *= Math.max(0, Math.min(1, (away - s[3]) / (2 * s[4]) + 0.5));
            }
            return light;
        }

        void moon(MoonSpot moon, float[][] planes, int width, int height) {
            double mx = frame.xPx(moon.x(), moon.y());
            double my = frame.yPx(moon.x(), moon.y());
            double radius = moon.radius() * frame.rePx();
            int reach = (int) Math.ceil(radius) + 1;
            for (int y = Math.max(0, (int) my - reach); y <= Math.min(height - 1, (int) my + reach + 1); y++) {
                for (int x = Math.max(0, (int) mx - reach); x <= Math.min(width - 1, (int) mx + reach + 1); x++) {
                    moonPixel(moon, x - mx, y - my, radius, planes, y * width + x);
                }
            }
        }

        private void moonPixel(MoonSpot moon, double dx, double dy, double radius, float[][] planes, int at) {
            double covered = 0;
            double light = 0;
            for (int i = 0; i < EDGE_SAMPLES; i++) {
                for (int j = 0; j < EDGE_SAMPLES; j++) {
                    double sx = dx + (i + 0.5) / EDGE_SAMPLES - 0.5;
                    double sy = dy + (j + 0.5) / EDGE_SAMPLES - 0.5;
                    double r2 = (sx * sx + sy * sy) / (radius * radius);
                    double gx = moon.x() + (sx * ex + sy * ey);
                    double gy = moon.y() + (sx * px + sy * py);
                    if (r2 < 1 && (moon.z() > 0 || !ray.cast(gx, gy))) {
                        covered += 1;
                        light += Math.pow(1 - r2, 0.18);
                    }
                }
            }
            double samples = EDGE_SAMPLES * EDGE_SAMPLES;
            double[] tint = moon.tint();
            for (int c = 0; c < planes.length; c++) {
                planes[c][at] = (float) (planes[c][at] * (1 - covered / samples) + 0.8 * tint[c] * light / samples);
            }
        }
    }
}
