/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.GraphicsEnvironment;
import java.awt.Point;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;
import javax.swing.AbstractButton;
import javax.swing.JLabel;
import javax.swing.SwingUtilities;
import javax.tools.ToolProvider;
import oblate.archive.Archive;
import oblate.command.Services;
import oblate.disc.MoonWitness;
import oblate.image.ImageFormat;
import oblate.workbench.Workbench;
import oblate.workbench.WorkbenchContext;
import org.assertj.swing.core.BasicRobot;
import org.assertj.swing.core.Robot;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The sample plug-in as the tutorial builds it: compiled against the program's modules, put into a settings folder, used in the window. */
@Tag("window")
@Timeout(value = 150, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class SamplePlugInTest {
    private static final Path SAMPLE = Path.of("../../sample-plug-in");
    private static final Path PAGE = Path.of("../../docs/write-a-plug-in.md");
    private static final Duration PATIENCE = Duration.ofSeconds(40);

    @TempDir
    Path work;

    @Test
    void thePanelAndTheToolAreUsed() throws IOException {
        // Asked first: the command line does without a display for good where none has been asked for.
        assertThat(GraphicsEnvironment.isHeadless())
                .as("needs a display: run under xvfb-run, or leave it out with -DexcludedTags=window")
                .isFalse();
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

        Robot robot = BasicRobot.robotWithCurrentAwtHierarchy();
        try (Services services = new Services(settings, Clock.systemUTC(), words -> {})) {
            Workbench window = Workbench.open(context(services, archive));
            try {
                use(window, robot);
            } finally {
                window.close();
            }
        } finally {
            robot.cleanUpWithoutDisposingWindows();
        }
    }

    private void use(Workbench window, Robot robot) throws IOException {
        ask(() -> {
            window.frame().setBounds(0, 0, 1400, 900);
            return window;
        });
        await("the archive is read", () -> window.shelf().isRead());
        ask(() -> {
            window.showPanel("brightness-profile");
            return window;
        });
        await("the profile is worked out", () -> button(window, "profile.copy").isEnabled());
        await("nothing is under way", () -> window.background().isIdle());
        save(window, "sample-plug-in.png");

        ask(() -> {
            window.openPicture(1);
            return window;
        });
        await("the tool hangs on the desk", () -> find(window, "tool.surface-distance")
                .isPresent());
        await("the picture is open", () -> window.background().isIdle());
        ask(() -> {
            button(window, "tool.surface-distance").doClick();
            return window;
        });
        Component canvas = ask(() -> find(window, "canvas").orElseThrow());
        int x = canvas.getWidth() / 2;
        int y = canvas.getHeight() / 2;
        robot.click(canvas, new Point(x - 60, y - 40));
        await("the second place is asked for", () -> result(window).contains("second place"));
        robot.click(canvas, new Point(x + 70, y + 50));
        await("the distance is told", () -> result(window)
                .matches("[1-9]\\d* ± \\d+ km, \\d+\\.\\d+° ± 0?\\.?\\d+ of great circle"));
        save(window, "distance.png");
        assertThat(ask(() -> window.plugins().faults())).isEmpty();
        assertThat(ask(() -> window.plugins().refusals())).isEmpty();
    }

    private static String result(Workbench window) {
        return ((JLabel) find(window, "tool.result").orElseThrow()).getText();
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

    private static WorkbenchContext context(Services services, Path folder) {
        Archive archive = services.openArchive(folder);
        return new WorkbenchContext(
                archive,
                services.sky(),
                services.planets(),
                services.plugins().load(ImageFormat.class),
                services.reader(),
                new MoonWitness(services.sky()),
                services.filing(archive),
                services.reportFormats(),
                services.plugins(),
                services.settingsFolder(),
                "observer",
                "Oblate 0.1.0");
    }

    /** Compiles against the modules alone, as the sample's own build does: not against tests, nor against anything the modules do not bring. */
    private void writeJar(Path jar) throws IOException {
        Path classes = Files.createDirectories(work.resolve("classes"));
        String path = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(p -> !p.contains("test-classes"))
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

    private static void save(Workbench window, String name) throws IOException {
        BufferedImage image = ask(() -> {
            Component pane = window.frame().getRootPane();
            BufferedImage shot = new BufferedImage(pane.getWidth(), pane.getHeight(), BufferedImage.TYPE_INT_RGB);
            pane.printAll(shot.createGraphics());
            return shot;
        });
        Path folder = Files.createDirectories(Path.of("target/pictures"));
        ImageIO.write(image, "png", folder.resolve(name).toFile());
    }

    private static AbstractButton button(Workbench window, String name) {
        return (AbstractButton) find(window, name).orElseThrow();
    }

    private static Optional<Component> find(Workbench window, String name) {
        return find(window.frame().getRootPane(), name);
    }

    private static Optional<Component> find(Container in, String name) {
        for (Component child : in.getComponents()) {
            if (name.equals(child.getName())) {
                return Optional.of(child);
            }
            Optional<Component> found = child instanceof Container c ? find(c, name) : Optional.empty();
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private static <T> T ask(Callable<T> question) {
        FutureTask<T> task = new FutureTask<>(question);
        SwingUtilities.invokeLater(task);
        try {
            return task.get();
        } catch (InterruptedException | java.util.concurrent.ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void await(String what, Callable<Boolean> condition) {
        Instant end = Instant.now().plus(PATIENCE);
        while (!ask(condition)) {
            if (Instant.now().isAfter(end)) {
                throw new IllegalStateException("waited in vain for: " + what);
            }
            try {
                Thread.sleep(40);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }
}
