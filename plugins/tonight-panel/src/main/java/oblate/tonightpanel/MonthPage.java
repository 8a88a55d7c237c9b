/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.BorderLayout;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanNight;
import oblate.workbench.Background;
import oblate.workbench.Job;
import oblate.workbench.look.Palette;
import oblate.workbench.words.Texts;

/** The nights of a month, each shown as soon as it is planned. Planning can be stopped; the newest wish wins. */
final class MonthPage extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(MonthPage.class);
    private final transient Supplier<Palette> palette;
    private final transient Background background;
    private final transient PlanFinder finder;
    private final JLabel title = new JLabel(" ");
    private final JLabel said = new JLabel(" ");
    private final JProgressBar progress = new JProgressBar();
    private final JButton stop = new JButton(TEXTS.text("month.stop"));
    private final MonthTable table;
    private final transient Consumer<Plan> whenPlanned;
    /** Counts the months asked for. */
    private int round;

    private transient Optional<Job> job = Optional.empty();
    private transient Optional<Plan> plan = Optional.empty();

    MonthPage(
            Supplier<Palette> palette,
            Background background,
            PlanFinder finder,
            Consumer<LocalDate> goTo,
            Consumer<Plan> whenPlanned) {
        super(new BorderLayout());
        this.palette = palette;
        this.background = background;
        this.finder = finder;
        this.whenPlanned = whenPlanned;
        setOpaque(false);
        title.setName("tonight.month.title");
        title.putClientProperty("FlatLaf.styleClass", "h3");
        said.setName("tonight.month.said");
        stop.setName("tonight.month.stop");
        stop.setToolTipText(TEXTS.text("month.stop.tip"));
        stop.addActionListener(e -> job.ifPresent(Job::stop));
        stop.setVisible(false);
        progress.setName("tonight.month.progress");
        progress.getAccessibleContext().setAccessibleName(TEXTS.text("month.progress.name"));
        progress.setVisible(false);
        table = new MonthTable(palette, goTo);
        JPanel head = new JPanel(new MigLayout("insets 4 16 8 16, gap 12 2, fillx, hidemode 3", "[][grow,fill][][]"));
        head.setOpaque(false);
        head.add(title);
        head.add(said, "wmin 0");
        head.add(progress, "w 140!");
        head.add(stop);
        add(head, BorderLayout.NORTH);
        JScrollPane scroll = new JScrollPane(table);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        add(scroll, BorderLayout.CENTER);
    }

    /** Plans a month; one under way is stopped. */
    void ask(Asked asked, YearMonth month) {
        job.ifPresent(Job::stop);
        plan = Optional.empty();
        table.show(List.of());
        title.setText(TEXTS.text(
                "title",
                asked.planet().label(),
                month.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " " + month.getYear()));
        said.setForeground(palette.get().quietInk());
        progress.setMaximum(month.lengthOfMonth());
        planned(0);
        int mine = ++round;
        Job begun = background.run(
                TEXTS.text("month.job", month),
                told -> finder.month(asked, month, told, night -> SwingUtilities.invokeLater(() -> take(mine, night))),
                this::show);
        job = Optional.of(begun);
        stop.setVisible(true);
        progress.setVisible(true);
        begun.whenEnded(() -> ended(begun));
    }

    /** A night of the month that is being planned; one of a month asked for before is not wanted any more. */
    private void take(int of, PlanNight night) {
        if (of == round) {
            table.add(night);
            planned(table.getRowCount());
        }
    }

    private void planned(int nights) {
        progress.setValue(nights);
        said.setText(TEXTS.text("month.planning", Integer.toString(nights), Integer.toString(progress.getMaximum())));
    }

    private void ended(Job which) {
        if (job.equals(Optional.of(which))) {
            job = Optional.empty();
            stop.setVisible(false);
            progress.setVisible(false);
            said.setText(
                    which.isCancelled()
                            ? TEXTS.text(
                                    "month.stopped",
                                    Integer.toString(table.getRowCount()),
                                    Integer.toString(progress.getMaximum()))
                            : TEXTS.text("month.failed"));
        }
    }

    private void show(Plan made) {
        plan = Optional.of(made);
        table.show(made.nights());
        long with = made.nights().stream().filter(n -> !n.windows().isEmpty()).count();
        said.setText(
                with == 0
                        ? made.nextWindow()
                                .map(d -> TEXTS.text("month.said.next", d))
                                .orElse(TEXTS.text("month.said.never"))
                        : TEXTS.text(
                                        with == 1 ? "month.said.one" : "month.said.many",
                                        Long.toString(with),
                                        Integer.toString(made.nights().size()))
                                + " " + TEXTS.text("month.utc"));
        whenPlanned.accept(made);
    }

    /** Takes the colours of the present theme. */
    void followLook() {
        said.setForeground(palette.get().quietInk());
        table.repaint();
    }

    /** The month shown; none while it is being planned or when that was stopped. */
    Optional<Plan> plan() {
        return plan;
    }
}
