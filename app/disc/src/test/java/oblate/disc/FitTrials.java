package oblate.disc;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import javax.imageio.ImageIO;
import oblate.base.Progress;
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
        for (Map<String, String> row : rows(folder.resolve("truth.csv"))) {
            double off = 12 * random.nextDouble() - 6;
            if (!words.isEmpty() && words.stream().noneMatch(row.get("file")::contains)) {
                continue;
            }
            trial(folder, row, hints, off);
        }
    }

    private static void trial(Path folder, Map<String, String> row, boolean hints, double off) throws IOException {
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
            return;
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

    static PixelGrid read(Path path) throws IOException {
        if (path.toString().endsWith(".fits")) {
            return readFits(path);
        }
        BufferedImage image = ImageIO.read(path.toFile());
        Raster raster = image.getRaster();
        int w = raster.getWidth();
        int h = raster.getHeight();
        int bands = raster.getNumBands() >= 3 ? 3 : 1;
        float white = (1 << image.getColorModel().getComponentSize(0)) - 1;
        boolean bgr = image.getType() == BufferedImage.TYPE_CUSTOM;
        List<float[]> planes = new ArrayList<>();
        for (int b = 0; b < bands; b++) {
            float[] plane = raster.getSamples(0, 0, w, h, b, (float[]) null);
            for (int i = 0; i < plane.length; i++) {
                plane[i] /= white;
            }
            planes.add(plane);
        }
        return new PixelGrid(w, h, planes, 0, bgr ? 1 : 1);
    }

    private static PixelGrid readFits(Path path) throws IOException {
        byte[] bytes = Files.readAllBytes(path);
        Map<String, String> cards = new HashMap<>();
        int at = 0;
        while (!cards.containsKey("END")) {
            String card = new String(bytes, at, 80, java.nio.charset.StandardCharsets.US_ASCII);
            String[] parts = card.substring(8).replace("=", " ").split("/", 2);
            cards.put(card.substring(0, 8).trim(), parts[0].trim());
            at += 80;
        }
        at = (at + 2879) / 2880 * 2880;
        int w = Integer.parseInt(cards.get("NAXIS1"));
        int h = Integer.parseInt(cards.get("NAXIS2"));
        ByteBuffer buffer = ByteBuffer.wrap(bytes, at, w * h * 2);
        float[] plane = new float[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                plane[(h - 1 - y) * w + x] = (buffer.getShort() + 32768) / 65535f;
            }
        }
        return new PixelGrid(w, h, List.of(plane), 0, 1);
    }
}
