/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.BorderLayout;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import oblate.archive.Site;
import oblate.sky.PlanetModel;
import oblate.workbench.look.FlowingRow;
import oblate.workbench.words.Texts;

/** What is looked at: planet, place, span; and which way up the drawings are. */
final class MoonsBar extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(MoonsBar.class);
    private final transient List<PlanetModel> known;
    private final JComboBox<String> planets = new JComboBox<>();
    private final JComboBox<String> sites = new JComboBox<>();
    private final JComboBox<Stretch> stretches = new JComboBox<>(Stretch.values());
    private final JTextField date = new JTextField(9);
    private final JComboBox<Facing> facings = new JComboBox<>(Facing.values());
    private final JCheckBox mirrored = new JCheckBox(TEXTS.text("mirrored"));
    private transient List<Site> sitesKnown = List.of();
    private boolean sitesShown;
    private boolean filling;

    /** What happens when something is chosen. */
    interface Listener {
        /** Planet, place or length of the span. */
        void asked();

        /** So many spans back (negative) or on. */
        void stepped(int direction);

        /** A date was typed. */
        void dated(LocalDate evening);

        /** Which way up. */
        void faced();
    }

    MoonsBar(List<PlanetModel> known, Facing facing, Listener listener, Consumer<String> say) {
        super(new BorderLayout());
        this.known = List.copyOf(known);
        setOpaque(false);
        known.forEach(p -> planets.addItem(p.label()));
        sites.addItem(TEXTS.text("site.earth"));
        facings.setSelectedItem(facing);
        name(planets, "planet");
        name(sites, "site");
        name(stretches, "stretch");
        name(date, "date");
        name(facings, "facing");
        name(mirrored, "mirrored");
        for (JComboBox<?> box : List.of(planets, sites, stretches)) {
            box.addActionListener(e -> {
                if (!filling) {
                    listener.asked();
                }
            });
        }
        date.addActionListener(e -> {
            try {
                listener.dated(LocalDate.parse(date.getText().strip()));
            } catch (DateTimeException wrong) {
                say.accept(TEXTS.text("date.wrong", date.getText()));
            }
        });
        facings.addActionListener(e -> listener.faced());
        mirrored.addActionListener(e -> listener.faced());
        FlowingRow row = new FlowingRow(false);
        row.add(planets);
        row.add(together(sites));
        row.add(stretches);
        row.add(together(step("‹", -1, listener), date, step("›", 1, listener)));
        row.add(facings);
        row.add(mirrored);
        add(row, BorderLayout.CENTER);
    }

    /** Parts that stay in one line; none is wider than a name of some length needs. */
    private static JPanel together(JComponent... parts) {
        JPanel group = new JPanel(new MigLayout("insets 0, gap 8"));
        group.setOpaque(false);
        for (JComponent part : parts) {
            group.add(part, "wmax 200");
        }
        return group;
    }

    /** Gives a part its name, what a screen reader says, and its tip. */
    static void name(JComponent part, String key) {
        part.setName("moons." + key);
        part.getAccessibleContext().setAccessibleName(TEXTS.text(key + ".name"));
        part.setToolTipText(TEXTS.text(key + ".tip"));
    }

    private static JButton step(String sign, int direction, Listener listener) {
        JButton button = new JButton(sign);
        button.setName(direction < 0 ? "moons.before" : "moons.after");
        button.setToolTipText(TEXTS.text(direction < 0 ? "before.tip" : "after.tip"));
        button.getAccessibleContext().setAccessibleName(button.getToolTipText());
        button.addActionListener(e -> listener.stepped(direction));
        return button;
    }

    /** Offers an archive's sites and chooses one by name; the Earth's centre when there is none of it. */
    void showSites(List<Site> found, String wish) {
        filling = true;
        sitesKnown = List.copyOf(found);
        sitesShown = true;
        sites.removeAllItems();
        sites.addItem(TEXTS.text("site.earth"));
        sitesKnown.forEach(s -> sites.addItem(s.name()));
        filling = false;
        chooseSite(wish);
    }

    /** Whether the archive's sites were shown already, be there none. */
    boolean knowsSites() {
        return sitesShown;
    }

    /** Chooses without telling; a name that is not known changes nothing. */
    void chooseSite(String name) {
        filling = true;
        if (sitesKnown.stream().anyMatch(s -> s.name().equals(name))) {
            sites.setSelectedItem(name);
        }
        filling = false;
    }

    /** Chooses without telling; a planet that is not offered changes nothing. */
    void choosePlanet(String id) {
        filling = true;
        known.stream().filter(p -> p.id().equals(id)).findFirst().ifPresent(p -> planets.setSelectedItem(p.label()));
        filling = false;
    }

    void showDate(LocalDate evening) {
        date.setText(evening.toString());
    }

    PlanetModel planet() {
        return known.get(Math.max(0, planets.getSelectedIndex()));
    }

    /** The place; none for the Earth's centre. */
    Optional<Site> site() {
        int index = sites.getSelectedIndex() - 1;
        return index >= 0 && index < sitesKnown.size() ? Optional.of(sitesKnown.get(index)) : Optional.empty();
    }

    Stretch stretch() {
        return (Stretch) stretches.getSelectedItem();
    }

    Facing facing() {
        return (Facing) facings.getSelectedItem();
    }

    boolean isMirrored() {
        return mirrored.isSelected();
    }
}
