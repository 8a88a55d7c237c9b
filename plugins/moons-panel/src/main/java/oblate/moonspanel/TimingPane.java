/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.event.HierarchyEvent;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import oblate.base.Progress;
import oblate.drift.timing.ArchiveMoons;
import oblate.drift.timing.MoonTimings;
import oblate.drift.timing.NightClock;
import oblate.drift.timing.Timing;
import oblate.drift.timing.Timings;
import oblate.sky.PlanetModel;
import oblate.workbench.Job;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Observed minus predicted over the season: the plot on the left, its rows on the right, what the chosen night says of its clock below. */
final class TimingPane extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(TimingPane.class);
    private final transient PanelContext context;
    private final transient Consumer<Timing> whenChosen;
    private final TimingPlot plot;
    private final TimingRows rows;
    private final JLabel head = new JLabel(" ");
    private final JTextArea clock = new JTextArea(2, 40);
    private transient Optional<PlanetModel> planet = Optional.empty();
    private transient Optional<Timings> shown = Optional.empty();
    private transient Optional<Job> job = Optional.empty();
    private boolean stale = true;

    /**
     * @param whenChosen told when a person chooses a timing
     * @param toStates shows the sheet in which states are said
     */
    TimingPane(PanelContext context, Consumer<Timing> whenChosen, Runnable toStates) {
        super(new MigLayout("insets 0, gap 0, fill", "[38%,fill][62%,fill]", "[][grow,fill][]"));
        this.context = context;
        this.whenChosen = whenChosen;
        setOpaque(false);
        setName("moons.timings");
        rows = new TimingRows(context::palette);
        plot = new TimingPlot(context::palette, rows::choose);
        head.setName("moons.timings.head");
        clock.setName("moons.timings.clock");
        clock.setEditable(false);
        clock.setFocusable(false);
        clock.setOpaque(false);
        clock.setLineWrap(true);
        clock.setWrapStyleWord(true);
        add(head, "span 2, split 2, gapleft 16, gaptop 4, gapbottom 4, wmin 0, growx, pushx");
        JButton states = new JButton(TEXTS.text("timings.states"));
        states.setName("moons.timings.states");
        states.setToolTipText(TEXTS.text("timings.states.tip"));
        states.addActionListener(e -> toStates.run());
        add(states, "gapright 8, gaptop 2, gapbottom 2, wrap");
        add(plot, "wmin 0, hmin 80");
        JScrollPane scroll = new JScrollPane(rows);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        add(scroll, "wmin 0, hmin 80, wrap");
        add(clock, "span 2, gapleft 16, gapright 16, gaptop 4, gapbottom 6, wmin 0");
        rows.getSelectionModel().addListSelectionListener(e -> {
            if (!e.getValueIsAdjusting()) {
                rows.chosen().ifPresent(this::choose);
            }
        });
        context.shelf().whenChanged(this::changed);
        context.edits().whenChanged(this::changed);
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0) {
                refreshIfShowing();
            }
        });
    }

    /** Another planet is looked at. */
    void show(PlanetModel wanted) {
        if (!planet.equals(Optional.of(wanted))) {
            planet = Optional.of(wanted);
            changed();
        }
    }

    private void changed() {
        stale = true;
        refreshIfShowing();
    }

    private void refreshIfShowing() {
        if (!isShowing() || !stale || planet.isEmpty()) {
            return;
        }
        stale = false;
        job.ifPresent(Job::stop);
        head.setText(TEXTS.text("timings.working"));
        PlanetModel of = planet.get();
        job = Optional.of(context.background()
                .run(TEXTS.text("timings.title", of.label()), progress -> work(of, progress), this::fill));
    }

    /** Timings, and what the plot and the table show of them. */
    private record Worked(Timings timings, List<Timing> brief, List<Timing> best) {}

    private Worked work(PlanetModel of, Progress progress) {
        ArchiveMoons.Found found =
                new ArchiveMoons(context.archive(), of).find(Set.of(), Optional.empty(), Optional.empty());
        Timings timings = new MoonTimings(context.sky(), of).of(found.places(), found.states(), progress);
        return new Worked(timings, timings.brief(), timings.best());
    }

    private void fill(Worked worked) {
        Timings timings = worked.timings();
        shown = Optional.of(timings);
        plot.choose(Optional.empty());
        plot.show(worked.best(), timings.nights());
        rows.show(worked.brief());
        head.setText(
                timings.events().isEmpty()
                        ? TEXTS.text("timings.empty", timings.planet().label())
                        : TEXTS.text(
                                "timings.head",
                                counted(
                                        "timings.count.one",
                                        "timings.count.many",
                                        worked.brief().size()),
                                counted(
                                        "timings.nights.one",
                                        "timings.nights.many",
                                        timings.nights().size())));
        clock.setText(timings.events().isEmpty() ? "" : TEXTS.text("timings.choose"));
    }

    private static String counted(String one, String many, int count) {
        return count == 1 ? TEXTS.text(one) : TEXTS.text(many, Integer.toString(count));
    }

    private void choose(Timing timing) {
        plot.choose(Optional.of(timing));
        clock.setFont(Theme.bodyFont(0));
        String night = shown.orElseThrow().nights().stream()
                .filter(n -> n.night().equals(timing.night()) && n.observer().equals(timing.observer()))
                .map(TimingPane::onScreen)
                .collect(Collectors.joining(" "));
        String doubts =
                timing.doubts().isEmpty() ? "" : TEXTS.text("timings.doubts", String.join("; ", timing.doubts())) + " ";
        String site = timing.site()
                .map(s -> TEXTS.text("timings.for.site", s))
                .orElseGet(() -> TEXTS.text("timings.for.centre"));
        clock.setText(doubts + night + " " + site);
        whenChosen.accept(timing);
    }

    private static String onScreen(NightClock night) {
        return night.words().replace("+- ", "± ").replaceAll("(?<=[ ,])-(?=\\d)", String.valueOf(Figures.MINUS));
    }
}
