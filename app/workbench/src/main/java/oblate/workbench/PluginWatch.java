/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import oblate.base.PluginHost;
import oblate.workbench.words.Texts;

/**
 * Hears of everything nobody caught, on any thread, and notices when the event thread does not come back; names the plug-in where it was one.
 *
 * <p>What hangs cannot be ended from within. It is named at the foot of the window, painted from outside the event thread because that is the
 * one that hangs, and written down, so that it is off at the next start if the person has to end the program.
 */
final class PluginWatch implements Thread.UncaughtExceptionHandler, EventWatch.Listener, AutoCloseable {
    private static final Texts TEXTS = Texts.of(PluginWatch.class);
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
            hear(thrown, TEXTS.text("doing.window"));
        } else {
            SwingUtilities.invokeLater(() -> hear(thrown, TEXTS.text("doing.thread", thread.getName())));
        }
    }

    private void hear(Throwable thrown, String doing) {
        if (roll.heard(thrown, doing).isEmpty()) {
            System.getLogger(PluginWatch.class.getName()).log(System.Logger.Level.ERROR, "unexpected failure", thrown);
            say.accept(TEXTS.text("unexpected", thrown.getClass().getSimpleName()));
        }
    }

    @Override
    public void stalled(long seconds, List<StackTraceElement> frames) {
        Optional<String> jar = host.blame(frames);
        if (jar.isPresent() && !jar.equals(stalledJar)) {
            host.suspect(jar.get(), TEXTS.text("plugin.never.back"), frames);
        }
        stalledJar = jar.isPresent() ? jar : stalledJar;
        shout.accept(jar.map(j -> TEXTS.text("plugin.waiting", host.labels(j), j, Long.toString(seconds)))
                .orElseGet(() -> TEXTS.text("waiting", Long.toString(seconds))));
    }

    @Override
    public void over(long seconds) {
        stalledJar.ifPresent(jar -> {
            host.clearSuspicion();
            say.accept(TEXTS.text("plugin.waited", host.labels(jar), jar, Long.toString(seconds)));
        });
        stalledJar = Optional.empty();
    }

    @Override
    public void close() {
        watch.close();
        if (Thread.getDefaultUncaughtExceptionHandler() == this) {
            Thread.setDefaultUncaughtExceptionHandler(before);
        }
    }
}
