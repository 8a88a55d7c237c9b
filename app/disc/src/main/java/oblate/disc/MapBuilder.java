/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import oblate.base.Progress;
import oblate.image.PixelGrid;
import oblate.sky.RotationSystem;

/**
 * Draws maps from pictures whose discs are placed. Each picture is laid out at its own instant, so that the planet's turning between them is taken out in
 * the map's system; where several show a place, the one that looks down on it more steeply, under a higher Sun, counts more, without a seam. Stateless.
 */
public final class MapBuilder {
    /** Fewer shared pixels than this do not tell how two pictures' brightnesses compare. */
    private static final int LEAST_OVERLAP = 100;

    private static final double OVERLAP_WEIGHT = 0.01;

    /**
     * A placed picture.
     *
     * @param name what to call it
     * @param pixels its pixels
     * @param frame its disc
     */
    public record Source(String name, PixelGrid pixels, DiscFrame frame) {}

    /**
     * How to draw.
     *
     * @param largestEmissionDeg beyond this angle from the vertical nothing is taken (deg, 10…89)
     * @param flatten whether the darkening towards limb and terminator is taken out
     */
    public record Manner(double largestEmissionDeg, boolean flatten) {

        /** Checks the range. */
        public Manner {
            if (!(largestEmissionDeg >= 10 && largestEmissionDeg <= 89)) {
                throw new IllegalArgumentException("emission " + largestEmissionDeg);
            }
        }
    }

    /**
     * Draws a map.
     *
     * @param frame the sheet
     * @param sources pictures of its planet, at least one, all grey or all colour; a mixture is drawn grey, from each one's measuring channel
     * @param manner how
     * @param progress told of each picture; cancelling ends with those done
     */
    public PlanetMap draw(MapFrame frame, List<Source> sources, Manner manner, Progress progress) {
        boolean colour = sources.stream().allMatch(s -> s.pixels().channels() == 3);
        Sheet sheet = new Sheet(frame.widthPx() * frame.heightPx(), colour ? 3 : 1);
        List<Layer> layers = new ArrayList<>();
        int done = 0;
        for (Source source : sources) {
            if (progress.isCancelled()) {
                break;
            }
            layers.add(add(sheet, frame, source, manner));
            progress.report(++done, sources.size(), source.name());
        }
        return finished(frame, sheet, layers);
    }

    private record Layer(Source source, double gain, double weight, int pixels, LimbLaw law) {}

    /** What has been laid down so far: weighted sums and weights. */
    private static final class Sheet {
        final double[][] sum;
        final double[] weight;

        Sheet(int size, int channels) {
            sum = new double[channels][size];
            weight = new double[size];
        }

        int measuring() {
            return sum.length == 3 ? 1 : 0;
        }
    }

    private static Layer add(Sheet sheet, MapFrame frame, Source source, Manner manner) {
        PixelGrid pixels = source.pixels();
        Plane measured = new Plane(pixels.widthPx(), pixels.heightPx(), pixels.measuringPlane());
        LimbLaw law = manner.flatten() ? LimbLaw.of(measured, pixels.low(), source.frame()) : LimbLaw.NONE;
        int channels = sheet.sum.length;
        Plane[] planes = new Plane[channels];
        for (int c = 0; c < channels; c++) {
            planes[c] = channels == 1 ? measured : new Plane(pixels.widthPx(), pixels.heightPx(), pixels.plane(c));
        }
        float[][] value = new float[channels][sheet.weight.length];
        float[] weight = new float[sheet.weight.length];
        lay(frame, source, manner, law, planes, value, weight);
        double gain = gain(sheet, value[sheet.measuring()], weight);
        double total = 0;
        int n = 0;
        for (int i = 0; i < weight.length; i++) {
            if (weight[i] > 0) {
                for (int c = 0; c < channels; c++) {
                    sheet.sum[c][i] += gain * weight[i] * value[c][i];
                }
                sheet.weight[i] += weight[i];
                total += weight[i];
                n++;
            }
        }
        return new Layer(source, gain, total, n, law);
    }

    @SuppressWarnings("checkstyle:ParameterNumber") // the picture's parts and the arrays that are filled
    private static void lay(
            MapFrame frame,
            Source source,
            Manner manner,
            LimbLaw law,
            Plane[] planes,
            float[][] value,
            float[] weight) {
        RotationSystem iau = frame.planet().globe().iauSystem();
        double shift = source.frame().disc().convertLonDeg(0, frame.system(), iau);
        MapSight sight = new MapSight(source.frame(), manner.largestEmissionDeg());
        double least = Math.cos(Math.toRadians(manner.largestEmissionDeg()));
        double black = source.pixels().low();
        double[] at = new double[2];
        for (int row = 0; row < frame.heightPx(); row++) {
            for (int column = 0; column < frame.widthPx(); column++) {
                if (!frame.projection().globe(frame.x(column), frame.y(row), at)) {
                    continue;
                }
                double lon = frame.middleLonDeg() + frame.eastSign() * at[0] + shift;
                if (!sight.look(lon, frame.graphicDeg(at[1]))) {
                    continue;
                }
                int i = row * frame.widthPx() + column;
                double factor = law.factor(sight.lit, sight.seen);
                boolean known = true;
                for (int c = 0; c < planes.length; c++) {
                    double v = planes[c].smooth(sight.xPx, sight.yPx);
                    value[c][i] = (float) ((v - black) / factor);
                    known &= !Double.isNaN(v);
                }
                if (known) {
                    double low = least * MapSight.LIT_SHARE;
                    double t = Math.min((sight.seen - least) / (1 - least), (sight.lit - low) / (1 - low));
                    double rise = t * t * (3 - 2 * t);
                    weight[i] = (float) Math.max(1e-6, rise * rise);
                }
            }
        }
    }

    /** The median ratio of what is there to what is new, where both count. */
    private static double gain(Sheet sheet, float[] value, float[] weight) {
        double[] ratio = new double[weight.length];
        int n = 0;
        for (int i = 0; i < weight.length; i++) {
            if (weight[i] > OVERLAP_WEIGHT && sheet.weight[i] > OVERLAP_WEIGHT && value[i] > 0) {
                double there = sheet.sum[sheet.measuring()][i] / sheet.weight[i];
                if (there > 0) {
                    ratio[n++] = there / value[i];
                }
            }
        }
        if (n < LEAST_OVERLAP) {
            return 1;
        }
        Arrays.sort(ratio, 0, n);
        return ratio[n / 2];
    }

    private static PlanetMap finished(MapFrame frame, Sheet sheet, List<Layer> layers) {
        int size = sheet.weight.length;
        List<float[]> planes = new ArrayList<>();
        for (double[] sum : sheet.sum) {
            float[] plane = new float[size];
            for (int i = 0; i < size; i++) {
                plane[i] = sheet.weight[i] > 0 ? (float) (sum[i] / sheet.weight[i]) : Float.NaN;
            }
            planes.add(plane);
        }
        double all = layers.stream().mapToDouble(Layer::weight).sum();
        List<PlanetMap.Contribution> contributions = new ArrayList<>();
        for (Layer layer : layers) {
            DiscFrame disc = layer.source().frame();
            contributions.add(new PlanetMap.Contribution(
                    layer.source().name(),
                    disc.disc().time().toInstant(),
                    disc.disc().centralMeridianDeg(frame.system()),
                    (double) layer.pixels() / size,
                    all > 0 ? layer.weight() / all : 0,
                    layer.gain(),
                    layer.law()));
        }
        return new PlanetMap(frame, planes, contributions);
    }
}
