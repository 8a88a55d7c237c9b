/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Point;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.swing.AbstractButton;
import javax.swing.JLabel;
import javax.tools.ToolProvider;
import oblate.command.Services;
import oblate.workbench.testing.Hand;
import oblate.workbench.testing.OnScreen;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The sample plug-in as the tutorial builds it: compiled against the program's modules, put into a settings folder, used in the window. */
@Tag("window")
@ExtendWith(OnScreen.class)
@Timeout(value = 150, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class SamplePlugInTest {
    private static final Path SAMPLE = Path.of("../../sample-plug-in");
    private static final Path PAGE = Path.of("../../docs/write-a-plug-in.md");
    private static final Path PICTURES = Path.of("target/pictures");

    @TempDir
    Path work;

    @Test
    void thePanelAndTheToolAreUsed() throws IOException {
        Path settings = work.resolve("settings");
        writeJar(settings.resolve("plugins/meridian-profile.jar"));
        Path archive = work.resolve("archive");
        CommandRun filed =
                run(settings, "file", onePicture().toString(), "--planet", "jupiter", "--archive", archive.toString());
        assertThat(filed.status()).as(filed.err()).isZero();
        CommandRun listed = run(settings, "plugins", "--format", "csv");
        assertThat(listed.out())
                .contains("panel,brightness-profile,Profile,meridian-profile.jar")
                .contains("measuring tool,surface-distance,Distance,meridian-profile.jar");
        CommandRun off = run(settings, "plugins", "--off", "meridian-profile.jar", "--format", "csv");
        assertThat(off.out())
                .contains("switched off,", "was switched off by hand")
                .doesNotContain("panel,brightness-profile");
        assertThat(run(settings, "plugins", "--on", "meridian-profile.jar", "--format", "csv")
                        .out())
                .contains("panel,brightness-profile")
                .doesNotContain("switched off,");
        assertThat(run(settings, "plugins", "--on", "other.jar").err())
                .contains("there is no other.jar", "meridian-profile.jar");
        CommandRun fitted = run(settings, "fit", "1", "--archive", archive.toString());
        assertThat(fitted.status()).as(fitted.err()).isZero();

        try (Hand hand = new Hand();
                Services services = new Services(settings, Clock.systemUTC(), words -> {});
                OpenWindow window = new OpenWindow(services.workbenchOn(services.openArchive(archive)))) {
            use(window, hand);
        }
    }

    private void use(OpenWindow window, Hand hand) throws IOException {
        OpenWindow.act(() -> window.workbench().frame().setBounds(0, 0, 1400, 900));
        OpenWindow.await("the archive is read", () -> window.workbench().shelf().isRead());
        OpenWindow.act(() -> window.workbench().showPanel("brightness-profile"));
        OpenWindow.await(
                "the profile is worked out", () -> window.find("profile.copy").isEnabled());
        window.settle();
        window.save(PICTURES.resolve("sample-plug-in.png"));

        OpenWindow.act(() -> window.workbench().openPicture(1));
        OpenWindow.await("the tool hangs on the desk", () -> OpenWindow.find(
                        window.workbench().frame().getRootPane(), "tool.surface-distance")
                .isPresent());
        window.settle();
        AbstractButton tool = (AbstractButton) window.find("tool.surface-distance");
        OpenWindow.act(tool::doClick);
        Component canvas = window.find("canvas");
        int x = canvas.getWidth() / 2;
        int y = canvas.getHeight() / 2;
        hand.click(canvas, new Point(x - 60, y - 40));
        OpenWindow.await("the second place is asked for", () -> result(window).contains("second place"));
        hand.click(canvas, new Point(x + 70, y + 50));
        OpenWindow.await("the distance is told", () -> result(window)
                .matches("[1-9]\\d* ± \\d+ km, \\d+\\.\\d+° ± 0?\\.?\\d+ of great circle"));
        window.save(PICTURES.resolve("distance.png"));
        assertThat(OpenWindow.ask(() -> window.workbench().plugins().faults())).isEmpty();
        assertThat(OpenWindow.ask(() -> window.workbench().plugins().refusals()))
                .isEmpty();
    }

    private static String result(OpenWindow window) {
        return ((JLabel) window.find("tool.result")).getText();
    }

    @Test
    void thePageShowsTheSourceThatIsCompiled() throws IOException {
        String page = Files.readString(PAGE);
        for (String name : List.of("ProfilePanel", "DistanceTool")) {
            String source = Files.readString(SAMPLE.resolve("src/main/java/example/meridian/" + name + ".java"));
            String body = source.substring(source.indexOf("public final class")).strip();
            String shown = body.contains("    /** The tool while")
                    ? body.substring(0, body.indexOf("    /** The tool while")).strip()
                    : body;
            assertThat(page).as(name).contains(shown);
        }
        for (String service : List.of("oblate.workbench.WorkbenchPanel", "oblate.workbench.MeasureTool")) {
            assertThat(page)
                    .contains(Files.readString(SAMPLE.resolve("src/main/resources/META-INF/services/" + service))
                            .strip());
        }
    }

    private static CommandRun run(Path settings, String... words) {
        return CommandRun.of(settings, "", words);
    }

    private static Path onePicture() throws IOException {
        return Night.pictures().stream()
                .filter(p -> p.toString().endsWith(".png"))
                .findFirst()
                .orElseThrow();
    }

    /** Compiles against the modules alone, as the sample's own build does: not against tests, nor against anything the modules do not bring. */
    private void writeJar(Path jar) throws IOException {
        Path classes = Files.createDirectories(work.resolve("classes"));
        String path = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(p -> !p.contains("test-classes") && !p.endsWith("-tests.jar"))
                .collect(Collectors.joining(File.pathSeparator));
        List<String> words =
                new ArrayList<>(List.of("-proc:none", "-Xlint:all", "-Werror", "-cp", path, "-d", classes.toString()));
        try (Stream<Path> sources = Files.walk(SAMPLE.resolve("src/main/java"))) {
            sources.filter(p -> p.toString().endsWith(".java")).forEach(p -> words.add(p.toString()));
        }
        assertThat(ToolProvider.getSystemJavaCompiler().run(null, null, null, words.toArray(String[]::new)))
                .isZero();
        Files.createDirectories(jar.getParent());
        try (OutputStream out = Files.newOutputStream(jar);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Path root : List.of(classes, SAMPLE.resolve("src/main/resources"))) {
                try (Stream<Path> files = Files.walk(root)) {
                    for (Path file : files.filter(Files::isRegularFile).toList()) {
                        zip.putNextEntry(
                                new ZipEntry(root.relativize(file).toString().replace('\\', '/')));
                        zip.write(Files.readAllBytes(file));
                        zip.closeEntry();
                    }
                }
            }
        }
    }
}
