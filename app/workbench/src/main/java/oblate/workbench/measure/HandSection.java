/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import oblate.disc.Placement;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The outline by hand in figures, with the errors its drawer states, and what may be done with it. */
final class HandSection extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(HandSection.class);
    private final transient HandOutline outline;
    private final JLabel figures = new JLabel();
    private final JTextField centre = new JTextField(5);
    private final JTextField radius = new JTextField(5);
    private final JTextField angle = new JTextField(5);
    private final JCheckBox mirrored = new JCheckBox(TEXTS.text("hand.mirrored"));
    private final JLabel wrong = new JLabel(" ");
    private boolean wasOpen;

    HandSection(HandOutline outline) {
        super(new MigLayout("insets 0, gap 4 6, wrap 3, fillx", "[][][grow]"));
        this.outline = outline;
        setOpaque(false);
        figures.setFont(Theme.figureFont(-1));
        figures.setName("hand.figures");
        add(figures, "span, wmin 0");
        field(TEXTS.text("hand.centre"), centre, TEXTS.text("hand.centre.after"), "hand.centre");
        field(TEXTS.text("hand.radius"), radius, TEXTS.text("hand.radius.after"), "hand.radius");
        field(TEXTS.text("hand.angle"), angle, "°", "hand.angle");
        mirrored.addActionListener(e -> outline.mirror());
        add(mirrored, "span");
        JPanel buttons = new JPanel(new MigLayout("insets 0, gap 4"));
        buttons.setOpaque(false);
        buttons.add(button(TEXTS.text("hand.keep"), "hand.keep", TEXTS.text("hand.keep.tip"), this::keep));
        buttons.add(button(TEXTS.text("hand.fit"), "hand.fit", TEXTS.text("hand.fit.tip"), outline::fitFromHere));
        buttons.add(button(TEXTS.text("hand.leave"), "hand.leave", TEXTS.text("hand.leave.tip"), outline::leave));
        add(buttons, "span");
        add(wrong, "span, wmin 0");
        JLabel keys = new JLabel(TEXTS.text("hand.words"));
        keys.setFont(Theme.bodyFont(-2));
        add(keys, "span, growx, wmin 0, wmax 340");
    }

    private void field(String before, JTextField field, String after, String name) {
        field.setName(name);
        add(new JLabel(before));
        add(field);
        add(new JLabel(after));
    }

    private static JButton button(String text, String name, String hint, Runnable deed) {
        JButton button = new JButton(text);
        button.setName(name);
        button.setToolTipText(hint);
        button.addActionListener(e -> deed.run());
        return button;
    }

    /** Keeps the outline with the errors in the fields, or says which cannot be read. */
    void keep() {
        Optional<Double> c = positive(centre.getText());
        Optional<Double> r = positive(radius.getText());
        Optional<Double> a = positive(angle.getText());
        if (c.isEmpty() || r.isEmpty() || a.isEmpty()) {
            wrong.setText(TEXTS.text("hand.wrong"));
            return;
        }
        outline.state(new HandOutline.Sigmas(c.get(), r.get(), a.get()));
        outline.keepAsDrawn();
    }

    private static Optional<Double> positive(String text) {
        String plain = text.strip().replace(',', '.');
        return plain.matches("\\d{1,4}(\\.\\d{1,4})?")
                ? Optional.of(Double.valueOf(plain)).filter(v -> v > 0)
                : Optional.empty();
    }

    /** Whether an outline is being drawn. */
    boolean isInUse() {
        return outline.isOpen();
    }

    /** Shows the outline as it is now. */
    void refresh() {
        Optional<Placement> placement = outline.placement();
        placement.ifPresent(p -> {
            figures.setText(TEXTS.text(
                    "hand.figures",
                    Figures.fixed(p.centreXPx(), 1),
                    Figures.fixed(p.centreYPx(), 1),
                    Figures.fixed(p.equatorialRadiusPx(), 1),
                    Figures.fixed(p.poleAngleDeg(), 1)));
            mirrored.setSelected(p.mirrored());
            if (!wasOpen) {
                centre.setText(plain(outline.sigmas().centrePx()));
                radius.setText(plain(outline.sigmas().radiusPx()));
                angle.setText(plain(outline.sigmas().angleDeg()));
                wrong.setText(" ");
            }
        });
        wasOpen = placement.isPresent();
    }

    private static String plain(double sigma) {
        return Figures.fixed(sigma, Math.max(0, Figures.decimalsFor(sigma)));
    }
}
