/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.table;

import java.awt.BorderLayout;
import java.awt.event.HierarchyEvent;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JRadioButton;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.MarkSearch;
import oblate.base.Progress;
import oblate.report.ReportFormat;
import oblate.sky.PlanetModel;
import oblate.workbench.Job;
import oblate.workbench.PanelContext;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Choices on the left, the page on the right, and what would embarrass beneath the choices. */
final class ReportView extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(ReportView.class);
    private static final String OWN = TEXTS.text("report.own");
    private static final String ALL_NIGHTS = TEXTS.text("report.nights");
    private static final Instant NEVER = Instant.parse("9999-01-01T00:00:00Z");
    private static final int LONGEST_SHOWN = 400_000;
    private final transient PanelContext context;
    private final JRadioButton positions = new JRadioButton(TEXTS.text("report.positions"), true);
    private final JRadioButton drifts = new JRadioButton(TEXTS.text("report.drifts"));
    private final JComboBox<String> from = new JComboBox<>();
    private final JComboBox<String> to = new JComboBox<>();
    private final JComboBox<String> system = new JComboBox<>();
    private final JComboBox<String> format = new JComboBox<>();
    private final JTextArea page = new JTextArea();
    private final JTextArea worries = new JTextArea();
    private final JLabel rows = new JLabel(" ");
    private final JLabel columnsHeading = new JLabel(TEXTS.text("report.columns"));
    private final JLabel worriesHeading = new JLabel(TEXTS.text("report.worries"));
    private final ColumnChoice columns;
    private final transient PageKeeping keeping;
    private transient Optional<Page> written = Optional.empty();
    private transient Optional<Job> writing = Optional.empty();
    private boolean filling;
    private boolean stale = true;

    ReportView(PanelContext context) {
        super(new BorderLayout());
        this.context = context;
        columns = new ColumnChoice(context.settings(), this::write);
        keeping = new PageKeeping(this, context, () -> written);
        setOpaque(false);
        add(choices(), BorderLayout.WEST);
        page.setName("report.page");
        page.setEditable(false);
        page.getAccessibleContext().setAccessibleName(TEXTS.text("report.page"));
        page.setFont(Theme.figureFont(-1));
        page.setMargin(new java.awt.Insets(16, 16, 16, 16));
        JScrollPane scroll = new JScrollPane(page);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        add(scroll, BorderLayout.CENTER);
        context.workbench().reportFormats().forEach(f -> format.addItem(f.label()));
        context.workbench().reportFormats().stream()
                .filter(f -> f.id().equals(context.settings().text("format", "text")))
                .findFirst()
                .ifPresent(f -> format.setSelectedItem(f.label()));
        format.addActionListener(e -> write());
        context.shelf().whenChanged(this::read);
        context.whenLookChanged(this::lookChanged);
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0 && isShowing() && stale) {
                read();
            }
        });
    }

    private JPanel choices() {
        JPanel left = new JPanel(new MigLayout(
                "insets 16, gap 8 8, wrap 2, fill", "[][grow,fill]", "[][][][][][][][grow,fill][][grow,top]"));
        left.setOpaque(false);
        ButtonGroup group = new ButtonGroup();
        for (JRadioButton button : List.of(positions, drifts)) {
            group.add(button);
            button.addActionListener(e -> write());
            left.add(button, "span 2");
        }
        positions.setName("report.positions");
        drifts.setName("report.drifts");
        from.setName("report.from");
        List.of(from, to, system).forEach(box -> box.addActionListener(e -> write()));
        row(left, "report.from", from);
        row(left, "report.to", to);
        row(left, "report.system", system);
        row(left, "report.layout", format);
        columnsHeading.putClientProperty("FlatLaf.styleClass", "h4");
        left.add(columnsHeading, "span 2");
        left.add(columns, "span 2, grow");
        left.add(buttons(), "span 2, growx");
        worries.setName("report.worries");
        worries.setEditable(false);
        worries.setFocusable(false);
        worries.setOpaque(false);
        worries.setLineWrap(true);
        worries.setWrapStyleWord(true);
        worries.setBorder(null);
        worries.setMargin(new java.awt.Insets(0, 0, 0, 0));
        JPanel foot = new JPanel(new MigLayout("insets 0, gap 6, wrap 1, fill", "[grow,fill]", "[][][grow,fill]"));
        foot.setOpaque(false);
        foot.add(rows);
        worriesHeading.putClientProperty("FlatLaf.styleClass", "h4");
        foot.add(worriesHeading);
        JScrollPane scroll = new JScrollPane(worries);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setOpaque(false);
        scroll.getViewport().setOpaque(false);
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        foot.add(scroll, "h 60::, grow");
        left.add(foot, "span 2, grow, wmin 0, w 250!");
        return left;
    }

    private static void row(JPanel left, String key, JComponent field) {
        JLabel label = new JLabel(TEXTS.text(key));
        label.setLabelFor(field);
        left.add(label);
        left.add(field, "w 160!");
    }

    private JPanel buttons() {
        JPanel some = new JPanel(new MigLayout("insets 0, gap 6, fillx, wrap 2", "[grow,fill,sg][grow,fill,sg]"));
        some.setOpaque(false);
        List<Deed> deeds = List.of(
                Deed.of(TEXTS, "report.save", () -> chosenFormat().ifPresent(f -> keeping.save(f, kind()))),
                Deed.of(TEXTS, "report.copy", keeping::copy),
                Deed.of(TEXTS, "report.send", () -> keeping.noteSent(kind())));
        for (Deed deed : deeds) {
            JButton button = new JButton(deed);
            button.setName(deed.id());
            button.setToolTipText(Deed.tooltip(deed));
            some.add(button);
            context.offer(deed);
        }
        return some;
    }

    private void read() {
        if (!isShowing()) {
            stale = true;
            return;
        }
        stale = false;
        filling = true;
        TreeSet<LocalDate> nights = new TreeSet<>();
        context.shelf().pictures().stream()
                .map(ArchivedPicture::night)
                .flatMap(Optional::stream)
                .forEach(nights::add);
        refill(from, nights);
        refill(to, nights);
        Object chosen = system.getSelectedItem();
        system.removeAllItems();
        system.addItem(OWN);
        context.planet().globe().systems().forEach(s -> system.addItem(s.label()));
        system.setSelectedItem(chosen == null ? OWN : chosen);
        filling = false;
        write();
    }

    private static void refill(JComboBox<String> box, TreeSet<LocalDate> nights) {
        Object chosen = box.getSelectedItem();
        box.removeAllItems();
        box.addItem(ALL_NIGHTS);
        nights.forEach(n -> box.addItem(n.toString()));
        box.setSelectedItem(chosen == null ? ALL_NIGHTS : chosen);
    }

    private String kind() {
        return drifts.isSelected() ? "drifts" : "positions";
    }

    private void write() {
        if (filling || !isShowing()) {
            return;
        }
        Optional<ReportFormat> chosen = chosenFormat();
        if (chosen.isEmpty()) {
            page.setText(TEXTS.text("report.no.formats"));
            return;
        }
        context.settings().keep("format", chosen.get().id());
        PlanetModel planet = context.planet();
        PageWish wish = new PageWish(
                drifts.isSelected(),
                planet,
                search(planet),
                planet.globe().systems().stream()
                        .filter(s -> s.label().equals(system.getSelectedItem()))
                        .findFirst(),
                chosen.get(),
                columns.leftOut(kind()));
        writing.ifPresent(Job::stop);
        writing = Optional.empty();
        if (wish.drifts()) {
            writing = Optional.of(context.background()
                    .run(TEXTS.text("report.writing"), p -> Page.of(context.archive(), wish, p), this::show));
        } else {
            context.background().promptly(() -> Page.of(context.archive(), wish, Progress.SILENT), this::show);
        }
    }

    private Optional<ReportFormat> chosenFormat() {
        return context.workbench().reportFormats().stream()
                .filter(f -> f.label().equals(format.getSelectedItem()))
                .findFirst();
    }

    /** From the first picture of the first night to the last one of the last. */
    private MarkSearch search(PlanetModel planet) {
        Optional<LocalDate> first = night(from);
        Optional<LocalDate> last = night(to);
        List<Instant> times = context.shelf().pictures().stream()
                .filter(p -> p.night().isPresent() && p.time().isPresent())
                .filter(p -> first.isEmpty() || !p.night().get().isBefore(first.get()))
                .filter(p -> last.isEmpty() || !p.night().get().isAfter(last.get()))
                .map(p -> p.time().get().midUtc())
                .sorted()
                .toList();
        Optional<Instant> start = first.map(n -> times.isEmpty() ? NEVER : times.get(0));
        Optional<Instant> end = last.map(
                n -> times.isEmpty() ? NEVER : times.get(times.size() - 1).plusMillis(1));
        return new MarkSearch(Optional.of(planet.id()), Optional.empty(), Optional.empty(), start, end, false);
    }

    private static Optional<LocalDate> night(JComboBox<String> box) {
        Object chosen = box.getSelectedItem();
        return chosen == null || chosen.equals(ALL_NIGHTS)
                ? Optional.empty()
                : Optional.of(LocalDate.parse(chosen.toString()));
    }

    private void show(Page made) {
        written = Optional.of(made);
        String text = made.text();
        page.setText(
                text.length() > LONGEST_SHOWN
                        ? text.substring(0, LONGEST_SHOWN) + "\n" + TEXTS.text("report.more")
                        : text);
        page.setCaretPosition(0);
        rows.setText(
                made.rows() == 1
                        ? TEXTS.text("report.rows.one")
                        : TEXTS.text("report.rows", Integer.toString(made.rows())));
        columns.show(kind(), made.columns());
        columnsHeading.setText(columns.words());
        boolean calm = made.worries().isEmpty();
        String none = TEXTS.text(made.rows() == 0 ? "report.nothing" : "report.no.worries");
        worries.setText(calm ? none : String.join("\n\n", made.worries()));
        worries.setCaretPosition(0);
        colour();
    }

    private void lookChanged() {
        page.setFont(Theme.figureFont(-1));
        colour();
    }

    private void colour() {
        boolean calm = written.filter(w -> !w.worries().isEmpty()).isEmpty();
        rows.setForeground(context.palette().quietInk());
        worries.setForeground(
                calm ? context.palette().quietInk() : context.palette().alarm());
    }
}
