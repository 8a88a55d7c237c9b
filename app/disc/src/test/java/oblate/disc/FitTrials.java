/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.ServiceLoader;
import oblate.base.Progress;
import oblate.image.ImageFormat;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;
import oblate.sky.LongitudeSense;
import oblate.sky.Spheroid;

/**
 * Fits a folder of pictures with known truth and prints the errors. Not a test: run its main with the folder and, after it, words that must be in
 * a picture's name, "nohint" for planet and time alone.
 */
final class FitTrials {

    private FitTrials() {}

    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args[0]);
        boolean hints = true;
        List<String> words = new ArrayList<>();
        for (int i = 1; i < args.length; i++) {
            if (args[i].equals("nohint")) {
                hints = false;
            } else {
                words.add(args[i]);
            }
        }
        Random random = new Random(5);
        List<double[]> errors = new ArrayList<>();
        for (Map<String, String> row : rows(folder.resolve("truth.csv"))) {
            double off = 12 * random.nextDouble() - 6;
            if (!words.isEmpty() && words.stream().noneMatch(row.get("file")::contains)) {
                continue;
            }
            double[] error = trial(folder, row, hints, off);
            if (error.length > 0) {
                errors.add(error);
            }
        }
        summary(errors);
    }

    private static void summary(List<double[]> errors) {
        String[] names = {"centre %", "|radius| %", "|pole| deg", "seconds"};
        System.out.printf("%d fitted%n", errors.size());
        for (int k = 0; k < names.length; k++) {
            int column = k;
            double[] v = errors.stream().mapToDouble(e -> e[column]).sorted().toArray();
            System.out.printf(
                    Locale.ROOT,
                    "%-11s median %.3f  90th %.3f  worst %.3f%n",
                    names[k],
                    v[v.length / 2],
                    v[(int) (0.9 * (v.length - 1) + 0.5)],
                    v[v.length - 1]);
        }
        System.out.printf(
                Locale.ROOT,
                "mean radius bias %.3f %%%n",
                errors.stream().mapToDouble(e -> e[4]).average().orElse(0));
        String[] kinds = {"x", "y", "radius", "pole"};
        for (int k = 0; k < kinds.length; k++) {
            int column = 5 + k;
            long one = errors.stream().filter(e -> Math.abs(e[column]) < 1).count();
            long two = errors.stream().filter(e -> Math.abs(e[column]) < 2).count();
            System.out.printf("%-7s inside one sigma %d, two %d of %d%n", kinds[k], one, two, errors.size());
        }
    }

    private static double[] trial(Path folder, Map<String, String> row, boolean hints, double off) throws IOException {
        PixelGrid pixels = read(folder.resolve(row.get("file")));
        ApparentDisc disc = disc(row);
        double truePole = num(row, "pole_angle_deg");
        boolean mirrored = row.get("mirrored").equals("1");
        long start = System.nanoTime();
        FitOutcome outcome = new DiscFitter()
                .fit(pixels, disc, hints ? FitHints.of(truePole + off, 6, mirrored) : FitHints.none(), Progress.SILENT);
        double seconds = (System.nanoTime() - start) * 1e-9;
        String name = String.format(Locale.ROOT, "%-10.10s %-6s", row.get("file"), row.get("difficulty"));
        if (outcome instanceof FitOutcome.Refused refused) {
            System.out.printf("%s REFUSED %.1fs %s%n", name, seconds, refused.reason());
            return new double[0];
        }
        DiscFit fit = ((FitOutcome.Fitted) outcome).fit();
        Placement p = fit.placement();
        double re = num(row, "re_px");
        double dx = p.centreXPx() - num(row, "cx");
        double dy = p.centreYPx() - num(row, "cy");
        double dr = p.equatorialRadiusPx() - re;
        double da = Math.IEEEremainder(p.poleAngleDeg() - truePole, 360);
        PlacementCovariance c = fit.covariance();
        System.out.printf(
                Locale.ROOT,
                "%s R %5.1f | dx %6.3f (%4.1f) dy %6.3f (%4.1f) c%% %.3f | dr%% %6.3f (%4.1f) | da %6.3f (%4.1f) | sig %.3f %.3f %.3f %.3f | %s %.1fs m%b %s%n",
                name,
                re,
                dx,
                dx / Math.sqrt(c.get(0, 0)),
                dy,
                dy / Math.sqrt(c.get(1, 1)),
                100 * Math.hypot(dx, dy) / re,
                100 * dr / re,
                dr / c.sigmaRadiusPx(),
                da,
                da / c.sigmaPoleAngleDeg(),
                Math.sqrt(c.get(0, 0)),
                Math.sqrt(c.get(1, 1)),
                c.sigmaRadiusPx(),
                c.sigmaPoleAngleDeg(),
                fit.trust(),
                seconds,
                p.mirrored() == mirrored,
                fit.reasons());
        return new double[] {
            100 * Math.hypot(dx, dy) / re,
            Math.abs(100 * dr / re),
            Math.abs(da),
            seconds,
            100 * dr / re,
            dx / Math.sqrt(c.get(0, 0)),
            dy / Math.sqrt(c.get(1, 1)),
            dr / c.sigmaRadiusPx(),
            da / c.sigmaPoleAngleDeg()
        };
    }

    static List<Map<String, String>> rows(Path csv) throws IOException {
        List<String> lines = Files.readAllLines(csv);
        String[] head = lines.get(0).split(",");
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < head.length && i < cells.length; i++) {
                row.put(head[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    static double num(Map<String, String> row, String key) {
        return Double.parseDouble(row.get(key));
    }

    static ApparentDisc disc(Map<String, String> row) {
        LongitudeSense sense = row.get("lon_positive").equals("west") ? LongitudeSense.WEST : LongitudeSense.EAST;
        TestDiscs.Planet planet = TestDiscs.planet(row.get("body"), num(row, "polar_ratio"), sense, 870.536);
        Spheroid figure = planet.globe().figure();
        return TestDiscs.disc(
                planet,
                num(row, "cm_main"),
                num(row, "sub_obs_lat_centric"),
                num(row, "sub_sun_lon_main"),
                figure.centricFromGraphicDeg(num(row, "sub_sun_lat_graphic")));
    }

    /** Decodes with whatever picture formats are on the class path. */
    static PixelGrid read(Path path) {
        List<ImageFormat> formats = ServiceLoader.load(ImageFormat.class).stream()
                .map(ServiceLoader.Provider::get)
                .toList();
        return new PictureReader(formats, PictureLimits.usual()).decode(path).pixels();
    }
}
