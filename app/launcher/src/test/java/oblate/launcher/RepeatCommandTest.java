/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The blind repeat through the command line: marks of one picture, marked again with a known error, whose size comes back and is then used. */
class RepeatCommandTest {
    private static final double PICK_PX = 0.8;

    @TempDir
    Path work;

    private CommandRun run(String... words) {
        List<String> all = new ArrayList<>(List.of(words));
        all.addAll(List.of("--archive", work.resolve("archive").toString(), "--format", "csv"));
        return CommandRun.of(work.resolve("settings"), "", all.toArray(String[]::new));
    }

    private String point(int i, double x, double y) {
        return "1,spot " + i + ",centre," + x + "," + y + ",spot\n";
    }

    @Test
    void thePersonalPickErrorIsFoundAndUsed() throws IOException {
        String picture = Night.pictures().stream()
                .map(Path::toString)
                .filter(n -> n.endsWith(".png"))
                .findFirst()
                .orElseThrow();
        assertThat(run("file", picture, "--planet", "jupiter").status()).isZero();
        CommandRun fit = run("fit", "--mirrored", "no", "--pole-angle", "-10", "--pole-sigma", "6");
        assertThat(fit.status()).as(fit.err()).isZero();
        double x = Double.parseDouble(fit.rows().get(0).get("centre_x_px"));
        double y = Double.parseDouble(fit.rows().get(0).get("centre_y_px"));
        double r = Double.parseDouble(fit.rows().get(0).get("equatorial_radius_px"));
        Random random = new Random(9);
        StringBuilder first = new StringBuilder("picture,feature,what,x_px,y_px,kind\n");
        Map<String, double[]> truth = new HashMap<>();
        for (int i = 0; i < 16; i++) {
            double[] at = {x + 0.6 * r * (random.nextDouble() - 0.5), y + 0.6 * r * (random.nextDouble() - 0.5)};
            truth.put("spot " + i, at);
            first.append(point(i, at[0] + PICK_PX * random.nextGaussian(), at[1] + PICK_PX * random.nextGaussian()));
        }
        Path points = work.resolve("first.csv");
        Files.writeString(points, first);
        CommandRun added = run("marks", "add", "--points", points.toString(), "--measurer", "anna");
        assertThat(added.status()).as(added.err()).isZero();
        double before = Double.parseDouble(added.rows().get(0).get("sigma_lat_deg"));

        CommandRun blind = run("marks", "blind", "--measurer", "anna", "--count", "16");
        assertThat(blind.rows()).hasSize(16);
        assertThat(blind.out()).doesNotContain(String.format("%.2f", truth.get("spot 0")[0]));
        StringBuilder again = new StringBuilder("picture,feature,what,x_px,y_px\n");
        for (CSVRecord row : blind.rows()) {
            double[] at = truth.get(row.get("feature"));
            again.append(String.join(",", row.get("picture"), row.get("feature"), row.get("what")))
                    .append(",")
                    .append(at[0] + PICK_PX * random.nextGaussian())
                    .append(",")
                    .append(at[1] + PICK_PX * random.nextGaussian())
                    .append("\n");
        }
        Path second = work.resolve("second.csv");
        Files.writeString(second, again);
        CommandRun repeat = run("marks", "repeat", "--points", second.toString(), "--measurer", "anna");
        assertThat(repeat.status()).as(repeat.err()).isZero();
        assertThat(repeat.err()).contains("Kept");
        double sigma = Double.parseDouble(repeat.err().replaceAll("(?s).*anna: ([0-9.]+) \\+-.*", "$1"));
        assertThat(sigma).isBetween(0.55, 1.1);

        Files.writeString(points, "picture,feature,what,x_px,y_px,kind\n" + point(99, x, y));
        CommandRun later = run("marks", "add", "--points", points.toString(), "--measurer", "anna");
        CommandRun other = run("marks", "add", "--points", points.toString(), "--measurer", "otto");
        double own = Double.parseDouble(later.rows().get(0).get("sigma_lat_deg"));
        double usual = Double.parseDouble(other.rows().get(0).get("sigma_lat_deg"));
        assertThat(own / usual).isBetween(0.9 * sigma / 0.5 * 0.8, 1.1 * sigma / 0.5);
        assertThat(before).isPositive();
    }
}
