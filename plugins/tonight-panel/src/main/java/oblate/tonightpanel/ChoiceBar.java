/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.BorderLayout;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import oblate.sky.PlanetModel;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.FlowingRow;
import oblate.workbench.words.Texts;

/** Planet, place and date; night or month; and what may be done with the plan. */
final class ChoiceBar extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(ChoiceBar.class);
    private final transient List<PlanetModel> known;
    private final JComboBox<String> planets = new JComboBox<>();
    private final JTextField date = new JTextField(9);
    private final JToggleButton night = new JToggleButton(TEXTS.text("bar.night"), true);
    private final JToggleButton month = new JToggleButton(TEXTS.text("bar.month"));
    private final JPanel deeds = new JPanel(new MigLayout("insets 0, gap 8"));
    private boolean filling;

    /** What happens when something is chosen. */
    interface Listener {
        /** Planet or night and month. */
        void changed();

        /** One night or month back (negative) or on. */
        void stepped(int direction);

        /** A date was typed. */
        void dated(LocalDate evening);

        /** The coming night is wanted. */
        void tonight();
    }

    ChoiceBar(List<PlanetModel> known, PlaceChoice place, SmearBar smear, Listener listener, Consumer<String> say) {
        super(new BorderLayout());
        this.known = List.copyOf(known);
        setOpaque(false);
        known.forEach(p -> planets.addItem(p.label()));
        planets.setName("tonight.planet");
        planets.setToolTipText(TEXTS.text("planet.tip"));
        planets.getAccessibleContext().setAccessibleName(TEXTS.text("planet.name"));
        planets.addActionListener(e -> {
            if (!filling) {
                listener.changed();
            }
        });
        date.setName("tonight.date");
        date.setToolTipText(TEXTS.text("date.tip"));
        date.getAccessibleContext().setAccessibleName(TEXTS.text("date.name"));
        date.addActionListener(e -> {
            try {
                listener.dated(LocalDate.parse(date.getText().strip()));
            } catch (DateTimeException wrong) {
                say.accept(TEXTS.text("date.wrong", date.getText()));
            }
        });
        JButton tonight = button("tonight.now", "bar.tonight");
        tonight.addActionListener(e -> listener.tonight());
        ButtonGroup group = new ButtonGroup();
        night.setName("tonight.night.toggle");
        month.setName("tonight.month.toggle");
        month.setToolTipText(TEXTS.text("bar.month.tip"));
        for (JToggleButton toggle : List.of(night, month)) {
            group.add(toggle);
            toggle.addActionListener(e -> listener.changed());
        }
        deeds.setOpaque(false);
        FlowingRow row = new FlowingRow(true);
        row.add(together(planets, place));
        row.add(together(step("‹", -1, listener::stepped), date, step("›", 1, listener::stepped), tonight));
        row.add(together(night, month));
        row.add(smear);
        row.add(deeds);
        add(row, BorderLayout.CENTER);
    }

    /** Parts that stay in one line. */
    private static JPanel together(JComponent... parts) {
        JPanel group = new JPanel(new MigLayout("insets 0, gap 4, hidemode 3"));
        group.setOpaque(false);
        for (JComponent part : parts) {
            group.add(part);
        }
        return group;
    }

    private static JButton button(String name, String key) {
        JButton button = new JButton(TEXTS.text(key));
        button.setName(name);
        button.setToolTipText(TEXTS.text(key + ".tip"));
        return button;
    }

    private static JButton step(String sign, int direction, IntConsumer listener) {
        JButton button = new JButton(sign);
        button.setName(direction < 0 ? "tonight.before" : "tonight.after");
        button.setToolTipText(TEXTS.text(direction < 0 ? "before.tip" : "after.tip"));
        button.getAccessibleContext().setAccessibleName(button.getToolTipText());
        button.addActionListener(e -> listener.accept(direction));
        return button;
    }

    /** Adds a button for a thing that may be done with the plan shown. */
    void offer(String name, Deed deed) {
        JButton button = new JButton(deed);
        button.setName(name);
        button.setToolTipText(Deed.tooltip(deed));
        deeds.add(button);
    }

    PlanetModel planet() {
        return known.get(Math.max(0, planets.getSelectedIndex()));
    }

    /** Chooses without telling. */
    void choose(PlanetModel planet) {
        filling = true;
        planets.setSelectedItem(planet.label());
        filling = false;
    }

    boolean isMonth() {
        return month.isSelected();
    }

    void showNight() {
        night.setSelected(true);
    }

    void showDate(LocalDate evening) {
        date.setText(evening.toString());
    }
}
