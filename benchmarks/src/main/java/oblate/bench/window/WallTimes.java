/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench.window;

import java.awt.Toolkit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import oblate.workbench.WorkbenchContext;

/** Scrolls the wall of an archive with many pictures from its first night to its last and prints how long a frame takes. */
public final class WallTimes {
    private static final int PER_NIGHT = 40;
    private static final int FRAMES = 1000;

    private WallTimes() {}

    /**
     * Makes the archive where it is not there, scrolls and prints.
     *
     * @param words folder to keep the archive in for the next time; how many pictures
     */
    public static void main(String[] words) throws IOException {
        Path work = Path.of(words[0]);
        int count = Integer.parseInt(words[1]);
        WorkbenchContext context = BenchWindow.context(work.resolve("archive"), work.resolve("settings"));
        Path incoming = work.resolve("in");
        if (!Files.exists(incoming.resolve("done"))) {
            Instant first = Instant.parse("2020-01-01T18:00:00Z");
            for (int i = 0; i < count; i++) {
                Instant time = first.plusSeconds(86400L * (i / PER_NIGHT) * 2 + 180L * (i % PER_NIGHT));
                DrawnPictures.write(incoming, 48, time, i);
            }
            DrawnPictures.file(context, incoming);
            Files.createFile(incoming.resolve("done"));
        }
        try (BenchWindow window = new BenchWindow(context)) {
            BenchWindow.ask(() -> {
                window.workbench().showPanel("nights");
                return true;
            });
            JComponent wall = (JComponent) window.find("wall").orElseThrow();
            JScrollPane scroll =
                    BenchWindow.ask(() -> (JScrollPane) SwingUtilities.getAncestorOfClass(JScrollPane.class, wall));
            System.out.println(window.workbench().shelf().pictures().size() + " pictures, wall of "
                    + BenchWindow.ask(wall::getHeight) + " px");
            System.out.println("from top to bottom, pictures read on the way: " + Figures.of(pass(scroll)));
            System.out.println("back and forth once more:                     " + Figures.of(pass(scroll)));
        }
        System.exit(0);
    }

    private static List<Double> pass(JScrollPane scroll) {
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            int frame = i;
            times.add(BenchWindow.ask(() -> {
                int most = scroll.getVerticalScrollBar().getMaximum()
                        - scroll.getVerticalScrollBar().getVisibleAmount();
                // Small steps as of a wheel, with a leap every fifty frames so that the whole wall is passed.
                int value = (int) ((long) most * (frame / 50) / (FRAMES / 50)) + frame % 50 * 48;
                long begun = System.nanoTime();
                scroll.getVerticalScrollBar().setValue(value);
                scroll.paintImmediately(0, 0, scroll.getWidth(), scroll.getHeight());
                Toolkit.getDefaultToolkit().sync();
                return (System.nanoTime() - begun) / 1e6;
            }));
            BenchWindow.pause(4);
        }
        return times;
    }
}
