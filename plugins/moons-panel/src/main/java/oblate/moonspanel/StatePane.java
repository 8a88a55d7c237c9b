/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.event.HierarchyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.SeenState;
import oblate.drift.timing.MoonState;
import oblate.sky.UtcTime;
import oblate.workbench.NewestOnly;
import oblate.workbench.PanelContext;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.FlowingRow;
import oblate.workbench.words.Texts;

/**
 * Where a person says what is seen in the pictures about an event: clear of the limb, on it, gone … Each word is a new row of the archive; undoing says the earlier
 * word again.
 */
final class StatePane extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(StatePane.class);
    private static final int NEXT_PICTURES = 6;
    private final transient PanelContext context;
    private final transient StateDesk desk;
    private final transient NewestOnly<List<StateLine>, List<String>> results;
    private final JComboBox<String> choice = new JComboBox<>();
    private final JPanel buttons = new FlowingRow(false);
    private final StateTable table;
    private final PicturePeek peek;
    private final JTextArea hint = new JTextArea(2, 40);
    private final JLabel result = new JLabel(" ");
    private transient List<MoonEvent> events = List.of();
    private transient List<SeenState> known = List.of();
    private transient Optional<Found> found = Optional.empty();
    private transient Optional<UtcTime> at = Optional.empty();
    private boolean filling;
    private boolean stale = true;

    /** @param whenChosen gets the event that a person chooses here */
    StatePane(PanelContext context, Consumer<Happening> whenChosen) {
        super(new MigLayout("insets 0, gap 0, fill, hidemode 3", "[grow,fill][30%,fill]", "[][][][grow,fill][]"));
        this.context = context;
        desk = new StateDesk(
                context.archive(), context.sky(), context.workbench().measurer());
        results = new NewestOnly<>(context.background(), desk::results, this::tell, context::say);
        setOpaque(false);
        setName("moons.states");
        table = new StateTable(context::palette);
        peek = new PicturePeek(context);
        choice.setName("moons.states.event");
        choice.setToolTipText(TEXTS.text("states.event.tip"));
        choice.getAccessibleContext().setAccessibleName(TEXTS.text("states.event.name"));
        hint.setName("moons.states.hint");
        hint.setEditable(false);
        hint.setFocusable(false);
        hint.setOpaque(false);
        hint.setBorder(BorderFactory.createEmptyBorder());
        hint.setLineWrap(true);
        hint.setWrapStyleWord(true);
        result.setName("moons.states.result");
        add(choice, "wmin 0, gapleft 16, gapright 16, gaptop 6");
        add(peek, "spany 5, wmin 0, growy, wrap");
        add(hint, "wmin 0, gapleft 16, gapright 16, gaptop 6, wrap");
        add(buttons, "wmin 0, wrap");
        JScrollPane scroll = new JScrollPane(table);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        add(scroll, "wmin 0, hmin 60, wrap");
        add(result, "wmin 0, gapleft 16, gapright 16, gaptop 4, gapbottom 6");
        choice.addActionListener(e -> {
            if (!filling) {
                event().ifPresent(whenChosen);
                fillPictures(Optional.empty());
            }
        });
        table.getSelectionModel().addListSelectionListener(e -> peekAtChosen());
        Deed.of(TEXTS, "states.open", this::openChosen).bind(table, JComponent.WHEN_FOCUSED);
        table.addMouseListener(new MouseAdapter() {
            @Override
            public void mouseClicked(MouseEvent e) {
                if (e.getClickCount() == 2) {
                    openChosen();
                }
            }
        });
        context.edits().whenChanged(this::changed);
        context.shelf().whenChanged(this::changed);
        context.whenLookChanged(this::peekAtChosen);
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0) {
                refreshIfShowing();
                if (isShowing()) {
                    // the drawing and the inspector show the event whose pictures are listed here
                    event().ifPresent(whenChosen);
                }
            }
        });
    }

    /** The instant that is shown. */
    void instant(UtcTime moment) {
        at = Optional.of(moment);
    }

    /** The events of a span. */
    void show(Found now) {
        found = Optional.of(now);
        fillEvents();
    }

    /** An event is chosen elsewhere. */
    void choose(Optional<Happening> event) {
        event.filter(events::contains).ifPresent(e -> {
            filling = true;
            choice.setSelectedIndex(events.indexOf(e));
            filling = false;
            fillPictures(Optional.empty());
        });
    }

    private void changed() {
        stale = true;
        refreshIfShowing();
    }

    private void refreshIfShowing() {
        if (isShowing() && stale && found.isPresent()) {
            stale = false;
            String planet = found.get().wish().planet().id();
            context.background().quietly(() -> context.archive().seenStates(planet), this::take);
        }
    }

    private void take(List<SeenState> states) {
        known = states;
        fillPictures(table.chosen().map(StateLine::picture));
    }

    private Optional<MoonEvent> event() {
        int index = choice.getSelectedIndex();
        return index < 0 || index >= events.size() ? Optional.empty() : Optional.of(events.get(index));
    }

    private List<ArchivedPicture> near(MoonEvent event) {
        return NearPictures.near(
                context.shelf().pictures(),
                event.passage().planet(),
                event.from().toInstant(),
                event.to().toInstant());
    }

    private void fillEvents() {
        Optional<MoonEvent> before = event();
        events = found.stream()
                .flatMap(f -> f.events().stream())
                .filter(MoonEvent.class::isInstance)
                .map(MoonEvent.class::cast)
                .filter(e -> !near(e).isEmpty())
                .toList();
        filling = true;
        choice.removeAllItems();
        for (MoonEvent e : events) {
            choice.addItem(TEXTS.text(
                    "states.event",
                    e.moonName(),
                    e.what().toLowerCase(java.util.Locale.ROOT),
                    EventClock.day(e.from()),
                    EventClock.clock(e.to())));
        }
        before.filter(events::contains).or(this::likeliest).ifPresent(e -> choice.setSelectedIndex(events.indexOf(e)));
        filling = false;
        stale = true;
        refreshIfShowing();
        fillPictures(Optional.empty());
    }

    /** Of the events, the one nearest the instant shown, rather one that can be seen. */
    private Optional<MoonEvent> likeliest() {
        return events.stream()
                .min(Comparator.comparing((MoonEvent e) -> e.hindrance().isPresent())
                        .thenComparingDouble(e -> at.map(t -> Math.abs(e.mid().clockSecondsSince(t)))
                                .orElse(0.0)));
    }

    private void fillPictures(Optional<ArchivedPicture> chosen) {
        Optional<MoonEvent> event = event();
        boolean some = event.isPresent();
        hint.setText(TEXTS.text(some ? "states.hint" : "states.none"));
        choice.setVisible(some);
        List<StateLine> lines = event.map(e -> StateLine.of(e, near(e), known)).orElse(List.of());
        table.show(lines);
        lines.stream()
                .filter(l -> chosen.map(p -> p.id() == l.picture().id()).orElse(false))
                .findFirst()
                .ifPresent(table::choose);
        fillButtons(event);
        peekAtChosen();
        result.setText(" ");
        event.ifPresent(e -> results.ask(lines));
    }

    private void tell(List<String> said) {
        if (event().isPresent()) {
            result.setText(
                    said.isEmpty()
                            ? TEXTS.text("states.result.none")
                            : TEXTS.text("states.result.lead", String.join(", ", said)));
            result.setToolTipText(result.getText());
        }
    }

    private void fillButtons(Optional<MoonEvent> event) {
        buttons.removeAll();
        table.getActionMap().clear();
        Deed.of(TEXTS, "states.open", this::openChosen).bind(table, JComponent.WHEN_FOCUSED);
        event.ifPresent(e -> {
            List<MoonState> states = MoonState.about(StateDesk.phenomenon(e));
            for (int i = 0; i < states.size(); i++) {
                MoonState state = states.get(i);
                String words = TEXTS.text("state." + e.kind().id() + "." + state.id());
                button(state.id(), words, Integer.toString(i + 1), Optional.of(state));
            }
            button("back", TEXTS.text("states.take.back"), "0", Optional.empty());
        });
        buttons.revalidate();
        buttons.repaint();
    }

    private void button(String id, String words, String key, Optional<MoonState> state) {
        String keys = state.isPresent() ? key + ",NUMPAD" + key : key + ",NUMPAD" + key + ",DELETE";
        Deed deed = Deed.named("states.say." + id, words, keys, () -> say(state));
        deed.bind(table, JComponent.WHEN_FOCUSED);
        JButton button = new JButton(deed);
        button.setText(TEXTS.text("states.button", key, words));
        button.setName("moons.states.say." + id);
        button.setToolTipText(state.isPresent() ? Deed.tooltip(deed) : TEXTS.text("states.take.back.tip"));
        button.setFocusable(false);
        buttons.add(button);
    }

    private void say(Optional<MoonState> state) {
        List<StateLine> lines = table.allChosen();
        if (lines.isEmpty()) {
            context.say(TEXTS.text("states.choose"));
            return;
        }
        int last = table.getSelectionModel().getMaxSelectionIndex();
        if (lines.size() == 1 && last + 1 < table.getRowCount()) {
            table.setRowSelectionInterval(last + 1, last + 1);
            table.scrollRectToVisible(table.getCellRect(last + 1, 0, true));
        }
        context.edits().perform(() -> desk.say(lines, state), done -> {}, context::say);
    }

    private void openChosen() {
        table.chosen().ifPresent(l -> context.openPicture(l.picture().id()));
    }

    private void peekAtChosen() {
        List<StateLine> lines = table.shown();
        int row = table.getSelectedRow();
        List<ArchivedPicture> next = new ArrayList<>();
        for (int i = row + 1; row >= 0 && i < Math.min(lines.size(), row + 1 + NEXT_PICTURES); i++) {
            next.add(lines.get(i).picture());
        }
        peek.show(table.chosen().map(StateLine::picture), next);
    }
}
