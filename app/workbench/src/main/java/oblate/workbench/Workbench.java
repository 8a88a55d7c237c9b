/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.GraphicsEnvironment;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import oblate.base.ProblemException;

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
        if (GraphicsEnvironment.isHeadless()) {
            throw new ProblemException(WorkbenchProblem.NO_SCREEN);
        }
        // Looked for here and not on the event thread, which has the look to make meanwhile and should never wait for
        // jars.
        context.plugins().load(WorkbenchPanel.class);
        context.plugins().load(MeasureTool.class);
        return onEventThread(() -> {
            MainWindow window = MainWindow.make(context);
            window.show();
            return new Workbench(window);
        });
    }

    /** Makes ready what every window needs, without being waited for; opening one is quicker afterwards. */
    public static void prepare(Path settingsFolder) {
        // Asking for the screen starts the toolkit, which takes as long as opening an archive does.
        Thread preparing = new Thread(
                () -> {
                    if (!GraphicsEnvironment.isHeadless()) {
                        SwingUtilities.invokeLater(() -> MainWindow.keptTheme(new DeskSettings(settingsFolder))
                                .install());
                    }
                },
                "oblate-look");
        preparing.setDaemon(true);
        preparing.start();
    }

    private static <T> T onEventThread(Callable<T> call) {
        FutureTask<T> task = new FutureTask<>(call);
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
