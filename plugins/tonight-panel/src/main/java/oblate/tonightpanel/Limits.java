/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.List;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.SpinnerNumberModel;
import net.miginfocom.swing.MigLayout;
import oblate.sky.Twilight;
import oblate.workbench.PanelSettings;
import oblate.workbench.words.Texts;

/** How dark and how high it must be. */
final class Limits extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(Limits.class);
    private static final List<Twilight> AFTER =
            List.of(Twilight.DAY, Twilight.CIVIL, Twilight.NAUTICAL, Twilight.ASTRONOMICAL);
    private static final int USUAL_DEG = 20;
    private final JComboBox<String> after = new JComboBox<>();
    private final JSpinner least;

    Limits(PanelSettings settings, Runnable whenChanged) {
        super(new MigLayout("insets 0, gap 8 6, wrap 2", "[][]"));
        setOpaque(false);
        AFTER.forEach(t -> after.addItem(TEXTS.text("after." + t.word())));
        after.setName("tonight.after");
        after.getAccessibleContext().setAccessibleName(TEXTS.text("after.label"));
        after.setSelectedIndex(Math.max(0, Math.min(AFTER.size() - 1, settings.number("after", 1))));
        int kept = Math.max(0, Math.min(89, settings.number("least.deg", USUAL_DEG)));
        least = new JSpinner(new SpinnerNumberModel(kept, 0, 89, 5));
        least.setName("tonight.least");
        least.getAccessibleContext().setAccessibleName(TEXTS.text("least.label"));
        after.addActionListener(e -> {
            settings.keep("after", after.getSelectedIndex());
            whenChanged.run();
        });
        least.addChangeListener(e -> {
            settings.keep("least.deg", least.getValue());
            whenChanged.run();
        });
        add(new JLabel(TEXTS.text("after.label")));
        add(after);
        add(new JLabel(TEXTS.text("least.label")));
        add(least, "split 2, w 64!");
        add(new JLabel("°"));
    }

    /** The Sun's centre must be under this (deg). */
    double sunBelowDeg() {
        return AFTER.get(after.getSelectedIndex()).lowestDeg();
    }

    /** The planet's centre must be over this (deg). */
    double minAltitudeDeg() {
        return ((Number) least.getValue()).doubleValue();
    }
}
