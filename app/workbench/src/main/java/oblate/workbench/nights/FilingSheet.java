/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import oblate.archive.FilingFacts;
import oblate.archive.Rating;
import oblate.archive.Site;
import oblate.image.TimeMeaning;
import oblate.image.TimeWish;
import oblate.sky.PlanetModel;
import oblate.workbench.PanelContext;
import oblate.workbench.PanelSettings;

/** Asks once what holds for all files that were dropped; what was said last time is there already. */
final class FilingSheet extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final List<String> SCALES = List.of("Pickering", "Antoniadi");
    private final transient PanelContext context;
    private final JLabel heading = new JLabel();
    private final JComboBox<String> planet = new JComboBox<>();
    private final JComboBox<String> site = new JComboBox<>();
    private final JComboBox<String> kit = new JComboBox<>();
    private final JTextField observer = new JTextField(12);
    private final JTextField filter = new JTextField(8);
    private final JTextField seeing = new JTextField(3);
    private final JComboBox<String> scale = new JComboBox<>(SCALES.toArray(String[]::new));
    private final JComboBox<String> meaning =
            new JComboBox<>(new String[] {"not said", "start of capture", "middle of capture", "end of capture"});
    private final JButton file = new JButton("File them");
    private transient List<Path> paths = List.of();

    /** What a person decided. */
    record Order(List<Path> paths, FilingFacts facts) {}

    FilingSheet(PanelContext context, Consumer<Order> whenOrdered, Runnable whenLeft) {
        super(new MigLayout("insets 12 16 12 16, gap 8 6, fillx", "[]12[]12[]12[]12[]12[]push[]", "[][][]"));
        this.context = context;
        setName("filing");
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        add(heading, "span, wrap");
        kit.setEditable(true);
        field("Planet", planet, "w 120!");
        field("Site", site, "w 150!");
        field("Kit", kit, "w 170!");
        field("Observer", observer, "w 130!");
        field("Filter", filter, "w 80!");
        JPanel rating = new JPanel(new MigLayout("insets 0, gap 4"));
        rating.setOpaque(false);
        rating.add(seeing);
        rating.add(scale);
        field("Seeing", rating, "");
        add(new JLabel("Times of files that do not say which moment they mean are the"), "newline, span, split 4");
        add(meaning, "");
        JButton leave = new JButton("Leave it");
        leave.setToolTipText("Files nothing  (Esc)");
        leave.addActionListener(e -> whenLeft.run());
        file.setName("file");
        file.setToolTipText("Copies them unaltered into the archive  (Enter)");
        file.addActionListener(e -> order(whenOrdered));
        add(file, "gapleft push");
        add(leave);
        key("enter", KeyEvent.VK_ENTER, file::doClick);
        key("leave", KeyEvent.VK_ESCAPE, whenLeft);
    }

    private void field(String name, JComponent component, String constraint) {
        JPanel cell = new JPanel(new MigLayout("insets 0, gap 0 2, wrap 1"));
        cell.setOpaque(false);
        JLabel label = new JLabel(name);
        label.setFont(oblate.workbench.look.Theme.bodyFont(-2));
        label.setLabelFor(component);
        cell.add(label);
        cell.add(component, constraint);
        add(cell);
    }

    private void key(String name, int code, Runnable deed) {
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke(code, 0), name);
        getActionMap().put(name, new javax.swing.AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(java.awt.event.ActionEvent e) {
                deed.run();
            }
        });
    }

    void ask(List<Path> dropped) {
        paths = List.copyOf(dropped);
        setBackground(context.palette().raised());
        setBorder(BorderFactory.createMatteBorder(0, 0, 1, 0, context.palette().line()));
        heading.setText(
                dropped.size() == 1
                        ? "File “" + dropped.get(0).getFileName() + "”"
                        : "File " + dropped.size() + " files and folders");
        fill(
                planet,
                context.workbench().planets().stream().map(PlanetModel::label).toList(),
                context.planet().label(),
                "as the files say");
        PanelSettings settings = context.settings();
        context.background()
                .quietly(
                        () -> List.of(
                                context.archive().sites().stream()
                                        .map(Site::name)
                                        .toList(),
                                context.archive().kits().stream()
                                        .map(k -> k.name())
                                        .toList()),
                        names -> {
                            fill(site, names.get(0), settings.text("site", ""), "not said");
                            fill(kit, names.get(1), settings.text("kit", ""), "");
                        });
        observer.setText(settings.text("observer", ""));
        scale.setSelectedItem(settings.text("scale", SCALES.get(0)));
        file.requestFocusInWindow();
    }

    private static void fill(JComboBox<String> box, List<String> names, String chosen, String none) {
        box.removeAllItems();
        box.addItem(none);
        names.forEach(box::addItem);
        box.setSelectedItem(names.contains(chosen) ? chosen : none);
    }

    private void order(Consumer<Order> whenOrdered) {
        PanelSettings settings = context.settings();
        settings.keep("site", text(site));
        settings.keep("kit", text(kit));
        settings.keep("observer", observer.getText());
        settings.keep("scale", text(scale));
        Optional<String> planetId = context.workbench().planets().stream()
                .filter(p -> p.label().equals(planet.getSelectedItem()))
                .map(PlanetModel::id)
                .findFirst();
        Optional<String> siteName = site.getSelectedIndex() > 0 ? said(text(site)) : Optional.empty();
        Optional<TimeMeaning> moment = meaning.getSelectedIndex() == 0
                ? Optional.empty()
                : Optional.of(TimeMeaning.values()[meaning.getSelectedIndex() - 1]);
        whenOrdered.accept(new Order(
                paths,
                new FilingFacts(
                        planetId,
                        siteName,
                        said(observer.getText()),
                        said(text(kit)),
                        said(filter.getText()),
                        said(seeing.getText()).map(v -> new Rating(v, text(scale))),
                        Optional.empty(),
                        Optional.empty(),
                        new TimeWish(
                                Optional.empty(), Optional.empty(), moment, OptionalDouble.empty(), Optional.empty()),
                        false)));
    }

    private static String text(JComboBox<String> box) {
        return box.getSelectedItem() == null ? "" : box.getSelectedItem().toString();
    }

    private static Optional<String> said(String text) {
        return Optional.of(text.strip()).filter(t -> !t.isEmpty());
    }
}
