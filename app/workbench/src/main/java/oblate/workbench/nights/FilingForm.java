/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import oblate.archive.FilingFacts;
import oblate.archive.Rating;
import oblate.archive.Site;
import oblate.image.TimeMeaning;
import oblate.image.TimeWish;
import oblate.sky.PlanetModel;
import oblate.workbench.PanelContext;
import oblate.workbench.PanelSettings;
import oblate.workbench.look.FlowingRow;
import oblate.workbench.look.Theme;
import oblate.workbench.look.TypingBox;
import oblate.workbench.words.Texts;

/** What is said once for all files that were dropped; what was said last time is there already. */
final class FilingForm extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(FilingForm.class);
    private static final List<String> SCALES = List.of("Pickering", "Antoniadi");
    private static final String FILES_SAY = TEXTS.text("filing.files.say");
    private static final String NOT_SAID = TEXTS.text("filing.not.said");
    private static final int LONGEST_CAPTURE_S = 86_400;
    private final transient PanelContext context;
    private final JComboBox<String> planet = new JComboBox<>();
    private final JComboBox<String> site = new JComboBox<>();
    private final JComboBox<String> kit = new TypingBox();
    private final JTextField observer = new JTextField(12);
    private final JTextField filter = new JTextField(8);
    private final JTextField seeing = new JTextField(3);
    private final JComboBox<String> scale = new JComboBox<>(SCALES.toArray(String[]::new));
    private final JComboBox<String> zone = new TypingBox();
    private final JComboBox<String> meaning = new JComboBox<>(
            new String[] {NOT_SAID, TEXTS.text("filing.start"), TEXTS.text("filing.middle"), TEXTS.text("filing.end")});
    private final JTextField length = new JTextField(4);
    private final JCheckBox undated = new JCheckBox(TEXTS.text("filing.undated"));
    private boolean filling;

    /**
     * @param whenChanged called when something was said that may change what the files mean
     */
    FilingForm(PanelContext context, Runnable whenChanged) {
        super(new MigLayout("insets 0, gap 0 2, fillx, wrap 1", "[grow,fill]"));
        this.context = context;
        setOpaque(false);
        planet.setName("filing.planet");
        zone.setName("filing.zone");
        undated.setName("filing.undated");
        undated.setOpaque(false);
        FlowingRow facts = row();
        facts.add(field(FactField.PLANET.label(), planet, "w 140!"));
        facts.add(field(FactField.SITE.label(), site, "w 150!"));
        facts.add(field(FactField.KIT.label(), kit, "w 170!"));
        facts.add(field(FactField.OBSERVER.label(), observer, "w 130!"));
        facts.add(field(FactField.FILTER.label(), filter, "w 80!"));
        JPanel rating = new JPanel(new MigLayout("insets 0, gap 4"));
        rating.setOpaque(false);
        rating.add(seeing, "w 48!");
        rating.add(scale);
        facts.add(field(FactField.SEEING.label(), rating, ""));
        FlowingRow times = row();
        times.add(together(new JLabel(TEXTS.text("filing.zone.before")), zone));
        times.add(together(new JLabel(TEXTS.text("filing.meaning.before")), meaning));
        times.add(together(
                new JLabel(TEXTS.text("filing.length.before")), length, new JLabel(TEXTS.text("filing.length.after"))));
        times.add(undated);
        Runnable tell = () -> {
            if (!filling) {
                whenChanged.run();
            }
        };
        for (JComboBox<String> box : List.of(planet, zone, meaning)) {
            box.addActionListener(e -> tell.run());
        }
        length.getDocument().addDocumentListener(new Typed(tell));
        undated.addActionListener(e -> tell.run());
    }

    private FlowingRow row() {
        FlowingRow row = new FlowingRow(false, 0);
        add(row, "wmin 0");
        return row;
    }

    /** Parts that stay in one line. */
    private static JPanel together(JComponent... parts) {
        JPanel group = new JPanel(new MigLayout("insets 0, gap 6"));
        group.setOpaque(false);
        for (JComponent part : parts) {
            group.add(part, part instanceof JTextField ? "w 48!" : part instanceof TypingBox ? "w 150!" : "");
        }
        return group;
    }

    private static JPanel field(String name, JComponent component, String constraint) {
        JPanel cell = new JPanel(new MigLayout("insets 0, gap 0 2, wrap 1"));
        cell.setOpaque(false);
        JLabel label = new JLabel(name);
        label.setFont(Theme.bodyFont(-2));
        label.setLabelFor(component);
        cell.add(label);
        cell.add(component, constraint);
        return cell;
    }

    /** Puts in what was said last time. */
    void begin() {
        filling = true;
        PanelSettings settings = context.settings();
        fill(
                planet,
                context.workbench().planets().stream().map(PlanetModel::label).toList(),
                planetLabel(settings.text("filing.planet", "")),
                FILES_SAY);
        zone.removeAllItems();
        List.of(NOT_SAID, "UTC", ZoneId.systemDefault().getId()).stream()
                .distinct()
                .forEach(zone::addItem);
        // Earlier versions kept the shown word where nothing was said.
        String kept = settings.text("filing.zone", "");
        zone.setSelectedItem(kept.isBlank() || zoneId(kept).isEmpty() ? NOT_SAID : kept);
        observer.setText(settings.text("observer", ""));
        scale.setSelectedItem(settings.text("scale", SCALES.get(0)));
        undated.setSelected(false);
        filling = false;
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
                            fill(site, names.get(0), settings.text("site", ""), NOT_SAID);
                            fill(kit, names.get(1), settings.text("kit", ""), "");
                        });
    }

    private static void fill(JComboBox<String> box, List<String> names, String chosen, String none) {
        box.removeAllItems();
        box.addItem(none);
        names.forEach(box::addItem);
        box.setSelectedItem(names.contains(chosen) ? chosen : none);
    }

    /** Remembers what was said, for the next time. */
    void keep() {
        PanelSettings settings = context.settings();
        settings.keep("filing.planet", planetId().orElse(""));
        settings.keep("filing.zone", zoneId().map(ZoneId::getId).orElse(""));
        settings.keep("site", site.getSelectedIndex() > 0 ? text(site) : "");
        settings.keep("kit", text(kit));
        settings.keep("observer", observer.getText());
        settings.keep("scale", text(scale));
    }

    /** Why what was said cannot be used, one sentence. */
    Optional<String> fault() {
        if (!text(zone).equals(NOT_SAID) && !text(zone).isBlank() && zoneId().isEmpty()) {
            return Optional.of(TEXTS.text("filing.no.zone", text(zone)));
        }
        if (!length.getText().isBlank() && lengthS().isEmpty()) {
            return Optional.of(TEXTS.text("fact.no.length", length.getText()));
        }
        return Optional.empty();
    }

    private Optional<ZoneId> zoneId() {
        return zoneId(text(zone));
    }

    private static Optional<ZoneId> zoneId(String text) {
        try {
            return said(text).filter(z -> !z.equals(NOT_SAID)).map(ZoneId::of);
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private OptionalDouble lengthS() {
        String typed = length.getText().strip();
        if (!typed.matches("\\d{1,5}(\\.\\d{1,3})?")) {
            return OptionalDouble.empty();
        }
        double seconds = Double.parseDouble(typed);
        return seconds > 0 && seconds < LONGEST_CAPTURE_S ? OptionalDouble.of(seconds) : OptionalDouble.empty();
    }

    private Optional<String> planetId() {
        return context.workbench().planets().stream()
                .filter(p -> p.label().equals(planet.getSelectedItem()))
                .map(PlanetModel::id)
                .findFirst();
    }

    /** What a planet is called here, by its id or, as earlier versions kept it, by what it was called. */
    private String planetLabel(String kept) {
        return context.workbench().planets().stream()
                .filter(p -> p.id().equals(kept) || p.label().equals(kept))
                .map(PlanetModel::label)
                .findFirst()
                .orElse(FILES_SAY);
    }

    /** What was said. */
    FilingFacts facts() {
        Optional<TimeMeaning> moment = meaning.getSelectedIndex() <= 0
                ? Optional.empty()
                : Optional.of(TimeMeaning.values()[meaning.getSelectedIndex() - 1]);
        return new FilingFacts(
                planetId(),
                site.getSelectedIndex() > 0 ? said(text(site)) : Optional.empty(),
                said(observer.getText()),
                said(text(kit)),
                said(filter.getText()),
                said(seeing.getText()).map(v -> new Rating(v, text(scale))),
                Optional.empty(),
                Optional.empty(),
                new TimeWish(Optional.empty(), zoneId(), moment, lengthS(), Optional.empty()),
                undated.isSelected());
    }

    private static String text(JComboBox<String> box) {
        return box.getSelectedItem() == null ? "" : box.getSelectedItem().toString();
    }

    private static Optional<String> said(String text) {
        return Optional.of(text.strip()).filter(t -> !t.isEmpty());
    }
}
