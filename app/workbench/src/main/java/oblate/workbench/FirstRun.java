/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Font;
import java.awt.GraphicsEnvironment;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.function.Function;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Placing;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The small window before the first archive is open: where the pictures are to live, or the sample season. */
public final class FirstRun {
    private static final Texts TEXTS = Texts.of(FirstRun.class);
    private static final int WIDTH = 496;
    private static final int INSET = 14;
    private static final String CATALOG = "catalog.db";

    /** What a person chose. */
    public sealed interface Choice {}

    /**
     * An archive to open, or to make in an empty or new folder.
     *
     * @param folder its folder
     */
    public record InFolder(Path folder) implements Choice {}

    /** The sample season. */
    public record Sample() implements Choice {}

    private final Path usual;
    private final Theme theme;
    private final CompletableFuture<Optional<Choice>> chosen = new CompletableFuture<>();
    private final JFrame frame = new JFrame(TEXTS.text("first.title"));
    private final JTextArea problem;

    private FirstRun(Path usual, Theme theme, String told) {
        this.usual = usual;
        this.theme = theme;
        this.problem = words(told, WIDTH);
    }

    /**
     * Asks where to begin. Not on the event thread.
     *
     * @param usual folder offered for a new archive
     * @param settingsFolder where the window keeps its theme: eyes that are used to the dark are spared here too
     * @param told what went wrong with the last choice; empty for nothing
     * @return empty when the window was closed
     * @throws ProblemException with {@link WorkbenchProblem#NO_SCREEN}
     */
    public static Optional<Choice> ask(Path usual, Path settingsFolder, String told) {
        if (GraphicsEnvironment.isHeadless()) {
            throw new ProblemException(WorkbenchProblem.NO_SCREEN);
        }
        CompletableFuture<FirstRun> made = new CompletableFuture<>();
        Theme theme = Look.kept(new DeskSettings(settingsFolder));
        SwingUtilities.invokeLater(() -> {
            theme.install();
            FirstRun first = new FirstRun(usual, theme, told);
            first.show();
            made.complete(first);
        });
        try {
            return made.get().chosen.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        }
    }

    private void show() {
        Palette colours = theme.palette();
        JPanel all = new JPanel(new MigLayout("insets 28 32 24 32, gap 0 8, wrap 1", "[" + WIDTH + "!,fill]"));
        all.setBackground(colours.ground());
        JLabel heading = new JLabel(TEXTS.text("first.heading"));
        heading.setFont(Theme.headFont(7));
        all.add(heading, "gapbottom 4");
        JTextArea what = words(TEXTS.text("first.words"), WIDTH);
        what.setForeground(colours.quietInk());
        all.add(what, "gapbottom 12");
        all.add(way("first.sample", TEXTS.text("first.sample.words"), () -> choose(new Sample())));
        all.add(way("first.new", TEXTS.text("first.new.words", usual.toString()), this::make));
        all.add(way("first.open", TEXTS.text("first.open.words"), this::open));
        problem.setForeground(colours.alarm());
        problem.setName("first.problem");
        all.add(problem, "gaptop 6");
        JButton leave = new JButton(TEXTS.text("first.leave"));
        leave.setName("first.leave");
        leave.addActionListener(e -> end(Optional.empty()));
        all.add(leave, "gaptop 6, right, growx 0");
        frame.setContentPane(all);
        frame.setName("first");
        frame.setIconImages(AppIcon.images());
        frame.setDefaultCloseOperation(JFrame.DO_NOTHING_ON_CLOSE);
        frame.addWindowListener(new java.awt.event.WindowAdapter() {
            @Override
            public void windowClosing(java.awt.event.WindowEvent e) {
                end(Optional.empty());
            }
        });
        frame.getRootPane()
                .registerKeyboardAction(
                        e -> end(Optional.empty()),
                        javax.swing.KeyStroke.getKeyStroke("ESCAPE"),
                        JComponent.WHEN_IN_FOCUSED_WINDOW);
        Placing.over(frame, null);
        frame.setVisible(true);
    }

    private JComponent way(String id, String explained, Runnable deed) {
        JPanel way = new JPanel(
                new MigLayout("insets 10 " + INSET + " 10 " + INSET + ", gap 0 3, wrap 1, fillx", "[grow,fill]"));
        way.setBackground(theme.palette().raised());
        way.setBorder(BorderFactory.createLineBorder(theme.palette().line()));
        JButton button = new JButton(TEXTS.text(id));
        button.setName(id);
        button.setFont(button.getFont().deriveFont(Font.BOLD));
        button.addActionListener(e -> deed.run());
        button.getAccessibleContext().setAccessibleDescription(explained);
        way.add(button, "growx 0, wmin 220");
        JTextArea why = words(explained, WIDTH - 2 * INSET - 2);
        why.setForeground(theme.palette().quietInk());
        way.add(why, "wmin 0");
        return way;
    }

    /** Words wrapped at a width, whose height is known before they are laid out. */
    private static JTextArea words(String text, int widthPx) {
        JTextArea area = new JTextArea(text);
        area.setEditable(false);
        area.setFocusable(false);
        area.setOpaque(false);
        area.setLineWrap(true);
        area.setWrapStyleWord(true);
        area.setBorder(BorderFactory.createEmptyBorder());
        area.setFont(Theme.bodyFont(0));
        area.setSize(widthPx, Short.MAX_VALUE);
        return area;
    }

    private void make() {
        folder(usual).ifPresent(folder -> choose(new InFolder(folder)));
    }

    private void open() {
        folder(usual).ifPresent(folder -> {
            if (Files.isRegularFile(folder.resolve(CATALOG))) {
                choose(new InFolder(folder));
            } else {
                problem.setText(TEXTS.text("first.nothing", folder.toString()));
                frame.pack();
            }
        });
    }

    private Optional<Path> folder(Path first) {
        JFileChooser chooser = new JFileChooser();
        chooser.setName("first.folder");
        chooser.setDialogTitle(TEXTS.text("first.choose"));
        chooser.setFileSelectionMode(JFileChooser.DIRECTORIES_ONLY);
        chooser.setSelectedFile(first.toFile());
        return chooser.showOpenDialog(frame) == JFileChooser.APPROVE_OPTION
                ? Optional.of(chooser.getSelectedFile().toPath())
                : Optional.empty();
    }

    private void choose(Choice choice) {
        end(Optional.of(choice));
    }

    private void end(Optional<Choice> choice) {
        frame.dispose();
        chosen.complete(choice);
    }

    /**
     * Does long work before a window is open, with its progress shown and a way to stop it. Not on the event thread.
     *
     * @param work runs on the calling thread
     * @return what came of it; empty when it was stopped
     */
    public static <T> Optional<T> prepare(Function<Progress, T> work) {
        Preparing shown = new Preparing();
        SwingUtilities.invokeLater(shown::show);
        try {
            T result = work.apply(shown);
            return shown.isCancelled() ? Optional.empty() : Optional.of(result);
        } finally {
            SwingUtilities.invokeLater(shown::end);
        }
    }

    /** A bar with a few words. */
    private static final class Preparing implements Progress {
        private final JFrame frame = new JFrame(TEXTS.text("first.title"));
        private final JProgressBar bar = new JProgressBar(0, 1000);
        private final JLabel doing = new JLabel(" ");
        private volatile boolean stopped;
        private volatile long lastToldMs;

        void show() {
            JPanel all = new JPanel(new MigLayout("insets 24, gap 8, wrap 1", "[440!,fill]"));
            all.add(new JLabel(TEXTS.text("prepare.title")));
            bar.setName("prepare.bar");
            all.add(bar);
            all.add(doing);
            JButton stop = new JButton(TEXTS.text("prepare.stop"));
            stop.setName("prepare.stop");
            stop.addActionListener(e -> {
                stopped = true;
                stop.setEnabled(false);
            });
            all.add(stop, "growx 0, right");
            frame.setContentPane(all);
            frame.setName("prepare");
            frame.setIconImages(AppIcon.images());
            frame.setDefaultCloseOperation(JFrame.DO_NOTHING_ON_CLOSE);
            Placing.over(frame, null);
            frame.setVisible(true);
        }

        void end() {
            frame.dispose();
        }

        @Override
        public void report(long done, long total, String message) {
            long now = System.currentTimeMillis();
            if (now - lastToldMs < 50) {
                return;
            }
            lastToldMs = now;
            SwingUtilities.invokeLater(() -> {
                bar.setIndeterminate(total <= 0);
                bar.setValue(total <= 0 ? 0 : (int) (1000 * done / total));
                doing.setText(message.isEmpty() ? " " : message);
            });
        }

        @Override
        public boolean isCancelled() {
            return stopped;
        }
    }
}
