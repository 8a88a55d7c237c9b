/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.AWTException;
import java.awt.Component;
import java.awt.Container;
import java.awt.Image;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
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

    /** Writes the picture of the guide: archive folder, output file, theme, and perhaps planet, date, and event ("Shadow Io"), or "timings" in their place. */
    public static void main(String[] args) throws IOException {
        Path out = Path.of(args[1]);
        try (PanelWindow window = new PanelWindow(
                Path.of(args[0]),
                out.resolveSibling("settings-" + args[2].toLowerCase(Locale.ROOT)),
                PluginHost.bundledOnly())) {
            act(() -> {
                window.workbench.setTheme(Theme.valueOf(args[2]));
                window.workbench.frame().setBounds(0, 0, 1500, 940);
                window.workbench.showPanel("moons");
            });
            window.settle();
            if (args.length == 4 && args[3].equals("timings")) {
                act(() -> ((javax.swing.JTabbedPane) window.find("moons.tabs")).setSelectedIndex(1));
                window.settle();
                JTable rows = (JTable) window.find("moons.timings.rows");
                act(() -> rows.setRowSelectionInterval(6, 6));
                window.settle();
                ImageIO.write(window.picture(), "png", out.toFile());
                return;
            }
            if (args.length > 4) {
                act(() -> {
                    ((javax.swing.JComboBox<?>) window.find("moons.planet")).setSelectedItem(args[3]);
                    javax.swing.JTextField date = (javax.swing.JTextField) window.find("moons.date");
                    date.setText(args[4]);
                    date.postActionEvent();
                });
                window.settle();
            }
            JTable table = (JTable) window.find("moons.events");
            int row = args.length > 5 ? rowOf(table, args[5]) : 0;
            act(() -> table.setRowSelectionInterval(row, row));
            window.settle();
            ImageIO.write(window.picture(), "png", out.toFile());
        }
    }

    private static int rowOf(JTable table, String kindAndMoon) {
        return ask(() -> java.util.stream.IntStream.range(0, table.getRowCount())
                .filter(r -> kindAndMoon.equals(table.getValueAt(r, 0) + " " + table.getValueAt(r, 1)))
                .findFirst()
                .orElseThrow());
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

    /** What stands on the screen, pixel for pixel, also where the desktop is scaled. */
    BufferedImage picture() {
        Rectangle bounds = ask(() -> workbench.frame().getBounds());
        try {
            List<Image> sizes =
                    new Robot().createMultiResolutionScreenCapture(bounds).getResolutionVariants();
            return (BufferedImage) sizes.get(sizes.size() - 1);
        } catch (AWTException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        workbench.close();
    }
}
