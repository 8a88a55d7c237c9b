/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import oblate.workbench.words.Texts;

/** What is shown while no place is known: why one is needed, and a field for it. */
final class PlaceAsked extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(PlaceAsked.class);

    PlaceAsked(Consumer<String> whenGiven) {
        super(new MigLayout("insets 48, gap 8 12, wrap 1, fillx, aligny center", "[center]"));
        setOpaque(false);
        JTextField field = new JTextField(24);
        PlaceChoice.name(field, "tonight.asked");
        JButton use = new JButton(TEXTS.text("asked.use"));
        use.setName("tonight.use");
        field.addActionListener(e -> whenGiven.accept(field.getText()));
        use.addActionListener(e -> whenGiven.accept(field.getText()));
        JLabel head = new JLabel(TEXTS.text("asked.head"));
        head.putClientProperty("FlatLaf.styleClass", "h3");
        add(head);
        add(new JLabel(TEXTS.text("asked.why")), "wmin 0");
        add(new JLabel(TEXTS.text("asked.how")), "wmin 0");
        add(field, "split 2");
        add(use);
        add(new JLabel(TEXTS.text("asked.keep")), "wmin 0");
    }
}
