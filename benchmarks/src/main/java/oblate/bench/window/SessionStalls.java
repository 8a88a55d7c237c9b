/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench.window;

import java.awt.AWTEvent;
import java.awt.Component;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.awt.event.MouseEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.JTextField;
import oblate.archive.ArchivedPicture;
import oblate.workbench.Workbench;
import oblate.workbench.look.Theme;

/** Plays a session on an archive and prints the longest dispatches of the event thread: how long, during which step, and where it was. */
public final class SessionStalls {
    private static final int SHOWN = 12;
    private final BenchWindow window;
    private final List<Stall> stalls = new ArrayList<>();
    private volatile String step = "opening";
    private volatile long dispatchedNs;
    private volatile String where = "";
    private volatile Thread watched;

    /** One dispatch. */
    private record Stall(double ms, String step, String where) {}

    private SessionStalls(Path archive, Path settings) {
        Thread watch = new Thread(this::look, "stall-look");
        Toolkit.getDefaultToolkit().getSystemEventQueue().push(new Timed());
        watch.setDaemon(true);
        watch.start();
        window = new BenchWindow(BenchWindow.context(archive, settings));
    }

    /**
     * Plays the session.
     *
     * @param words folder of an archive with fitted pictures, such as that of the sample season; it is changed by nothing but fits
     */
    public static void main(String[] words) throws java.io.IOException {
        Path settings = Files.createTempDirectory("session");
        new SessionStalls(Path.of(words[0]), settings).play();
        System.exit(0);
    }

    private void play() {
        Workbench desk = window.workbench();
        List<ArchivedPicture> pictures = BenchWindow.ask(() -> desk.shelf().pictures());
        for (String panel :
                List.of("nights", "measure", "nights", "longitude-date", "moons", "report", "plug-ins", "nights")) {
            act("showing " + panel, () -> desk.showPanel(panel));
        }
        act("typing a search", () -> window.find("search").ifPresent(s -> ((JTextField) s).setText("jupiter")));
        act("clearing the search", () -> window.find("search").ifPresent(s -> ((JTextField) s).setText("")));
        for (int i = 0; i < Math.min(12, pictures.size()); i++) {
            long id = pictures.get(i * pictures.size() / 12 % pictures.size()).id();
            act("opening a picture", () -> desk.openPicture(id));
            act("moving over the picture", this::sweep);
        }
        for (Theme theme : Theme.values()) {
            act("look " + theme.label(), () -> desk.setTheme(theme));
        }
        // The event thread goes on adding to its own list.
        List<Stall> all = BenchWindow.ask(() -> new ArrayList<>(stalls));
        all.sort(Comparator.comparingDouble(Stall::ms).reversed());
        System.out.println(all.size() + " dispatches; longest:");
        all.stream()
                .limit(SHOWN)
                .forEach(s -> System.out.printf(Locale.ROOT, "%7.1f ms  %-26s %s%n", s.ms(), s.step(), s.where()));
    }

    private void act(String what, Runnable deed) {
        step = what;
        // find() asks the event thread itself, so deeds that use it are run from here.
        if (what.contains("search") || what.contains("moving")) {
            deed.run();
        } else {
            BenchWindow.ask(() -> {
                deed.run();
                return true;
            });
        }
        window.settle();
    }

    private void sweep() {
        Component canvas = window.find("canvas").orElseThrow();
        for (int i = 0; i < 60; i++) {
            int x = canvas.getWidth() * i / 60;
            int y = canvas.getHeight() / 3 + i;
            Toolkit.getDefaultToolkit()
                    .getSystemEventQueue()
                    .postEvent(new MouseEvent(
                            canvas, MouseEvent.MOUSE_MOVED, System.currentTimeMillis(), 0, x, y, 0, false));
            BenchWindow.pause(4);
        }
    }

    /** Looks every few milliseconds where a long dispatch is. */
    private void look() {
        while (true) {
            BenchWindow.pause(10);
            long since = dispatchedNs;
            if (since != 0 && watched != null && System.nanoTime() - since > 60_000_000 && where.isEmpty()) {
                where = Stream.of(watched.getStackTrace())
                        .filter(f -> f.getClassName().startsWith("oblate.")
                                && !f.getClassName().contains("bench"))
                        .limit(3)
                        .map(f -> f.getClassName().replaceAll(".*\\.", "") + "." + f.getMethodName())
                        .collect(Collectors.joining(" < "));
            }
        }
    }

    /** Times every dispatch. */
    private final class Timed extends EventQueue {
        @Override
        protected void dispatchEvent(AWTEvent event) {
            long begun = System.nanoTime();
            where = "";
            watched = Thread.currentThread();
            dispatchedNs = begun;
            try {
                super.dispatchEvent(event);
            } finally {
                dispatchedNs = 0;
                stalls.add(new Stall((System.nanoTime() - begun) / 1e6, step, where));
            }
        }
    }
}
