/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.event.ActionEvent;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.SpinnerNumberModel;
import net.miginfocom.swing.MigLayout;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelSettings;
import oblate.workbench.look.FoldSection;
import oblate.workbench.look.Palette;
import oblate.workbench.pictures.FactList;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/** The figures for the instant, with the two things a person enters: length of a capture, and a longitude. */
final class FactsColumn extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(FactsColumn.class);
    private static final String WIDE = "wmin 0";
    private final transient Supplier<Palette> palette;
    private final transient PanelSettings settings;
    private final JPanel planet = place();
    private final JPanel site = place();
    private final JPanel smear = place();
    private final JPanel crossing = place();
    private final JSpinner capture;
    private final JSpinner longitude;
    private final JComboBox<String> systems = new JComboBox<>();
    private final FoldSection siteSection;
    private transient Runnable whenChanged = () -> {};
    private transient Optional<PlanetModel> of = Optional.empty();
    private boolean filling;

    FactsColumn(Supplier<Palette> palette, PanelSettings settings) {
        super(new MigLayout("insets 4 0 4 0, gap 0, wrap 1, fillx", "[grow,fill]"));
        this.palette = palette;
        this.settings = settings;
        setOpaque(false);
        capture = new JSpinner(new SpinnerNumberModel(settings.number("capture.s", 120), 1, 7200, 10));
        capture.setName("moons.capture");
        capture.getAccessibleContext().setAccessibleName(TEXTS.text("capture.name"));
        longitude = new JSpinner(new SpinnerNumberModel(settings.number("longitude.deg", 0), 0, 360, 1.0));
        longitude.setName("moons.longitude");
        longitude.getAccessibleContext().setAccessibleName(TEXTS.text("longitude.name"));
        systems.getAccessibleContext().setAccessibleName(TEXTS.text("system.name"));
        capture.addChangeListener(e -> entered());
        longitude.addChangeListener(e -> entered());
        systems.addActionListener((ActionEvent e) -> {
            if (!filling) {
                entered();
            }
        });
        siteSection = new FoldSection(TEXTS.text("section.site"), site);
        add(new FoldSection(TEXTS.text("section.planet"), planet), WIDE);
        add(siteSection, WIDE);
        JPanel smears = place();
        JPanel seconds = new JPanel(new MigLayout("insets 0, gap 6"));
        seconds.setOpaque(false);
        seconds.add(new JLabel(TEXTS.text("capture.label")));
        seconds.add(capture, "w 80!");
        seconds.add(new JLabel(TEXTS.text("capture.unit")));
        smears.add(seconds);
        smears.add(smear);
        add(new FoldSection(TEXTS.text("section.smear"), smears), WIDE);
        JPanel crossings = place();
        JPanel wanted = new JPanel(new MigLayout("insets 0, gap 6"));
        wanted.setOpaque(false);
        wanted.add(longitude, "w 80!");
        wanted.add(new JLabel("°"));
        wanted.add(systems);
        crossings.add(wanted);
        crossings.add(crossing);
        add(new FoldSection(TEXTS.text("section.crossing"), crossings), WIDE);
    }

    private static JPanel place() {
        JPanel place = new JPanel(new MigLayout("insets 0, gap 4, wrap 1, fillx", "[grow,fill]"));
        place.setOpaque(false);
        return place;
    }

    private void entered() {
        settings.keep("capture.s", ((Number) capture.getValue()).intValue());
        settings.keep("longitude.deg", Math.round(longitudeDeg()));
        whenChanged.run();
    }

    /** Called when a person enters something. */
    void whenChanged(Runnable listener) {
        whenChanged = listener;
    }

    /** Length of a capture (s). */
    double captureS() {
        return ((Number) capture.getValue()).doubleValue();
    }

    /** The longitude whose crossing is asked (deg). */
    double longitudeDeg() {
        return ((Number) longitude.getValue()).doubleValue();
    }

    /** The system of that longitude. */
    RotationSystem system(PlanetModel model) {
        if (!of.equals(Optional.of(model))) {
            of = Optional.of(model);
            filling = true;
            systems.removeAllItems();
            model.globe().systems().forEach(s -> systems.addItem(s.label()));
            systems.setSelectedItem(SystemLabel.usual(model).label());
            filling = false;
        }
        return model.globe().systems().stream()
                .filter(s -> s.label().equals(systems.getSelectedItem()))
                .findFirst()
                .orElseGet(() -> SystemLabel.usual(model));
    }

    void show(InstantFacts facts, Optional<String> siteName) {
        fill(planet, facts.planet());
        fill(smear, facts.smear());
        fill(crossing, facts.crossing());
        siteSection.setTitle(
                siteName.map(n -> TEXTS.text("section.site.named", n)).orElseGet(() -> TEXTS.text("section.site")));
        if (siteName.isPresent()) {
            FactList list = list(facts.site());
            facts.caution().ifPresent(list::alarm);
            put(site, list);
        } else {
            put(site, new FactList(palette).remark(TEXTS.text("site.none")));
        }
    }

    void showProblem(String sentence) {
        put(planet, new FactList(palette).alarm(sentence));
        for (JPanel other : List.of(site, smear, crossing)) {
            put(other, new FactList(palette));
        }
    }

    private void fill(JPanel place, List<InstantFacts.Line> lines) {
        put(place, list(lines));
    }

    private FactList list(List<InstantFacts.Line> lines) {
        FactList list = new FactList(palette);
        for (InstantFacts.Line line : lines) {
            if (line.name().isEmpty()) {
                list.remark(line.value());
            } else {
                list.figure(line.name(), line.value());
            }
        }
        return list;
    }

    private static void put(JPanel place, FactList list) {
        place.removeAll();
        place.add(list, WIDE);
        place.revalidate();
        place.repaint();
    }
}
