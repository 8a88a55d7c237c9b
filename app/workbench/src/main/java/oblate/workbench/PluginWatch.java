/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import oblate.base.PluginHost;

/**
 * Hears of everything nobody caught, on any thread, and notices when the event thread does not come back; names the plug-in where it was one.
 *
 * <p>What hangs cannot be ended from within. It is named at the foot of the window, painted from outside the event thread because that is the
 * one that hangs, and written down, so that it is off at the next start if the person has to end the program.
 */
final class PluginWatch implements Thread.UncaughtExceptionHandler, EventWatch.Listener, AutoCloseable {
    private static final Duration BEAT = Duration.ofSeconds(1);
    private static final Duration BOUND = Duration.ofSeconds(4);
    private final PluginHost host;
    private final PluginRoll roll;
    private final Consumer<String> say;
    private final Consumer<String> shout;
    private final EventWatch watch = new EventWatch(BEAT, BOUND, this);
    private volatile Thread.UncaughtExceptionHandler before;
    private volatile Optional<String> stalledJar = Optional.empty();

    /**
     * @param say shows one sentence; called on the event thread
     * @param shout shows one sentence while the event thread hangs; called on another one
     */
    PluginWatch(PluginHost host, PluginRoll roll, Consumer<String> say, Consumer<String> shout) {
        this.host = host;
        this.roll = roll;
        this.say = say;
        this.shout = shout;
    }

    void start() {
        before = Thread.getDefaultUncaughtExceptionHandler();
        Thread.setDefaultUncaughtExceptionHandler(this);
        watch.start();
    }

    @Override
    public void uncaughtException(Thread thread, Throwable thrown) {
        if (SwingUtilities.isEventDispatchThread()) {
            hear(thrown, "the window was being drawn or used");
        } else {
            SwingUtilities.invokeLater(() -> hear(thrown, "its thread \"" + thread.getName() + "\" was running"));
        }
    }

    private void hear(Throwable thrown, String doing) {
        if (roll.heard(thrown, doing).isEmpty()) {
            System.getLogger(PluginWatch.class.getName()).log(System.Logger.Level.ERROR, "unexpected failure", thrown);
            say.accept("Something unexpected went wrong (" + thrown.getClass().getSimpleName()
                    + "); nothing in the archive was lost.");
        }
    }

    @Override
    public void stalled(long seconds, List<StackTraceElement> frames) {
        Optional<String> jar = host.blame(frames);
        if (jar.isPresent() && !jar.equals(stalledJar)) {
            host.suspect(
                    jar.get(), "did not come back and kept the window waiting until the program was ended", frames);
        }
        stalledJar = jar.isPresent() ? jar : stalledJar;
        shout.accept(jar.map(j -> named(j) + " keeps the window waiting, " + seconds
                        + " s by now. If it does not come back, end the program: at the next start it is switched off.")
                .orElse("Something keeps the window waiting, " + seconds + " s by now."));
    }

    @Override
    public void over(long seconds) {
        stalledJar.ifPresent(jar -> {
            host.clearSuspicion();
            say.accept(named(jar) + " kept the window waiting for " + seconds + " s.");
        });
        stalledJar = Optional.empty();
    }

    private String named(String jar) {
        return "The plug-in \"" + host.labels(jar) + "\" in " + jar;
    }

    @Override
    public void close() {
        watch.close();
        if (Thread.getDefaultUncaughtExceptionHandler() == this) {
            Thread.setDefaultUncaughtExceptionHandler(before);
        }
    }
}
