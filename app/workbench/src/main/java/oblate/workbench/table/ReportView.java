/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.table;

import java.awt.BorderLayout;
import java.awt.Toolkit;
import java.awt.datatransfer.StringSelection;
import java.awt.event.HierarchyEvent;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JDialog;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JRadioButton;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.MarkSearch;
import oblate.archive.StoredMark;
import oblate.base.ProblemException;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.report.ReportFormat;
import oblate.report.ReportTable;
import oblate.report.Reports;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchProblem;
import oblate.workbench.look.Theme;

/** Choices on the left, the page on the right, and what would embarrass beneath the choices. */
final class ReportView extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final String OWN = "each feature’s own";
    private static final String ALL_NIGHTS = "all nights";
    private static final Instant NEVER = Instant.parse("9999-01-01T00:00:00Z");
    private static final int LONGEST_SHOWN = 400_000;
    private final transient PanelContext context;
    private final JRadioButton positions = new JRadioButton("Positions: one row per mark", true);
    private final JRadioButton drifts = new JRadioButton("Drifts: one row per feature");
    private final JComboBox<String> from = new JComboBox<>();
    private final JComboBox<String> to = new JComboBox<>();
    private final JComboBox<String> system = new JComboBox<>();
    private final JComboBox<String> format = new JComboBox<>();
    private final JTextArea page = new JTextArea();
    private final JTextArea worries = new JTextArea();
    private final JLabel rows = new JLabel(" ");
    private transient String written = "";
    private boolean filling;
    private boolean stale = true;

    /** The page, how many rows it has, and what would embarrass. */
    private record Page(String text, int rows, String worries) {}

    ReportView(PanelContext context) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        add(choices(), BorderLayout.WEST);
        page.setName("report.page");
        page.setEditable(false);
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
        context.whenLookChanged(() -> page.setFont(Theme.figureFont(-1)));
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0 && isShowing() && stale) {
                read();
            }
        });
    }

    private JPanel choices() {
        JPanel left = new JPanel(new MigLayout("insets 16, gap 8 8, wrap 2, fillx", "[][grow,fill]"));
        left.setOpaque(false);
        ButtonGroup group = new ButtonGroup();
        for (JRadioButton button : List.of(positions, drifts)) {
            group.add(button);
            button.addActionListener(e -> write());
            left.add(button, "span 2");
        }
        from.setName("report.from");
        from.addActionListener(e -> write());
        to.addActionListener(e -> write());
        system.addActionListener(e -> write());
        left.add(new JLabel("From night"));
        left.add(from);
        left.add(new JLabel("To night"));
        left.add(to);
        left.add(new JLabel("System"));
        left.add(system);
        left.add(new JLabel("Layout"));
        left.add(format, "w 170!");
        JButton save = new JButton("Save …");
        save.setName("report.save");
        save.setToolTipText("Writes the page to a file, in UTF-8");
        save.addActionListener(e -> save());
        JButton copy = new JButton("Copy");
        copy.setToolTipText("Puts the page on the clipboard");
        copy.addActionListener(
                e -> Toolkit.getDefaultToolkit().getSystemClipboard().setContents(new StringSelection(written), null));
        left.add(save, "span 2, split 2, growx");
        left.add(copy, "growx");
        left.add(rows, "span 2");
        worries.setEditable(false);
        worries.setFocusable(false);
        worries.setOpaque(false);
        worries.setLineWrap(true);
        worries.setWrapStyleWord(true);
        worries.setBorder(null);
        left.add(worries, "span 2, growx, wmin 0, gaptop 8");
        return left;
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

    private void write() {
        if (filling || !isShowing()) {
            return;
        }
        Optional<ReportFormat> chosen = chosenFormat();
        if (chosen.isEmpty()) {
            page.setText("No way to write tables is installed; see Plug-ins.");
            return;
        }
        context.settings().keep("format", chosen.get().id());
        PlanetModel planet = context.planet();
        Optional<RotationSystem> asked = planet.globe().systems().stream()
                .filter(s -> s.label().equals(system.getSelectedItem()))
                .findFirst();
        MarkSearch search = search(planet);
        boolean ofDrifts = drifts.isSelected();
        context.background().promptly(() -> page(planet, search, asked, chosen.get(), ofDrifts), this::show);
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

    private Page page(
            PlanetModel planet,
            MarkSearch search,
            Optional<RotationSystem> asked,
            ReportFormat chosen,
            boolean ofDrifts) {
        List<String> worry = new ArrayList<>();
        ReportTable table;
        if (ofDrifts) {
            table = new Reports().drifts(planet, fitted(planet, asked, worry));
        } else {
            table = new Reports().positions(context.archive(), planet, search, asked);
            worry.addAll(worriesOf(search));
        }
        StringWriter out = new StringWriter();
        try {
            chosen.write(table, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Page(out.toString(), table.rows().size(), String.join("\n\n", worry));
    }

    private List<Drift> fitted(PlanetModel planet, Optional<RotationSystem> asked, List<String> worry) {
        List<Drift> fits = new ArrayList<>();
        for (LongitudeSeries series : new MarkSeries().ofArchive(context.archive(), planet, asked)) {
            try {
                Drift drift = new DriftFitter().fit(series);
                fits.add(drift);
                drift.warnings().forEach(w -> worry.add(series.feature() + ": " + w));
            } catch (ProblemException e) {
                worry.add(e.getMessage());
            }
        }
        return fits;
    }

    private List<String> worriesOf(MarkSearch search) {
        List<String> worry = new ArrayList<>();
        List<StoredMark> marks = context.archive().marks(search);
        long unnamed = marks.stream().filter(m -> m.featureName().isEmpty()).count();
        if (unnamed > 0) {
            worry.add(unnamed + (unnamed == 1 ? " mark has" : " marks have") + " no name yet.");
        }
        long noObserver = context.archive().pictures(oblate.archive.PictureSearch.all()).stream()
                .filter(p -> p.markCount() > 0 && p.observer().isEmpty())
                .count();
        if (noObserver > 0) {
            worry.add(noObserver + (noObserver == 1 ? " measured picture names" : " measured pictures name")
                    + " no observer.");
        }
        return worry;
    }

    private void show(Page made) {
        written = made.text();
        page.setText(
                written.length() > LONGEST_SHOWN
                        ? written.substring(0, LONGEST_SHOWN) + "\n… the file has the rest"
                        : written);
        page.setCaretPosition(0);
        rows.setText(made.rows() == 1 ? "1 row" : made.rows() + " rows");
        rows.setForeground(context.palette().quietInk());
        worries.setText(made.worries());
        worries.setForeground(context.palette().alarm());
    }

    private void save() {
        Optional<ReportFormat> chosen = chosenFormat();
        if (chosen.isEmpty()) {
            return;
        }
        String name = context.planet().id()
                + (drifts.isSelected() ? "-drifts." : "-positions.")
                + chosen.get().suffix();
        JFileChooser chooser = new JFileChooser(context.settings().text("folder", "."));
        chooser.setSelectedFile(new java.io.File(chooser.getCurrentDirectory(), name));
        chooser.setDialogType(JFileChooser.SAVE_DIALOG);
        JDialog dialog = new JDialog(SwingUtilities.getWindowAncestor(this), "Save the table");
        dialog.setModal(false);
        chooser.addActionListener(e -> {
            if (e.getActionCommand().equals(JFileChooser.APPROVE_SELECTION)) {
                context.settings().keep("folder", chooser.getCurrentDirectory());
                saveTo(chooser.getSelectedFile().toPath());
            }
            dialog.dispose();
        });
        dialog.add(chooser);
        dialog.pack();
        dialog.setLocationRelativeTo(this);
        dialog.setVisible(true);
    }

    private void saveTo(Path file) {
        String text = written;
        context.background()
                .quietly(
                        () -> {
                            try {
                                return Files.writeString(file, text, StandardCharsets.UTF_8);
                            } catch (IOException e) {
                                throw new ProblemException(e, WorkbenchProblem.NOT_SAVED, file, e.getMessage());
                            }
                        },
                        saved -> context.say("Saved " + saved + "."));
    }
}
