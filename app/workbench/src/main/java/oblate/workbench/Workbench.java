/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.GraphicsEnvironment;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import oblate.base.ProblemException;
import oblate.base.UnpackedFiles;
import oblate.workbench.look.Faces;

/** The open window. */
public final class Workbench {
    private final MainWindow window;

    private Workbench(MainWindow window) {
        this.window = window;
    }

    /**
     * Opens the window on an archive, and chooses its first picture once it has been read. May be called from any thread.
     *
     * @throws ProblemException with {@link WorkbenchProblem#NO_SCREEN} when there is no screen to open it on
     */
    public static Workbench open(WorkbenchContext context) {
        return begin(context).show();
    }

    /**
     * Begins to make the window, while the caller goes on, such as with opening the archive; it is seen when {@link Opening#show()} is called. The
     * event thread makes it in several turns.
     *
     * @throws ProblemException with {@link WorkbenchProblem#NO_SCREEN} when there is no screen to open it on
     */
    public static Opening begin(WorkbenchContext context) {
        if (GraphicsEnvironment.isHeadless()) {
            throw new ProblemException(WorkbenchProblem.NO_SCREEN);
        }
        // Looked for here and not on the event thread, which has the look to make meanwhile and should never wait for
        // jars.
        context.plugins().load(WorkbenchPanel.class);
        return new Opening(context);
    }

    /** A window being made. */
    public static final class Opening {
        /** How long the window waits for the pictures, so that it comes up with them and need not be painted twice. */
        private static final long PATIENCE_MS = 300;

        private final WorkbenchContext context;
        private final FutureTask<MainWindow> making;
        private final CountDownLatch read = new CountDownLatch(1);

        private Opening(WorkbenchContext context) {
            this.context = context;
            making = new FutureTask<>(() -> MainWindow.make(context));
            start(making);
            next(MainWindow::assemble);
            next(MainWindow::makeFirstPanel);
            next(MainWindow::layOut);
            // Last, so that the panel has its pictures by then; what has been read waits behind these turns.
            next(window -> window.whenRead(read::countDown));
        }

        /** A turn of the event thread for each step, so that none is long. */
        private void next(Consumer<MainWindow> step) {
            start(new FutureTask<>(() -> {
                step.accept(result(making));
                return true;
            }));
        }

        /** Shows it and waits until it is seen. */
        public Workbench show() {
            // Wanted when a picture is opened; that is on the event thread too.
            context.plugins().load(MeasureTool.class);
            if (!SwingUtilities.isEventDispatchThread()) {
                awaitPictures();
            }
            return onEventThread(() -> {
                MainWindow window = result(making);
                window.show();
                return new Workbench(window);
            });
        }

        private void awaitPictures() {
            try {
                read.await(PATIENCE_MS, TimeUnit.MILLISECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }

        /** Gives it up, because the archive cannot be opened. */
        public void abandon() {
            onEventThread(() -> {
                result(making).discard();
                return true;
            });
        }
    }

    /**
     * Makes ready what every window needs, without being waited for; opening one is quicker afterwards.
     *
     * @param files where font files are kept
     */
    public static void prepare(Path settingsFolder, UnpackedFiles files) {
        // Asking for the screen starts the toolkit, which takes as long as opening an archive does.
        Thread preparing = new Thread(
                () -> {
                    if (!GraphicsEnvironment.isHeadless()) {
                        Faces.install(Optional.of(files));
                        SwingUtilities.invokeLater(() ->
                                Look.kept(new DeskSettings(settingsFolder)).install());
                    }
                },
                "oblate-look");
        preparing.setDaemon(true);
        preparing.start();
    }

    private static void start(FutureTask<?> task) {
        if (SwingUtilities.isEventDispatchThread()) {
            task.run();
        } else {
            SwingUtilities.invokeLater(task);
        }
    }

    private static <T> T onEventThread(Callable<T> call) {
        FutureTask<T> task = new FutureTask<>(call);
        start(task);
        return result(task);
    }

    private static <T> T result(FutureTask<T> task) {
        try {
            return task.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } catch (java.util.concurrent.ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    /** The window itself. */
    public JFrame frame() {
        return window.frame();
    }

    /** What is chosen in it. On the event thread only. */
    public Selection selection() {
        return window.selection();
    }

    /** The archive's pictures as last read. On the event thread only. */
    public Shelf shelf() {
        return window.shelf();
    }

    /** Its background work. */
    public Background background() {
        return window.background();
    }

    /** All plug-ins and what was refused. On the event thread only. */
    public PluginRoll plugins() {
        return window.roll();
    }

    /** Shows a panel by its id. On the event thread only. */
    public void showPanel(String id) {
        window.showPanel(id);
    }

    /** Chooses a picture and shows it in the panel that measures. On the event thread only. */
    public void openPicture(long pictureId) {
        window.openPicture(pictureId);
    }

    /** Changes the look. On the event thread only. */
    public void setTheme(oblate.workbench.look.Theme theme) {
        window.setTheme(theme);
    }

    /** Says a sentence at the foot of the window. May be called from any thread. */
    public void say(String sentence) {
        onEventThread(() -> {
            window.say(sentence);
            return null;
        });
    }

    /**
     * Says what has to be found out first, which begins when the window has been painted. May be called from any thread.
     *
     * @param finding finds what to say, if anything, off the event thread
     */
    public void sayLater(Supplier<Optional<String>> finding) {
        onEventThread(() -> {
            window.background().soon(() -> window.background().aside(finding, found -> found.ifPresent(window::say)));
            return null;
        });
    }

    /** Waits until the window is closed, and says what is wanted then. Not on the event thread. */
    public Leaving awaitClose() {
        try {
            window.closed().await();
            return window.leaving();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Leaving.DONE;
        }
    }

    /** Begins the short walk through the loop. May be called from any thread. */
    public void walkThrough() {
        onEventThread(() -> {
            window.walkThrough();
            return null;
        });
    }

    /** Keeps the layout, closes the window and the archive. May be called from any thread. */
    public void close() {
        onEventThread(() -> {
            window.close();
            return null;
        });
    }
}
