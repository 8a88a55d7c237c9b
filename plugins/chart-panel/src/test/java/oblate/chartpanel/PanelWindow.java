/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import javax.imageio.ImageIO;
import javax.swing.JTable;
import javax.swing.SwingUtilities;
import oblate.archive.Archive;
import oblate.archive.Filing;
import oblate.base.PluginHost;
import oblate.disc.MoonWitness;
import oblate.image.CaptureTimes;
import oblate.image.ImageFormat;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.report.ReportFormat;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.workbench.Workbench;
import oblate.workbench.WorkbenchContext;
import oblate.workbench.look.Theme;

/** The window with this panel shown, for its tests and for the picture of the guide. */
final class PanelWindow implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private final Workbench workbench;
    private final WorkbenchContext context;

    PanelWindow(Path archiveFolder, Path settings, PluginHost plugins) {
        context = context(archiveFolder, settings, plugins);
        workbench = Workbench.open(context);
    }

    static WorkbenchContext context(Path archiveFolder, Path settings, PluginHost plugins) {
        var planets = plugins.load(PlanetModel.class);
        var formats = plugins.load(ImageFormat.class);
        Archive archive = Files.exists(archiveFolder.resolve("catalog.db"))
                ? Archive.open(archiveFolder, planets, Clock.systemUTC())
                : Archive.create(archiveFolder, planets, Clock.systemUTC());
        PictureReader reader = new PictureReader(formats, PictureLimits.usual());
        Sky sky = Sky.bundled();
        return new WorkbenchContext(
                archive,
                sky,
                planets,
                formats,
                reader,
                new MoonWitness(sky),
                new Filing(archive, reader, new CaptureTimes(), sky, planets),
                plugins.load(ReportFormat.class),
                plugins,
                settings,
                "observer",
                "Oblate 0.1.0");
    }

    /** Writes pictures of a panel: archive folder, output file, theme, panel, and perhaps the feature that is chosen. */
    public static void main(String[] args) throws IOException {
        Path out = Path.of(args[1]);
        try (PanelWindow window = new PanelWindow(
                Path.of(args[0]),
                out.resolveSibling("settings-" + args[2].toLowerCase(Locale.ROOT)),
                PluginHost.bundledOnly())) {
            act(() -> {
                window.workbench.setTheme(Theme.valueOf(args[2]));
                window.workbench.frame().setBounds(0, 0, 1580, 960);
                window.workbench.showPanel(args[3]);
            });
            window.settle();
            if (args.length > 4) {
                JTable table = (JTable) window.find("drifts");
                act(() -> {
                    for (int row = 0; row < table.getRowCount(); row++) {
                        if (table.getValueAt(row, 0).equals(args[4])) {
                            table.setRowSelectionInterval(row, row);
                        }
                    }
                });
                pause(900);
                window.settle();
            }
            ImageIO.write(window.picture(), "png", out.toFile());
        }
    }

    /** Waits a moment for a timer of the panel. */
    static void pause(int ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    Workbench workbench() {
        return workbench;
    }

    WorkbenchContext context() {
        return context;
    }

    static <T> T ask(Callable<T> question) {
        FutureTask<T> task = new FutureTask<>(question);
        if (SwingUtilities.isEventDispatchThread()) {
            task.run();
        } else {
            SwingUtilities.invokeLater(task);
        }
        try {
            return task.get();
        } catch (InterruptedException | ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }

    static void act(Runnable deed) {
        ask(() -> {
            deed.run();
            return null;
        });
    }

    /** Waits until the window has nothing under way, for some moments running. */
    void settle() {
        int calm = 0;
        Instant end = Instant.now().plus(PATIENCE);
        while (calm < 5) {
            calm = ask(() -> workbench.background().isIdle()) ? calm + 1 : 0;
            if (Instant.now().isAfter(end)) {
                throw new IllegalStateException("the window is still busy");
            }
            try {
                Thread.sleep(25);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }

    Component find(String name) {
        return ask(() -> find(workbench.frame().getRootPane(), name))
                .orElseThrow(() -> new IllegalStateException("no component " + name));
    }

    private static Optional<Component> find(Container in, String name) {
        for (Component child : in.getComponents()) {
            if (name.equals(child.getName())) {
                return Optional.of(child);
            }
            if (child instanceof Container container) {
                Optional<Component> found = find(container, name);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    BufferedImage picture() {
        return ask(() -> {
            Component pane = workbench.frame().getRootPane();
            double scale = pane.getGraphicsConfiguration().getDefaultTransform().getScaleX();
            BufferedImage image = new BufferedImage(
                    (int) (pane.getWidth() * scale), (int) (pane.getHeight() * scale), BufferedImage.TYPE_INT_RGB);
            Graphics2D g = image.createGraphics();
            g.scale(scale, scale);
            // not printAll: a table that is printed leaves its selection out
            pane.paint(g);
            g.dispose();
            return image;
        });
    }

    @Override
    public void close() {
        workbench.close();
    }
}
