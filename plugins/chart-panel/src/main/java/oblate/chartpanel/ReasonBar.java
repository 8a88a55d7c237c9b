/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import oblate.workbench.look.Palette;
import oblate.workbench.words.Texts;

/** Asks once for the reason of a change, in a bar that blocks nothing; without a reason nothing is changed. */
final class ReasonBar extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(ReasonBar.class);
    private final JLabel question = new JLabel();
    private final JTextField reason = new JTextField(28);
    private final JButton move = new JButton(TEXTS.text("move.do"));
    private final JButton leave = new JButton(TEXTS.text("move.leave"));
    private transient Consumer<String> whenGiven = text -> {};
    private transient Runnable whenLeft = () -> {};

    ReasonBar() {
        super(new MigLayout("insets 6 16 6 16, gap 8", "[][grow,fill][][]"));
        setName("drift.move");
        reason.setName("drift.reason");
        reason.getAccessibleContext().setAccessibleName(TEXTS.text("move.reason.name"));
        reason.putClientProperty("JTextField.placeholderText", TEXTS.text("move.reason"));
        move.setName("drift.move.do");
        leave.setName("drift.move.leave");
        add(question);
        add(reason);
        add(move);
        add(leave);
        move.addActionListener(e -> given());
        reason.addActionListener(e -> given());
        leave.addActionListener(e -> left());
        registerKeyboardAction(e -> left(), KeyStroke.getKeyStroke("ESCAPE"), WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
        setVisible(false);
    }

    /** Asks; one question at a time, a new one replaces the old. */
    void ask(String words, Palette palette, Consumer<String> given, Runnable otherwise) {
        setBackground(palette.raised());
        setBorder(BorderFactory.createMatteBorder(0, 0, 1, 0, palette.line()));
        question.setText(words);
        whenGiven = given;
        whenLeft = otherwise;
        reason.setText("");
        reason.putClientProperty("JComponent.outline", null);
        setVisible(true);
        reason.requestFocusInWindow();
    }

    private void given() {
        String text = reason.getText().strip();
        if (text.isEmpty()) {
            reason.putClientProperty("JComponent.outline", "error");
            reason.requestFocusInWindow();
            return;
        }
        setVisible(false);
        whenGiven.accept(text);
    }

    private void left() {
        setVisible(false);
        whenLeft.run();
    }
}
