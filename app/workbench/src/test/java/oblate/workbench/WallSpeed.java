/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import javax.swing.JComponent;
import javax.swing.JScrollBar;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import oblate.archive.ManyPictures;
import oblate.base.PluginHost;
import oblate.sky.PlanetModel;
import oblate.workbench.testing.OpenWindow;

/** Says how long a frame takes while the wall of very many pictures is scrolled: {@code WallSpeed FOLDER COUNT}, in a new or earlier folder. */
public final class WallSpeed {
    private WallSpeed() {}

    /** Prints median, 99th percentile and worst for wheel steps, pages and jumps. */
    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args[0]);
        int count = Integer.parseInt(args[1]);
        PluginHost plugins = PluginHost.bundledOnly();
        if (!Files.exists(folder.resolve("archive"))) {
            Files.createDirectories(folder);
            ManyPictures.make(
                    folder.resolve("archive"),
                    count,
                    WallScrollTest.disc(folder.resolve("disc.png"), 120),
                    plugins.load(PlanetModel.class));
        }
        try (OpenWindow window = new OpenWindow(folder.resolve("archive"), folder.resolve("settings"), plugins)) {
            OpenWindow.act(() -> {
                window.workbench().frame().setBounds(0, 0, 1500, 940);
                window.workbench().showPanel("nights");
            });
            OpenWindow.await("reading", () -> window.workbench().shelf().isRead());
            window.settle();
            JComponent wall = (JComponent) window.find("wall");
            JScrollPane scroll = (JScrollPane) SwingUtilities.getAncestorOfClass(JScrollPane.class, wall);
            JScrollBar bar = scroll.getVerticalScrollBar();
            JComponent root = window.workbench().frame().getRootPane();
            tell("wheel, 96 px", frames(bar, root, 96, 600));
            tell("page", frames(bar, root, 600, 300));
            tell("jump back", frames(bar, root, -bar.getMaximum() / 150, 150));
            tell("wheel again", frames(bar, root, 96, 600));
            List<Double> whole = new ArrayList<>();
            for (int i = 0; i < 60; i++) {
                whole.add(OpenWindow.ask(() -> {
                    long t = System.nanoTime();
                    root.paintImmediately(0, 0, root.getWidth(), root.getHeight());
                    return (System.nanoTime() - t) / 1e6;
                }));
            }
            tell("whole window painted", whole);
            System.out.println("memory used: "
                    + (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory() >> 20) + " MB");
        }
        plugins.close();
    }

    /** Time on the event thread from moving the bar until what became visible is painted (ms). */
    private static List<Double> frames(JScrollBar bar, JComponent root, int stepPx, int count) {
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            times.add(OpenWindow.ask(() -> {
                long t = System.nanoTime();
                bar.setValue(bar.getValue() + stepPx);
                javax.swing.RepaintManager.currentManager(root).paintDirtyRegions();
                return (System.nanoTime() - t) / 1e6;
            }));
            pause();
        }
        return times;
    }

    private static void pause() {
        try {
            Thread.sleep(8);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void tell(String what, List<Double> times) {
        List<Double> sorted = new ArrayList<>(times);
        Collections.sort(sorted);
        System.out.printf(
                Locale.ROOT,
                "%-22s median %6.1f ms, 99 %% %6.1f ms, worst %6.1f ms%n",
                what,
                sorted.get(sorted.size() / 2),
                sorted.get(sorted.size() * 99 / 100),
                sorted.get(sorted.size() - 1));
    }
}
