/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench.window;

import java.awt.Component;
import java.awt.Container;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
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

/** The real window on an archive, 1600 × 1000, and ways to wait for it. */
final class BenchWindow implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofMinutes(5);
    private final Workbench workbench;

    BenchWindow(WorkbenchContext context) {
        workbench = Workbench.open(context);
        ask(() -> {
            workbench.frame().setBounds(0, 0, 1600, 1000);
            return true;
        });
        await(() -> workbench.shelf().isRead());
        settle();
    }

    /** An archive with everything that ships on this class path; made when there is none. */
    static WorkbenchContext context(Path folder, Path settings) {
        PluginHost plugins = PluginHost.bundledOnly();
        var planets = plugins.load(PlanetModel.class);
        var formats = plugins.load(ImageFormat.class);
        Archive archive = Files.exists(folder.resolve("catalog.db"))
                ? Archive.open(folder, planets, Clock.systemUTC())
                : Archive.create(folder, planets, Clock.systemUTC());
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
                "bench",
                "Oblate benchmarks");
    }

    Workbench workbench() {
        return workbench;
    }

    static <T> T ask(Callable<T> question) {
        FutureTask<T> task = new FutureTask<>(question);
        SwingUtilities.invokeLater(task);
        try {
            return task.get();
        } catch (InterruptedException | ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }

    static void await(Callable<Boolean> condition) {
        Instant end = Instant.now().plus(PATIENCE);
        while (!ask(condition)) {
            if (Instant.now().isAfter(end)) {
                throw new IllegalStateException("waited in vain");
            }
            pause(20);
        }
    }

    static void pause(long ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Waits until nothing is under way for a while. */
    void settle() {
        for (int calm = 0; calm < 10; ) {
            calm = ask(() -> workbench.background().isIdle()) ? calm + 1 : 0;
            pause(25);
        }
    }

    Optional<Component> find(String name) {
        return ask(() -> find(workbench.frame().getRootPane(), name));
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

    @Override
    public void close() {
        workbench.close();
    }
}
