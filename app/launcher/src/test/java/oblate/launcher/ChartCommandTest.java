/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

class ChartCommandTest {
    private static final Instant START = Instant.parse("2031-01-01T00:00:00Z");

    @TempDir
    Path work;

    private Path marks() throws IOException {
        StringBuilder text = new StringBuilder("time_utc,feature,lon_deg,lat_deg,sigma_deg\n");
        for (int day = 0; day < 60; day += 5) {
            text.append(String.format(
                    Locale.ROOT,
                    "%s,white oval,%.2f,-33,0.5%n",
                    START.plusSeconds(day * 86_400L),
                    (370 - 0.4 * day) % 360));
        }
        Path file = work.resolve("marks.csv");
        Files.writeString(file, text);
        return file;
    }

    private CommandRun chart(Path marks, Path out, String... more) {
        List<String> words = new ArrayList<>(
                List.of("chart", marks.toString(), "--planet", "jupiter", "--system", "2", "--out", out.toString()));
        words.addAll(List.of(more));
        return CommandRun.of(work.resolve("settings"), "", words.toArray(String[]::new));
    }

    private static List<String> texts(Path svg) throws IOException, ParserConfigurationException, SAXException {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
        factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
        factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        NodeList nodes = factory.newDocumentBuilder().parse(svg.toFile()).getElementsByTagName("text");
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            texts.add(nodes.item(i).getTextContent().strip());
        }
        return texts;
    }

    @Test
    void aPngHasTheSizeAskedFor() throws IOException {
        Path out = work.resolve("drift.png");
        CommandRun run = chart(
                marks(),
                out,
                "--width",
                "640",
                "--height",
                "480",
                "--scale",
                "2",
                "--theme",
                "dark",
                "--predict",
                "2031-04-01T00:00:00Z");
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        BufferedImage image = ImageIO.read(out.toFile());
        assertThat(image.getWidth()).isEqualTo(1280);
        assertThat(image.getHeight()).isEqualTo(960);
        assertThat(image.getRGB(2, 2) & 0xFFFFFF).isLessThan(0x404040);
    }

    @Test
    void anSvgKeepsItsWordsAndComesOutTheSameAgain() throws Exception {
        Path out = work.resolve("drift.svg");
        assertThat(chart(marks(), out).status()).isZero();
        assertThat(texts(out)).contains("white oval", "Date, UTC", "Longitude, System II");
        Path again = work.resolve("again.svg");
        assertThat(chart(marks(), again).status()).isZero();
        assertThat(again).hasSameBinaryContentAs(out);
    }

    @Test
    void chartsAreDrawnUnderADisplayThatIsNotThere() throws IOException, InterruptedException {
        Path out = work.resolve("far.png");
        Path words = work.resolve("words.txt");
        ProcessBuilder far = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "oblate.launcher.Main",
                "chart",
                marks().toString(),
                "--planet",
                "jupiter",
                "--system",
                "2",
                "--out",
                out.toString());
        far.environment().put("DISPLAY", ":799");
        far.environment().put("OBLATE_SETTINGS", work.resolve("settings").toString());
        far.redirectErrorStream(true).redirectOutput(words.toFile());
        assertThat(far.start().waitFor()).as(Files.readString(words)).isZero();
        assertThat(ImageIO.read(out.toFile()).getWidth()).isEqualTo(1000);
    }

    @Test
    void aHostileNameSpoilsNeitherTheSvgNorTheChart() throws Exception {
        Path marks = marks();
        String name = "a\u0001<b>&" + "x".repeat(400);
        Files.writeString(marks, Files.readString(marks).replace("white oval", name));
        for (String kind : List.of("longitude", "latitude", "residuals", "speed")) {
            Path out = work.resolve(kind + ".svg");
            CommandRun run = chart(marks, out, "--kind", kind);
            assertThat(run.status()).as(run.err()).isZero();
            assertThat(texts(out)).anyMatch(t -> t.startsWith("a\uFFFD<b>&xxx") && t.contains("…"));
        }
    }

    @Test
    void latitudesAndResidualsAreDrawnWithTimeEitherWay() throws Exception {
        Path lats = work.resolve("lats.svg");
        assertThat(chart(marks(), lats, "--kind", "latitude", "--time-axis", "down")
                        .status())
                .isZero();
        assertThat(texts(lats))
                .contains("Planetographic latitude", "Date, UTC")
                .anyMatch(t -> t.startsWith("white oval  −33"));
        Path rest = work.resolve("rest.svg");
        assertThat(chart(marks(), rest, "--kind", "residuals").status()).isZero();
        assertThat(texts(rest))
                .contains("O − C")
                .anyMatch(t -> t.startsWith("white oval: constant rate, scatter 0.00°, 12 marks"));
        Path right = work.resolve("right.svg");
        assertThat(chart(marks(), right, "--time-axis", "right", "--gap-days", "3")
                        .status())
                .isZero();
        assertThat(texts(right)).contains("Dotted: no mark for more than 3 days.");
        assertThat(chart(marks(), right, "--kind", "speed", "--time-axis", "right")
                        .status())
                .isEqualTo(2);
        assertThat(chart(marks(), right, "--gap-days", "0").err()).contains("--gap-days");
        assertThat(chart(marks(), right, "--kind", "ladder").err()).contains("--archive DIR");
    }

    @Test
    void speedsStandAgainstLatitudeBesideAPublishedProfile() throws Exception {
        Path out = work.resolve("speeds.svg");
        assertThat(chart(marks(), out, "--kind", "speed").status()).isZero();
        assertThat(texts(out))
                .contains("white oval", "Planetographic latitude, °")
                .anyMatch(t -> t.startsWith("Speed relative to System III, m/s"))
                .anyMatch(t -> t.contains("Icarus 296"));
    }

    @Test
    void whatCannotBeDrawnIsToldInOneSentence() throws IOException {
        Path marks = marks();
        CommandRun ending = chart(marks, work.resolve("drift.gif"));
        assertThat(ending.status()).isEqualTo(2);
        assertThat(ending.err()).contains(".png or .svg");
        CommandRun kind = chart(marks, work.resolve("a.png"), "--kind", "pie");
        assertThat(kind.status()).isEqualTo(2);
        assertThat(kind.err()).contains("longitude, latitude, residuals, speed");
        CommandRun size = chart(marks, work.resolve("a.png"), "--width", "99999");
        assertThat(size.status()).isEqualTo(2);
        assertThat(size.err()).contains("200 to 10000");
        CommandRun missing = chart(work.resolve("none.csv"), work.resolve("a.png"));
        assertThat(missing.status()).isEqualTo(1);
        assertThat(missing.sentences()).hasSize(1);
        CommandRun nobody = chart(marks, work.resolve("a.png"), "--feature", "nobody");
        assertThat(nobody.status()).isEqualTo(1);
        CommandRun folder = chart(marks, work.resolve("no/such/folder.png"));
        assertThat(folder.status()).isEqualTo(1);
        assertThat(folder.err()).contains("cannot be written");
        assertThat(work.resolve("a.png")).doesNotExist();
    }
}
