/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import oblate.disc.FitHints;
import oblate.disc.Placement;
import oblate.image.ImageFormat;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/**
 * Fits a folder of picture files with known truth and says how far off the fits are. By hand: main with a truth.csv (features.csv beside it counts, if
 * there) and, after it, words that must be in a file's name or be its planet's. Needs the picture formats on the class path.
 */
final class PictureScore {
    private static final double FROM_MERIDIAN_DEG = 50;
    /** Moons stand above the globe; these rows' longitudes are not those of the pixel. */
    private static final Set<String> NOT_ON_THE_GLOBE = Set.of("moon", "moon in transit", "moon shadow");

    private final Sky sky = Sky.bundled();
    private final Map<String, PlanetModel> planets = new TreeMap<>();
    private final PictureReader reader = new PictureReader(
            ServiceLoader.load(ImageFormat.class).stream()
                    .map(ServiceLoader.Provider::get)
                    .toList(),
            PictureLimits.usual());

    private PictureScore() {
        for (PlanetModel planet : ServiceLoader.load(PlanetModel.class)) {
            planets.put(planet.id(), planet);
        }
    }

    private static List<Map<String, String>> rows(Path csv) throws IOException {
        List<Map<String, String>> rows = new ArrayList<>();
        String[] head = null;
        for (String line : Files.readAllLines(csv)) {
            String[] cells = line.split(",", -1);
            if (line.startsWith("#") || line.isBlank()) {
                continue;
            }
            if (head == null) {
                head = cells;
                continue;
            }
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < Math.min(head.length, cells.length); i++) {
                row.put(head[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    private static double number(Map<String, String> row, String key) {
        return Double.parseDouble(row.get(key));
    }

    private static Map<String, List<Trial.Mark>> marks(Path csv, Map<String, Double> meridians) throws IOException {
        Map<String, List<Trial.Mark>> marks = new HashMap<>();
        if (!Files.exists(csv)) {
            return marks;
        }
        for (Map<String, String> row : rows(csv)) {
            String file = row.get("file");
            if (row.get("lon_main").isEmpty()
                    || NOT_ON_THE_GLOBE.contains(row.get("kind"))
                    || !meridians.containsKey(file)) {
                continue;
            }
            double lon = number(row, "lon_main");
            if (Math.abs(Math.IEEEremainder(lon - meridians.get(file), 360)) <= FROM_MERIDIAN_DEG) {
                marks.computeIfAbsent(file, k -> new ArrayList<>())
                        .add(new Trial.Mark(number(row, "x"), number(row, "y"), lon));
            }
        }
        return marks;
    }

    private Trial trial(Path folder, Map<String, String> row, List<Trial.Mark> marks) {
        return new Trial(
                row.get("file"),
                row.get("body"),
                row.get("difficulty"),
                reader.decode(folder.resolve(row.get("file"))).pixels(),
                sky.disc(planets.get(row.get("body")), Instant.parse(row.get("mid_time_utc"))),
                new Placement(
                        number(row, "cx"),
                        number(row, "cy"),
                        number(row, "re_px"),
                        number(row, "pole_angle_deg"),
                        row.get("mirrored").equals("1")),
                marks);
    }

    private static boolean wanted(Map<String, String> row, List<String> words) {
        return words.isEmpty()
                || words.stream()
                        .anyMatch(w ->
                                row.get("file").contains(w) || row.get("body").equals(w));
    }

    @SuppressWarnings("SystemOut") // a report run by hand
    public static void main(String[] args) throws IOException {
        Path csv = Path.of(args[0]);
        Path folder = csv.toAbsolutePath().getParent();
        List<String> words = List.of(args).subList(1, args.length);
        List<Map<String, String>> rows =
                rows(csv).stream().filter(row -> wanted(row, words)).toList();
        Map<String, Double> meridians = new HashMap<>();
        rows.forEach(row -> meridians.put(row.get("file"), number(row, "cm_main")));
        Map<String, List<Trial.Mark>> marks = marks(folder.resolve("features.csv"), meridians);
        PictureScore score = new PictureScore();
        PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        for (boolean hinted : new boolean[] {true, false}) {
            List<Trial.Scored> scored = IntStream.range(0, rows.size())
                    .parallel()
                    .mapToObj(i -> {
                        String file = rows.get(i).get("file");
                        Trial trial = score.trial(folder, rows.get(i), marks.getOrDefault(file, List.of()));
                        Random random = new Random(file.hashCode());
                        return trial.score(hinted ? trial.hints(random) : FitHints.none(), random);
                    })
                    .toList();
            ScoreSheet.print(hinted ? "with hints" : "planet and time alone", scored, out);
        }
    }
}
