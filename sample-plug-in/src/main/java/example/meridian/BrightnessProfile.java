/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.image.PixelGrid;

/**
 * How bright a picture is along a line on the globe, averaged across it. As the picture has it: limb darkening and sharpening are in it. Immutable.
 *
 * @param points in order of the angle
 */
public record BrightnessProfile(List<Point> points) {
    private static final double STEP_DEG = 1;
    private static final double HALF_WIDTH_DEG = 3;
    private static final double SIDE_STEP_DEG = 0.5;
    private static final double LARGEST_EMISSION_DEG = 75;
    private static final int FEWEST_PIXELS = 2;

    /** Copies the list. */
    public BrightnessProfile {
        points = List.copyOf(points);
    }

    /**
     * One point.
     *
     * @param angleDeg latitude (planetographic), or longitude from the central meridian (west positive where the planet counts so) (deg)
     * @param brightness mean over the pixels across the line, 0 black … 1 white
     * @param sigma its standard error, from how the pixels scatter
     */
    public record Point(double angleDeg, double brightness, double sigma) {}

    /** Along the central meridian, against planetographic latitude. */
    public static BrightnessProfile alongMeridian(PixelGrid pixels, DiscFrame frame) {
        double middle = frame.disc().subEarth().iauLonDeg();
        List<Point> points = new ArrayList<>();
        for (double lat = -89; lat <= 89; lat += STEP_DEG) {
            List<PixelPoint> across = new ArrayList<>();
            for (double side = -HALF_WIDTH_DEG; side <= HALF_WIDTH_DEG; side += SIDE_STEP_DEG) {
                add(frame, middle + side, lat, across);
            }
            addMean(pixels, across, lat, points);
        }
        return new BrightnessProfile(points);
    }

    /** Along the equator, against longitude from the central meridian. */
    public static BrightnessProfile alongEquator(PixelGrid pixels, DiscFrame frame) {
        double middle = frame.disc().subEarth().iauLonDeg();
        List<Point> points = new ArrayList<>();
        for (double east = -89; east <= 89; east += STEP_DEG) {
            List<PixelPoint> across = new ArrayList<>();
            for (double side = -HALF_WIDTH_DEG; side <= HALF_WIDTH_DEG; side += SIDE_STEP_DEG) {
                add(frame, middle + east, side, across);
            }
            addMean(pixels, across, east, points);
        }
        return new BrightnessProfile(points);
    }

    private static void add(DiscFrame frame, double lonIauDeg, double latGraphicDeg, List<PixelPoint> across) {
        frame.place(lonIauDeg, latGraphicDeg)
                .filter(p -> frame.locate(p.xPx(), p.yPx())
                        .filter(s -> s.emissionDeg() <= LARGEST_EMISSION_DEG)
                        .isPresent())
                .ifPresent(across::add);
    }

    /** The mean of the different pixels that the places fall on: a pixel met twice tells nothing new. */
    private static void addMean(PixelGrid pixels, List<PixelPoint> across, double angleDeg, List<Point> points) {
        Set<Integer> met = new HashSet<>();
        double sum = 0;
        double squares = 0;
        for (PixelPoint p : across) {
            int x = (int) Math.round(p.xPx());
            int y = (int) Math.round(p.yPx());
            boolean inside = x >= 0 && y >= 0 && x < pixels.widthPx() && y < pixels.heightPx();
            if (inside && met.add(y * pixels.widthPx() + x)) {
                double value = pixels.measuringPlane()[y * pixels.widthPx() + x];
                if (Double.isNaN(value)) {
                    met.remove(y * pixels.widthPx() + x);
                } else {
                    double shown = (value - pixels.low()) / Math.max(1e-12, pixels.high() - pixels.low());
                    sum += shown;
                    squares += shown * shown;
                }
            }
        }
        int n = met.size();
        if (n >= FEWEST_PIXELS) {
            double mean = sum / n;
            double variance = Math.max(0, (squares - n * mean * mean) / (n - 1));
            points.add(new Point(angleDeg, mean, Math.sqrt(variance / n)));
        }
    }
}
