/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.SpinnerNumberModel;
import net.miginfocom.swing.MigLayout;
import oblate.drift.plan.SmearLimit;
import oblate.workbench.PanelSettings;
import oblate.workbench.words.Texts;

/** The longest capture, and the smear it is for: degrees of rotation, or pixels of a scale. */
final class SmearBar extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(SmearBar.class);
    private static final double THOUSAND = 1000;
    private final transient PanelSettings settings;
    private final JLabel longest = new JLabel(" ");
    private final JSpinner deg;
    private final JSpinner px;
    private final JSpinner scale;
    private final JComboBox<String> units =
            new JComboBox<>(new String[] {TEXTS.text("smear.unit.deg"), TEXTS.text("smear.unit.px")});
    private final JLabel scaleLabel = new JLabel(TEXTS.text("smear.scale"));

    SmearBar(PanelSettings settings, Runnable whenChanged) {
        super(new MigLayout("insets 0, gap 6, hidemode 3"));
        this.settings = settings;
        setOpaque(false);
        deg = spinner("smear.deg", kept("smear.mdeg", 1), 0.1, 90, 0.1);
        px = spinner("smear.px", kept("smear.mpx", 1), 0.1, 100, 0.1);
        scale = spinner("scale", kept("scale.marcsec", 0.1), 0.01, 10, 0.01);
        longest.setName("tonight.longest");
        units.setName("tonight.smear.unit");
        units.getAccessibleContext().setAccessibleName(TEXTS.text("smear.unit.name"));
        units.setSelectedIndex(settings.flag("smear.inpx", false) ? 1 : 0);
        units.addActionListener(e -> changed(whenChanged));
        for (JSpinner spinner : new JSpinner[] {deg, px, scale}) {
            spinner.addChangeListener(e -> changed(whenChanged));
        }
        add(longest);
        add(new JLabel(TEXTS.text("smear.for")), "gapleft 2");
        add(deg, "w 66!");
        add(px, "w 66!");
        add(units);
        add(scaleLabel);
        add(scale, "w 72!");
        showUnits();
    }

    private double kept(String name, double otherwise) {
        return settings.number(name, (int) Math.round(THOUSAND * otherwise)) / THOUSAND;
    }

    private static JSpinner spinner(String key, double value, double least, double most, double step) {
        double start = Math.max(least, Math.min(most, value));
        JSpinner spinner = new JSpinner(new SpinnerNumberModel(start, least, most, step));
        spinner.setEditor(new JSpinner.NumberEditor(spinner, "0.###"));
        spinner.setName("tonight." + key);
        spinner.setToolTipText(TEXTS.text(key + ".tip"));
        name(spinner, key);
        return spinner;
    }

    private static void name(JComponent part, String key) {
        part.getAccessibleContext().setAccessibleName(TEXTS.text(key + ".name"));
    }

    private boolean inPx() {
        return units.getSelectedIndex() == 1;
    }

    private void showUnits() {
        deg.setVisible(!inPx());
        px.setVisible(inPx());
        scaleLabel.setVisible(inPx());
        scale.setVisible(inPx());
    }

    private void changed(Runnable whenChanged) {
        showUnits();
        revalidate();
        settings.keep("smear.inpx", inPx());
        settings.keep("smear.mdeg", Math.round(THOUSAND * number(deg)));
        settings.keep("smear.mpx", Math.round(THOUSAND * number(px)));
        settings.keep("scale.marcsec", Math.round(THOUSAND * number(scale)));
        whenChanged.run();
    }

    private static double number(JSpinner spinner) {
        return ((Number) spinner.getValue()).doubleValue();
    }

    SmearLimit limit() {
        return inPx() ? SmearLimit.ofPx(number(px), number(scale)) : SmearLimit.ofDeg(number(deg));
    }

    /** Says the longest capture, or why there is none. */
    void say(String text) {
        longest.setText(text);
    }
}
