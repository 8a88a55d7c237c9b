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
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/** The whole job through the command line, step by step on the ready-made night: filed, fitted, marked, reported, checked. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class NightJobTest {
    @TempDir
    static Path work;

    private final Map<String, String> numberOf = new HashMap<>();
    private String archive;

    private CommandRun run(String... words) {
        List<String> all = new ArrayList<>(List.of(words));
        all.addAll(List.of("--archive", archive, "--format", "csv"));
        return CommandRun.of(work.resolve("settings"), "", all.toArray(String[]::new));
    }

    @Test
    @Order(1)
    void everyPictureIsFiledAtItsTrueTime() throws IOException {
        archive = work.resolve("archive").toString();
        CommandRun run =
                run("file", Night.PICTURES.toString(), "--planet", "jupiter", "--observer", "test", "--kit", "kit a");
        assertThat(run.status()).as(run.err()).isZero();
        Map<String, String> times = new HashMap<>();
        run.rows().forEach(r -> times.put(r.get("file"), r.get("mid_time_utc")));
        run.rows().forEach(r -> numberOf.put(r.get("file"), r.get("picture")));
        List<CSVRecord> truth = Night.truth("pictures");
        assertThat(times).hasSameSizeAs(truth);
        for (CSVRecord t : truth) {
            assertThat(times.get(name(t))).as(name(t)).isEqualTo(t.get("mid_time_utc"));
        }
        CommandRun again = run("file", Night.PICTURES.toString(), "--planet", "jupiter");
        assertThat(again.err()).contains("0 filed, " + truth.size() + " already there, 0 refused.");
    }

    private static String name(CSVRecord truth) {
        return truth.get(truth.isMapped("file") ? "file" : "picture").replaceAll(".*/", "");
    }

    @Test
    @Order(2)
    void everyDiscIsFoundWhereItWasDrawn() throws IOException {
        CommandRun run = run("fit", "--mirrored", "no", "--pole-angle", "-10", "--pole-sigma", "6");
        assertThat(run.status()).as(run.err()).isZero();
        Map<String, CSVRecord> fits = new HashMap<>();
        run.rows().forEach(r -> fits.put(r.get("picture"), r));
        for (CSVRecord t : Night.truth("pictures")) {
            CSVRecord fit = fits.get(name(t));
            double radius = number(t, "re_px");
            double off = Math.hypot(
                    number(fit, "centre_x_px") - number(t, "cx"), number(fit, "centre_y_px") - number(t, "cy"));
            assertThat(off / radius).as(name(t) + " centre").isLessThan(0.005);
            assertThat(Math.abs(number(fit, "equatorial_radius_px") / radius - 1))
                    .as(name(t) + " radius")
                    .isLessThan(0.01);
            assertThat(Math.abs(number(fit, "pole_angle_deg") - number(t, "pole_angle_deg")))
                    .as(name(t) + " angle")
                    .isLessThan(1);
        }
    }

    @Test
    @Order(3)
    void marksComeOutAtTheirTrueLongitudes() throws IOException {
        StringBuilder clicks = new StringBuilder("picture,x_px,y_px,feature,kind\n");
        Map<String, CSVRecord> truth = new HashMap<>();
        for (CSVRecord m : Night.truth("marks")) {
            boolean onGlobe = !m.get("lon_sys3_deg").isEmpty();
            if (!onGlobe || number(m, "emission_deg") < 50) {
                clicks.append(String.join(
                        ",",
                        numberOf.get(name(m)),
                        m.get("x"),
                        m.get("y"),
                        m.get("feature"),
                        onGlobe ? "spot" : "moon"));
                clicks.append('\n');
                truth.put(name(m) + m.get("feature"), m);
            }
        }
        Path points = work.resolve("clicks.csv");
        Files.writeString(points, clicks.toString());
        CommandRun run = run("marks", "add", "--points", points.toString(), "--measurer", "test");
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.rows()).hasSameSizeAs(truth.keySet());
        int moons = 0;
        int spots = 0;
        for (CSVRecord mark : run.rows()) {
            CSVRecord t = truth.get(mark.get("picture") + mark.get("feature"));
            if (t.get("lon_sys3_deg").isEmpty()) {
                assertThat(mark.get("lon_sys3_deg")).isEmpty();
                assertThat(Math.abs(number(mark, "x_west_radii"))).isLessThan(30);
                moons++;
            } else {
                assertThat(Math.abs(Math.IEEEremainder(number(mark, "lon_sys2_deg") - number(t, "lon_sys2_deg"), 360)))
                        .as(mark.toString())
                        .isLessThan(0.8);
                assertThat(Math.abs(number(mark, "lat_graphic_deg") - number(t, "lat_graphic_deg")))
                        .as(mark.toString())
                        .isLessThan(0.8);
                assertThat(number(mark, "sigma_lon_deg")).isBetween(0.05, 1.0);
                spots++;
            }
        }
        assertThat(moons).isPositive();
        assertThat(spots).isGreaterThan(15);
    }

    @Test
    @Order(4)
    void theTableLeadsBackToThePictures() {
        CommandRun run = run("report", "positions", "--system", "2");
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.rows()).isNotEmpty().allSatisfy(row -> {
            assertThat(row.get("sha256")).matches("[0-9a-f]{64}");
            assertThat(row.get("mid_time_utc")).endsWith("Z");
            assertThat(number(row, "lon_deg")).isBetween(0.0, 360.0);
        });
    }

    @Test
    @Order(5)
    void supersededAndWithdrawnMarksStayReadable() {
        CSVRecord first = run("marks").rows().get(0);
        int all = run("marks").rows().size();
        double x = number(first, "x_px") + 1;
        CommandRun better = run(
                "marks",
                "supersede",
                first.get("mark"),
                "--at",
                x + "," + first.get("y_px"),
                "--reason",
                "second look");
        assertThat(better.status()).as(better.err()).isZero();
        assertThat(run("marks").rows()).hasSize(all);
        CommandRun gone = CommandRun.of(
                work,
                "",
                "marks",
                "withdraw",
                better.rows().get(0).get("mark"),
                "--archive",
                archive,
                "--reason",
                "a cosmic ray");
        assertThat(gone.status()).as(gone.err()).isZero();
        assertThat(run("marks").rows()).hasSize(all - 1);
        assertThat(run("marks", "--history").rows())
                .extracting(r -> r.get("state"))
                .contains("superseded by " + better.rows().get(0).get("mark"), "withdrawn: a cosmic ray");
        assertThat(run("history", "--limit", "1000").rows())
                .extracting(r -> r.get("action"))
                .contains("filed", "fitted", "marked", "superseded", "withdrawn");
    }

    @Test
    @Order(6)
    void theArchiveChecksClean() {
        CommandRun run = CommandRun.of(work, "", "check", "--archive", archive);
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out()).contains("clean");
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }
}
