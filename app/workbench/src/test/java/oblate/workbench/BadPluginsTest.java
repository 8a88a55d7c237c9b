/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Toolkit;
import java.awt.datatransfer.DataFlavor;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import javax.swing.JButton;
import javax.swing.JLabel;
import oblate.archive.FilingFacts;
import oblate.base.PluginFault;
import oblate.base.PluginHost;
import oblate.base.PluginRefusal;
import oblate.base.Progress;
import oblate.image.TimeWish;
import oblate.workbench.testing.Hand;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Plug-ins that fail in every way a plug-in can, in the real window: each is named and switched off, and the window lives. */
@Tag("window")
@Timeout(value = 150, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class BadPluginsTest {
    private static final String BAD_PAINT =
            "return new JPanel() { protected void paintComponent(Graphics g) { throw new IllegalStateException(\"no ink\"); } };";

    @TempDir
    Path settings;

    private OpenWindow window;
    private PluginHost plugins;
    private Hand hand;

    @BeforeEach
    void start() {
        hand = new Hand();
    }

    @AfterEach
    void end() {
        try {
            if (window != null) {
                window.close();
                plugins.close();
            }
        } finally {
            hand.close();
        }
    }

    private void open() {
        plugins = PluginHost.withFolder(settings.resolve("plugins"));
        window = new OpenWindow(settings.resolve("archive"), settings, plugins);
        OpenWindow.act(() -> window.workbench().frame().setBounds(0, 0, 1200, 800));
        OpenWindow.await("the archive is read", () -> window.workbench().shelf().isRead());
        window.settle();
    }

    private void jar(String id, StrangersJar jar) throws IOException {
        jar.write(settings.resolve("plugins/" + id + ".jar"));
    }

    private Optional<PluginFault> fault(String id) {
        return OpenWindow.ask(() -> window.workbench().plugins().faults().stream()
                .filter(f -> f.jar().equals(id + ".jar"))
                .findFirst());
    }

    private PluginFault awaitFault(String id) {
        OpenWindow.await(id + " is switched off", () -> window.workbench().plugins().faults().stream()
                .anyMatch(f -> f.jar().equals(id + ".jar")));
        return fault(id).orElseThrow();
    }

    private void show(String panel) {
        OpenWindow.act(() -> window.workbench().showPanel(panel));
    }

    private boolean isInRail(String panel) {
        return OpenWindow.ask(() -> OpenWindow.find(window.workbench().frame().getRootPane(), "rail." + panel)
                .isPresent());
    }

    @Test
    void eachBadPanelIsNamedSwitchedOffAndTheWindowLives() throws IOException {
        Map<String, String> whatItSays = new LinkedHashMap<>();
        jar("throws", StrangersJar.panel("throws", "throw new IllegalStateException(\"no lamp\");"));
        whatItSays.put("throws", "no lamp");
        jar("nothing", StrangersJar.panel("nothing", "return null;"));
        whatItSays.put("nothing", "create returned nothing");
        jar(
                "lacking",
                StrangersJar.panel("lacking", "Object lost = new Lost(); return new JLabel(lost.toString());")
                        .source("Lost", "public class Lost extends JLabel {}")
                        .without("Lost"));
        whatItSays.put("lacking", "NoClassDefFoundError");
        jar("deep", StrangersJar.panel("deep", "int down(int n) { return 1 + down(n + 1); }", "down(0); return null;"));
        whatItSays.put("deep", "StackOverflowError");
        jar("large", StrangersJar.panel("large", "long[][] l = new long[9][Integer.MAX_VALUE]; return null;"));
        whatItSays.put("large", "OutOfMemoryError");
        jar("painter", StrangersJar.panel("painter", BAD_PAINT));
        whatItSays.put("painter", "no ink");
        jar(
                "layout",
                StrangersJar.panel(
                        "layout",
                        "return new JPanel() { public void doLayout() { throw new UnsupportedOperationException(\"no room\"); }"
                                + " public void removeNotify() { throw new IllegalStateException(\"stays\"); } };"));
        whatItSays.put("layout", "no room");
        jar(
                "job",
                StrangersJar.panel(
                        "job",
                        "context.background().run(\"Idling\", p -> { throw new AssertionError(\"bad job\"); }, r -> {});"
                                + " return new JLabel();"));
        whatItSays.put("job", "bad job");
        jar(
                "timer",
                StrangersJar.panel(
                        "timer",
                        "new javax.swing.Timer(5, e -> { throw new ArithmeticException(\"bad beat\"); }).start(); return new JLabel();"));
        whatItSays.put("timer", "bad beat");
        jar(
                "thread",
                StrangersJar.panel(
                        "thread",
                        "new Thread(() -> { throw new IllegalStateException(\"bad thread\"); }).start(); return new JLabel();"));
        whatItSays.put("thread", "bad thread");
        jar(
                "mute",
                StrangersJar.panel(
                        "mute",
                        "throw new RuntimeException() { public String getMessage() { throw new IllegalStateException(); } };"));
        whatItSays.put("mute", "its words cannot be had");
        open();

        whatItSays.forEach((id, words) -> {
            assertThat(isInRail(id)).as(id).isTrue();
            show(id);
            PluginFault fault = awaitFault(id);
            assertThat(fault.sentence()).contains("\"" + id + "\" in " + id + ".jar", words);
            OpenWindow.await(id + " is taken from the rail", () -> OpenWindow.find(
                            window.workbench().frame().getRootPane(), "rail." + id)
                    .isEmpty());
        });
        show("nights");
        window.settle();
        assertThat(window.find("panel.nights").isVisible()).isTrue();
        assertThat(window.picture().getWidth()).isGreaterThan(1000);
    }

    @Test
    void aBadListenerKeepsNobodyElseFromHearing() throws IOException {
        jar(
                "deaf",
                StrangersJar.panel(
                        "deaf",
                        "context.selection().whenChanged(() -> { throw new IllegalStateException(\"bad ear\"); });"
                                + " context.shelf().whenChanged(() -> { throw new IllegalStateException(\"bad shelf\"); });"
                                + " return new JLabel();"));
        open();
        show("deaf");
        boolean[] heard = new boolean[1];
        OpenWindow.act(() -> {
            window.workbench().selection().whenChanged(() -> heard[0] = true);
            window.workbench().selection().choosePicture(7);
        });
        assertThat(heard[0]).isTrue();
        assertThat(awaitFault("deaf").sentence()).contains("bad ear");

        // Switched off, it is not asked again; switched on, its panel is made anew.
        OpenWindow.act(() -> window.workbench().selection().choosePicture(8));
        show("plug-ins");
        OpenWindow.act(() -> ((JButton) window.find("on.deaf.jar")).doClick());
        OpenWindow.await("it is in the rail again", () -> isInRail("deaf"));
        assertThat(fault("deaf")).isEmpty();
        show("deaf");
        OpenWindow.act(() -> window.workbench().shelf().refresh());
        assertThat(awaitFault("deaf").sentence()).contains("bad shelf");
    }

    @Test
    void theErrorTextCanBeCopiedAndTheJarStaysOffAtTheNextStart() throws Exception {
        jar("painter", StrangersJar.panel("painter", BAD_PAINT));
        open();
        show("painter");
        awaitFault("painter");
        OpenWindow.await("the panel Plug-ins is shown", () -> window.find("copy.painter.jar")
                .isShowing());
        OpenWindow.act(() -> ((JButton) window.find("copy.painter.jar")).doClick());
        String copied =
                (String) Toolkit.getDefaultToolkit().getSystemClipboard().getData(DataFlavor.stringFlavor);
        assertThat(copied).contains("painter.jar", "no ink", "stranger.Panel");
        OpenWindow.await(
                "the foot of the window has named it",
                () -> !((JLabel) window.find("status")).getText().isBlank());
        window.close();
        plugins.close();

        open();
        assertThat(isInRail("painter")).isFalse();
        assertThat(fault("painter")).isPresent();
        show("plug-ins");
        OpenWindow.act(() -> ((JButton) window.find("on.painter.jar")).doClick());
        OpenWindow.await("it is in the rail", () -> isInRail("painter"));
    }

    @Test
    void whatCannotEvenBeMadeIsRefused() throws IOException {
        jar(
                "maker",
                StrangersJar.panel(
                        "maker", "public Panel() { throw new OutOfMemoryError(\"no clay\"); }", "return null;"));
        jar(
                "static",
                StrangersJar.panel("static", "static final int X = 1 / Integer.parseInt(\"0\");", "return null;"));
        jar(
                "order",
                StrangersJar.panel(
                        "order",
                        "public int order() { throw new IllegalStateException(\"no order\"); }",
                        "return null;"));
        jar("icon", StrangersJar.panel("icon", "public Optional<Icon> icon() { return null; }", "return null;"));
        Files.writeString(settings.resolve("plugins/junk.jar"), "no jar at all");
        open();
        List<PluginRefusal> refusals =
                OpenWindow.ask(() -> window.workbench().plugins().refusals());
        assertThat(refusals)
                .extracting(PluginRefusal::where)
                .containsExactlyInAnyOrder("maker.jar", "static.jar", "order.jar", "icon.jar", "junk.jar");
        assertThat(refusals.toString())
                .contains("no clay", "ArithmeticException", "no order", "its icon() gives nothing");
        assertThat(isInRail("nights")).isTrue();
    }

    @Test
    void badToolsAreLaidDownAndSwitchedOff() throws IOException {
        String quiet = "public List<Drawn> overlay() { return List.of(); } public void clicked(PixelPoint p) {}";
        jar("clumsy", StrangersJar.tool("clumsy", "if (true) throw new IllegalStateException(\"slips\");", quiet));
        jar(
                "empty",
                StrangersJar.tool(
                        "empty",
                        "",
                        "public List<Drawn> overlay() { return null; } public void clicked(PixelPoint p) {}"));
        jar(
                "click",
                StrangersJar.tool(
                        "click",
                        "",
                        "public List<Drawn> overlay() { return List.of(); } public void clicked(PixelPoint p) { throw new"
                                + " IllegalStateException(\"breaks\"); }"));
        jar("good", StrangersJar.tool("good", "", quiet));
        fileAPicture();
        open();
        show("measure");
        OpenWindow.await("the picture is shown", () -> !allNull(window.find("canvas")));
        window.settle();
        press("tool.clumsy");
        assertThat(awaitFault("clumsy").sentence()).contains("clumsy", "slips");
        press("tool.empty");
        assertThat(awaitFault("empty").sentence()).contains("drawing over the picture", "NullPointerException");
        press("tool.click");
        Component canvas = window.find("canvas");
        hand.click(canvas, new Point(canvas.getWidth() / 2, canvas.getHeight() / 2));
        assertThat(awaitFault("click").sentence()).contains("a click", "breaks");
        OpenWindow.await("only the good tool is left", () -> OpenWindow.find(
                        window.workbench().frame().getRootPane(), "tool.click")
                .isEmpty());
        press("tool.good");
        assertThat(fault("good")).isEmpty();
    }

    private static boolean allNull(Component canvas) {
        BufferedImage image = new BufferedImage(canvas.getWidth(), canvas.getHeight(), BufferedImage.TYPE_INT_RGB);
        canvas.print(image.getGraphics());
        return new Color(image.getRGB(canvas.getWidth() / 2, canvas.getHeight() / 2)).getGreen() < 100;
    }

    private void press(String button) {
        OpenWindow.act(() -> ((javax.swing.AbstractButton) window.find(button)).doClick());
    }

    private void fileAPicture() throws IOException {
        Path folder = Files.createDirectories(settings.resolve("in"));
        BufferedImage image = new BufferedImage(120, 120, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D g = image.createGraphics();
        g.setColor(Color.WHITE);
        g.fillOval(20, 23, 80, 75);
        g.dispose();
        ImageIO.write(image, "png", folder.resolve("2024-12-07T20-58-00Z.png").toFile());
        Files.writeString(settings.resolve("workbench.properties"), "panel.measure.fit.new=false\n");
        WorkbenchContext context = OpenWindow.context(settings.resolve("archive"), settings, PluginHost.bundledOnly());
        FilingFacts facts = new FilingFacts(
                Optional.of("jupiter"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                new TimeWish(
                        Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty()),
                true);
        context.filing().file(List.of(folder), facts, Progress.SILENT);
        context.archive().close();
    }

    @Test
    void aPanelThatDoesNotComeBackIsNamedAtTheFootWhileItHangs() throws Exception {
        jar(
                "sleeper",
                StrangersJar.panel(
                        "sleeper",
                        "try { Thread.sleep(8000); } catch (InterruptedException e) {} return new JLabel();"));
        open();
        Component strip = window.find("status").getParent();
        Rectangle foot = OpenWindow.ask(() -> new Rectangle(strip.getLocationOnScreen(), strip.getSize()));
        java.awt.Robot eye = new java.awt.Robot();
        BufferedImage before = eye.createScreenCapture(foot);
        javax.swing.SwingUtilities.invokeLater(() -> window.workbench().showPanel("sleeper"));
        Path kept = settings.resolve("plugins/switched-off.properties");
        long end = System.nanoTime() + 7_500_000_000L;
        while (!Files.exists(kept) && System.nanoTime() < end) {
            Thread.sleep(50);
        }
        // The event thread still hangs; whoever ends the program now finds the jar switched off at the next start.
        assertThat(Files.readString(kept)).contains("sleeper.jar");
        assertThat(((StatusStrip) strip).shouted()).contains("sleeper", "sleeper.jar", "window waiting");
        Thread.sleep(200);
        assertThat(isAlike(before, eye.createScreenCapture(foot))).isFalse();

        OpenWindow.await(
                "it has come back and is told of",
                () -> ((JLabel) window.find("status")).getText().contains("sleeper.jar kept the window waiting"));
        assertThat(kept).doesNotExist();
        assertThat(isInRail("sleeper")).isTrue();
    }

    private static boolean isAlike(BufferedImage a, BufferedImage b) {
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                if (a.getRGB(x, y) != b.getRGB(x, y)) {
                    return false;
                }
            }
        }
        return true;
    }
}
