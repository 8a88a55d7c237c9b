/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.testing;

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
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import javax.imageio.ImageIO;
import javax.swing.JTextField;
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

/** The real window on an archive, for tests and for the pictures of the guide: waits for its background work, finds its parts, takes pictures of it. */
public final class OpenWindow implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private final Workbench workbench;
    private final WorkbenchContext context;

    /** Opens the window on an archive, made when absent. */
    public OpenWindow(Path archiveFolder, Path settings, PluginHost plugins) {
        this(context(archiveFolder, settings, plugins));
    }

    /** Opens the window on what the launcher, or a test in its place, put together. */
    public OpenWindow(WorkbenchContext context) {
        this.context = context;
        workbench = Workbench.open(context);
    }

    /** What the launcher would hand to the window. */
    public static WorkbenchContext context(Path archiveFolder, Path settings, PluginHost plugins) {
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

    /** The window. */
    public Workbench workbench() {
        return workbench;
    }

    /** What it was opened with. */
    public WorkbenchContext context() {
        return context;
    }

    /**
     * Asks something on the event thread.
     *
     * @throws AssertionError when the question fails a test
     * @throws IllegalStateException when it fails otherwise
     */
    public static <T> T ask(Callable<T> question) {
        FutureTask<T> task = new FutureTask<>(question);
        if (SwingUtilities.isEventDispatchThread()) {
            task.run();
        } else {
            SwingUtilities.invokeLater(task);
        }
        try {
            return task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof AssertionError failed) {
                throw failed;
            }
            throw new IllegalStateException(e);
        }
    }

    /** Does something on the event thread. */
    public static void act(Runnable deed) {
        ask(() -> {
            deed.run();
            return null;
        });
    }

    /** Waits until a condition, asked on the event thread, holds; it does not hold while a component it asks about is not made yet. */
    public static void await(String what, Callable<Boolean> condition) {
        Instant end = Instant.now().plus(PATIENCE);
        while (!ask(() -> holds(condition))) {
            if (Instant.now().isAfter(end)) {
                throw new IllegalStateException("waited in vain for: " + what);
            }
            pause(30);
        }
    }

    private static boolean holds(Callable<Boolean> condition) throws Exception {
        try {
            return condition.call();
        } catch (NoSuchElementException e) {
            return false;
        }
    }

    /** Waits until the window has nothing under way, for some moments running. */
    public void settle() {
        int calm = 0;
        Instant end = Instant.now().plus(PATIENCE);
        while (calm < 5) {
            calm = ask(() -> workbench.background().isIdle()) ? calm + 1 : 0;
            if (Instant.now().isAfter(end)) {
                throw new IllegalStateException("the window is still busy: "
                        + ask(() -> workbench.background().jobs()));
            }
            pause(25);
        }
    }

    /** Waits a moment, for a timer of a panel. */
    public static void pause(long ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** A component by its name. */
    public static Optional<Component> find(Container in, String name) {
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

    /**
     * A component of the window by its name.
     *
     * @throws NoSuchElementException when there is none
     */
    public Component find(String name) {
        return ask(() -> find(workbench.frame().getRootPane(), name))
                .orElseThrow(() -> new NoSuchElementException("no component " + name));
    }

    /** Gives the window a size in pixels, shows a panel by its name, and waits until that is done. */
    public void show(String panel, int width, int height) {
        act(() -> {
            workbench.frame().setBounds(0, 0, width, height);
            workbench.showPanel(panel);
        });
        settle();
    }

    /** Puts a text into a field by its name, presses Enter there, and waits until that is dealt with. */
    public void enter(String field, String text) {
        JTextField into = (JTextField) find(field);
        act(() -> {
            into.setText(text);
            into.postActionEvent();
        });
        settle();
    }

    /** The window's content as an image, pixel for pixel, also where the desktop is scaled. */
    public BufferedImage picture() {
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

    /** Writes the window's content to a file. */
    public void save(Path file) throws IOException {
        Files.createDirectories(file.toAbsolutePath().getParent());
        ImageIO.write(picture(), "png", file.toFile());
    }

    @Override
    public void close() {
        workbench.close();
    }
}
