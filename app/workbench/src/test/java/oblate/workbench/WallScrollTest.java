/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import javax.imageio.ImageIO;
import javax.swing.JComponent;
import javax.swing.JScrollBar;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import oblate.archive.ManyPictures;
import oblate.base.PluginHost;
import oblate.sky.PlanetModel;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Ten thousand pictures: the wall scrolls from end to end without an error, and what stands in view is what the archive holds there. */
@Tag("window")
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class WallScrollTest {
    private static final int PICTURES = 10_000;

    @TempDir
    Path folder;

    /** Writes a small disc with a belt of some tone, 0…255: other tones are other bytes. */
    static Path disc(Path file, int belt) throws IOException {
        BufferedImage image = new BufferedImage(160, 120, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D g = image.createGraphics();
        g.setColor(Color.LIGHT_GRAY);
        g.fillOval(50, 32, 60, 56);
        g.setColor(new Color(belt, belt, belt));
        g.fillRect(51, 50, 58, 6);
        g.dispose();
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    @Test
    void tenThousandPicturesScrollFromEndToEndWithoutAnError() throws IOException {
        Queue<Throwable> errors = new ConcurrentLinkedQueue<>();
        Thread.UncaughtExceptionHandler before = Thread.getDefaultUncaughtExceptionHandler();
        Thread.setDefaultUncaughtExceptionHandler((thread, error) -> errors.add(error));
        PluginHost plugins = PluginHost.bundledOnly();
        List<PlanetModel> planets = plugins.load(PlanetModel.class);
        ManyPictures.make(folder.resolve("archive"), PICTURES, disc(folder.resolve("disc.png"), 120), planets);
        Path settings = Files.createDirectories(folder.resolve("settings"));
        Files.writeString(settings.resolve("workbench.properties"), "panel.measure.fit.new=false\n");
        try (OpenWindow window = new OpenWindow(folder.resolve("archive"), settings, plugins)) {
            OpenWindow.act(() -> window.workbench().showPanel("nights"));
            OpenWindow.await(
                    "the archive is read", () -> window.workbench().shelf().isRead());
            JComponent wall = (JComponent) window.find("wall");
            JScrollPane scroll = (JScrollPane) SwingUtilities.getAncestorOfClass(JScrollPane.class, wall);
            OpenWindow.await("the wall is laid out", () -> wall.getHeight() > 50_000);
            JScrollBar bar = scroll.getVerticalScrollBar();
            int steps = 60;
            for (int i = 0; i <= steps; i++) {
                int at = (int) ((long) (bar.getMaximum() - bar.getVisibleAmount()) * i / steps);
                OpenWindow.act(() -> {
                    bar.setValue(at);
                    wall.paintImmediately(wall.getVisibleRect());
                });
            }
            // A picture chosen elsewhere in the window is brought into view, and gets its small image.
            long far = OpenWindow.ask(() ->
                    window.workbench().shelf().pictures().get(PICTURES / 2).id());
            OpenWindow.act(() -> window.workbench().selection().choosePicture(far));
            Rectangle tile = tileOf(wall, far);
            assertThat(OpenWindow.<Rectangle>ask(wall::getVisibleRect).contains(tile))
                    .isTrue();
            OpenWindow.await("its small image", () -> brightestOf(wall, tile) > 120);
            OpenWindow.act(() -> bar.setValue(0));
            window.settle();
        } finally {
            Thread.setDefaultUncaughtExceptionHandler(before);
            plugins.close();
        }
        assertThat(errors).isEmpty();
    }

    private static int brightestOf(Component wall, Rectangle tile) {
        BufferedImage image = new BufferedImage(tile.width, tile.width, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.translate(-tile.x, -tile.y);
        g.setClip(tile.x, tile.y, tile.width, tile.width);
        wall.paint(g);
        g.dispose();
        // The middle of the tile: neither its frame nor its captions.
        int brightest = 0;
        for (int y = tile.width / 3; y < 2 * tile.width / 3; y++) {
            for (int x = tile.width / 3; x < 2 * tile.width / 3; x++) {
                brightest = Math.max(brightest, image.getRGB(x, y) & 0xFF);
            }
        }
        return brightest;
    }

    private static Rectangle tileOf(Component wall, long id) {
        return OpenWindow.ask(() -> {
            java.lang.reflect.Method bounds = wall.getClass().getDeclaredMethod("boundsOf", long.class);
            bounds.setAccessible(true);
            return (Rectangle) ((java.util.Optional<?>) bounds.invoke(wall, id)).orElseThrow();
        });
    }
}
