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

    private final DiscFrame frame;
    private final double largestEmissionDeg;
    private final MapStrip map;
    private final ZonalMean mean;
    private final SpotCentre centre;

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
        Plane plane = Plane.of(pixels, pixels.measuringPlane());
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
        centre = new SpotCentre(plane, frame, map, mean);
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
        return centre.refine(xPx, yPx, radiusPx);
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
