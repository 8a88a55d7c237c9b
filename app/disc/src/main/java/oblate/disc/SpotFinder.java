/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import oblate.image.PixelGrid;

/**
 * Measuring help: finds spots and ovals that stand out from their latitude's mean, and sharpens a click to the centre of the spot under it. Immutable
 * after it is made, safe for many threads.
 */
public final class SpotFinder {
    private static final double LARGEST_LAT_DEG = 75;
    private static final double LARGEST_EAST_DEG = 75;
    /** Half heights looked for (deg of latitude). */
    private static final double[] SCALES_DEG = {0.8, 1.2, 1.8, 2.7, 4};
    /** Spots in belts and zones are longer than high. */
    private static final double LENGTH = 1.5;

    private static final double SURROUND = 1.7;
    private static final double LEAST_SIGMA_PX = 0.1;
    private static final double PEAK_SHARE = 0.3;
    /** Neighbouring pixels of a finished picture err together over about this many. */
    private static final double CORRELATION_PX = 2.5;

    private final Plane plane;
    private final DiscFrame frame;
    private final double largestEmissionDeg;
    private final MapStrip map;
    private final ZonalMean mean;

    /**
     * A click made sharp.
     *
     * @param pixel centre of the spot
     * @param sigmaPx its standard error in each direction (px)
     * @param bright whether it is brighter than its surroundings
     */
    public record Refined(PixelPoint pixel, double sigmaPx, boolean bright) {}

    /**
     * @param pixels the picture; green of a colour one is used
     * @param frame where its disc lies
     * @param largestEmissionDeg emission angle beyond which nothing is looked for (deg)
     */
    public SpotFinder(PixelGrid pixels, DiscFrame frame, double largestEmissionDeg) {
        plane = Plane.of(pixels, pixels.measuringPlane());
        this.frame = frame;
        this.largestEmissionDeg = largestEmissionDeg;
        double pixelDeg = Math.toDegrees(1 / frame.placement().equatorialRadiusPx());
        double cell = Math.max(0.3, Math.min(1.5, 0.8 * pixelDeg));
        map = MapStrip.of(
                plane,
                frame,
                new MapStrip.Extent(
                        -LARGEST_LAT_DEG,
                        LARGEST_LAT_DEG,
                        LARGEST_EAST_DEG,
                        cell,
                        Math.min(80, largestEmissionDeg + 5)));
        mean = new ZonalMean(map);
    }

    /** Difference of a pixel from its latitude's mean; NaN off the disc. */
    private double residual(double x, double y) {
        Optional<SurfacePoint> place = frame.locate(x, y);
        if (place.isEmpty()) {
            return Double.NaN;
        }
        double east = place.get().fromMeridianDeg() * frame.view().eastSign;
        return plane.sample(x, y) - mean.at(east, map.rowOf(place.get().latGraphicDeg()));
    }

    /**
     * The centre of the bright or dark spot nearest to a click: the centroid of what stands out from the latitude's mean and from a ring round it.
     *
     * @param xPx the click, right (px)
     * @param yPx the click, down (px)
     * @param radiusPx how large the spot is, about (px); also how far its centre may be from the click
     * @return empty when nothing stands out there
     */
    public Optional<Refined> refine(double xPx, double yPx, double radiusPx) {
        double r = Math.max(1.5, radiusPx);
        double x = xPx;
        double y = yPx;
        double[] ring = ring(x, y, r);
        double sum = 0;
        double weight = 0;
        for (double[] s : inside(x, y, r)) {
            double w = Math.exp(-2 * s[3] * s[3] / (r * r));
            sum += w * (s[2] - ring[0]);
            weight += w;
        }
        if (weight == 0 || !(Math.abs(sum / weight) > 0.5 * ring[1])) {
            return Optional.empty();
        }
        int sign = sum > 0 ? 1 : -1;
        double sigma = Double.NaN;
        for (int round = 0; round < 12; round++) {
            double[] c = centroid(x, y, r, sign, ring);
            if (c.length == 0 || Math.hypot(c[0] - xPx, c[1] - yPx) > r + 1) {
                return Optional.empty();
            }
            double moved = Math.hypot(c[0] - x, c[1] - y);
            x = c[0];
            y = c[1];
            sigma = c[2];
            ring = ring(x, y, r);
            if (moved < 0.01) {
                break;
            }
        }
        return Optional.of(new Refined(new PixelPoint(x, y), Math.hypot(sigma, LEAST_SIGMA_PX), sign > 0));
    }

    /** Pixels within a radius: x, y, residual, distance. */
    private List<double[]> inside(double cx, double cy, double r) {
        List<double[]> list = new ArrayList<>();
        for (int y = (int) Math.ceil(cy - r); y <= cy + r; y++) {
            for (int x = (int) Math.ceil(cx - r); x <= cx + r; x++) {
                double d = Math.hypot(x - cx, y - cy);
                double v = d <= r ? residual(x, y) : Double.NaN;
                if (!Double.isNaN(v)) {
                    list.add(new double[] {x, y, v, d});
                }
            }
        }
        return list;
    }

    /** Median and scatter of the residual in the ring outside a spot. */
    private double[] ring(double cx, double cy, double r) {
        double[] values = inside(cx, cy, SURROUND * r).stream()
                .filter(s -> s[3] > r)
                .mapToDouble(s -> s[2])
                .sorted()
                .toArray();
        if (values.length < 5) {
            return new double[] {0, 1e-3};
        }
        double median = values[values.length / 2];
        double scatter =
                Math.max(1e-3, (values[(int) (0.84 * values.length)] - values[(int) (0.16 * values.length)]) / 2);
        return new double[] {median, scatter};
    }

    private double[] centroid(double cx, double cy, double r, int sign, double[] ring) {
        List<double[]> pixels = inside(cx, cy, 1.2 * r);
        double peak = 0;
        for (double[] s : pixels) {
            peak = Math.max(peak, sign * (s[2] - ring[0]) * Math.exp(-s[3] * s[3] / (r * r)));
        }
        double sx = 0;
        double sy = 0;
        double sum = 0;
        double spread = 0;
        for (double[] s : pixels) {
            double window = Math.exp(-s[3] * s[3] / (r * r));
            double excess = sign * (s[2] - ring[0]) - PEAK_SHARE * peak;
            if (excess > 0) {
                double w = excess * window;
                sx += w * s[0];
                sy += w * s[1];
                sum += w;
                spread += window * window * s[3] * s[3] / 2;
            }
        }
        if (sum <= 0) {
            return new double[0];
        }
        double noise = Math.min(ring[1], 0.5 * peak);
        return new double[] {sx / sum, sy / sum, CORRELATION_PX * noise * Math.sqrt(spread) / sum};
    }

    /**
     * Spots and ovals that stand out, the most significant first.
     *
     * @param leastSemiLatDeg smallest half height looked for (deg of latitude); what is smaller than the picture resolves is never found
     * @param leastSignificance how far they must stand out (standard deviations), 4 is sensible
     */
    public List<Spot> find(double leastSemiLatDeg, double leastSignificance) {
        int columns = map.columns();
        int n = columns * map.rows();
        float[] difference = new float[n];
        float[] known = new float[n];
        for (int i = 0; i < n; i++) {
            double m = mean.at(map.eastDeg(i % columns), i / columns);
            double v = map.value(i % columns, i / columns);
            if (!Double.isNaN(m - v) && m > 0.02) {
                difference[i] = (float) (v / m - 1);
                known[i] = 1;
            }
        }
        double resolved = 1.2 * Math.toDegrees(1 / frame.placement().equatorialRadiusPx());
        List<Candidate> all = new ArrayList<>();
        for (double scale : SCALES_DEG) {
            if (scale >= Math.max(resolved, leastSemiLatDeg) * 0.99) {
                all.addAll(candidates(difference, known, scale, leastSignificance));
            }
        }
        all.sort(Comparator.comparingDouble((Candidate c) -> -c.significance));
        List<Candidate> kept = new ArrayList<>();
        List<Spot> spots = new ArrayList<>();
        for (Candidate c : all) {
            if (kept.stream().noneMatch(k -> k.covers(c, map.cellDeg()))) {
                kept.add(c);
                spot(c).ifPresent(spots::add);
            }
        }
        return spots;
    }

    private record Candidate(int column, int row, double scaleDeg, double contrast, double significance) {
        boolean covers(Candidate other, double cellDeg) {
            double size = scaleDeg + other.scaleDeg;
            double dx = (column - other.column) * cellDeg / LENGTH;
            double dy = (row - other.row) * cellDeg;
            return Math.hypot(dx, dy) < 1.2 * size;
        }
    }

    /** Extremes of a narrow minus a wide mean, over cells that are all known. */
    private List<Candidate> candidates(float[] difference, float[] known, double scaleDeg, double leastSignificance) {
        int columns = map.columns();
        int rows = map.rows();
        GaussianBlur blur = new GaussianBlur(columns, rows);
        double s = 0.7 * scaleDeg / map.cellDeg();
        float[] narrow = smooth(blur, difference, known, s);
        float[] wide = smooth(blur, difference, known, 2 * s);
        float[] d = new float[narrow.length];
        float[] size = new float[narrow.length];
        int n = 0;
        for (int i = 0; i < d.length; i++) {
            d[i] = known[i] > 0 ? narrow[i] - wide[i] : Float.NaN;
            if (known[i] > 0) {
                size[n++] = Math.abs(d[i]);
            }
        }
        List<Candidate> found = new ArrayList<>();
        if (n < 50) {
            return found;
        }
        Arrays.sort(size, 0, n);
        double sigma = Math.max(1e-4, 1.4826 * size[n / 2]);
        for (int row = 1; row < rows - 1; row++) {
            for (int column = 1; column < columns - 1; column++) {
                int i = row * columns + column;
                if (Math.abs(d[i]) > leastSignificance * sigma && extreme(d, i, columns)) {
                    found.add(new Candidate(column, row, scaleDeg, d[i], Math.abs(d[i]) / sigma));
                }
            }
        }
        return found;
    }

    private static float[] smooth(GaussianBlur blur, float[] values, float[] known, double s) {
        float[] sum = new float[values.length];
        float[] weight = new float[values.length];
        blur.blur(values, sum, LENGTH * s, s);
        blur.blur(known, weight, LENGTH * s, s);
        for (int i = 0; i < sum.length; i++) {
            sum[i] = weight[i] > 0.2f ? sum[i] / weight[i] : 0;
        }
        return sum;
    }

    private static boolean extreme(float[] d, int i, int columns) {
        float sign = Math.signum(d[i]);
        for (int dy = -columns; dy <= columns; dy += columns) {
            for (int dx = -1; dx <= 1; dx++) {
                float v = d[i + dy + dx];
                if (Float.isNaN(v) || (dx != 0 || dy != 0) && sign * v > sign * d[i]) {
                    return false;
                }
            }
        }
        return true;
    }

    private Optional<Spot> spot(Candidate c) {
        double lon = map.lonIauDeg(c.column());
        double lat = map.latGraphicDeg(c.row());
        if (frame.emissionDeg(lon, lat) > largestEmissionDeg) {
            return Optional.empty();
        }
        PixelPoint start = frame.place(lon, lat).orElseThrow();
        double radiusPx = Math.toRadians(c.scaleDeg() * 1.3) * frame.placement().equatorialRadiusPx();
        Optional<Refined> refined = refine(start.xPx(), start.yPx(), radiusPx);
        boolean bright = c.contrast() > 0;
        PixelPoint pixel =
                refined.filter(f -> f.bright() == bright).map(Refined::pixel).orElse(start);
        double sigma =
                refined.filter(f -> f.bright() == bright).map(Refined::sigmaPx).orElse(radiusPx / 2);
        return frame.locate(pixel.xPx(), pixel.yPx())
                .filter(p -> p.emissionDeg() <= largestEmissionDeg)
                .map(p -> new Spot(
                        p, pixel, bright, c.scaleDeg() * LENGTH, c.scaleDeg(), c.contrast(), c.significance(), sigma));
    }
}
