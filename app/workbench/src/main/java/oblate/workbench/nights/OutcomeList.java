/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BorderLayout;
import java.awt.event.ActionEvent;
import java.util.List;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.KeyStroke;
import oblate.archive.FilingOutcome;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** What became of the files: one line for all, then a sentence for each that needs a look. */
final class OutcomeList extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(OutcomeList.class);
    private final transient PanelContext context;
    private final JLabel heading = new JLabel();
    private final JTextArea sentences = new JTextArea();
    private final JButton close = new JButton();
    private final JScrollPane scroll = new JScrollPane(sentences);

    OutcomeList(PanelContext context, Runnable whenClosed) {
        super(new BorderLayout(8, 6));
        this.context = context;
        setName("outcomes");
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        sentences.setEditable(false);
        sentences.setLineWrap(true);
        sentences.setWrapStyleWord(true);
        sentences.setName("outcome.sentences");
        scroll.setBorder(BorderFactory.createEmptyBorder());
        close.setText(TEXTS.text("outcome.close"));
        close.setName("outcomes.close");
        close.setToolTipText(TEXTS.text("outcome.close.tip"));
        close.addActionListener(e -> whenClosed.run());
        heading.setName("outcome.heading");
        JPanel top = new JPanel(new BorderLayout());
        top.setOpaque(false);
        top.add(heading, BorderLayout.CENTER);
        top.add(close, BorderLayout.EAST);
        for (String stroke : List.of("ESCAPE", "ENTER")) {
            getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke(stroke), "close");
        }
        getActionMap().put("close", new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                whenClosed.run();
            }
        });
        add(top, BorderLayout.NORTH);
        add(scroll, BorderLayout.CENTER);
    }

    /** What became of them all, in a few words. */
    String sum() {
        return heading.getText();
    }

    @Override
    public boolean requestFocusInWindow() {
        return close.requestFocusInWindow();
    }

    /** Takes on the colours of the theme. */
    void colour() {
        setBackground(context.palette().raised());
        sentences.setBackground(context.palette().raised());
        setBorder(BorderFactory.createCompoundBorder(
                BorderFactory.createMatteBorder(0, 0, 1, 0, context.palette().line()),
                BorderFactory.createEmptyBorder(12, 16, 12, 16)));
    }

    void show(List<FilingOutcome> outcomes, boolean stopped) {
        colour();
        long filed =
                outcomes.stream().filter(FilingOutcome.Filed.class::isInstance).count();
        long there = outcomes.stream()
                .filter(FilingOutcome.AlreadyThere.class::isInstance)
                .count();
        long refused = outcomes.size() - filed - there;
        heading.setText(TEXTS.text(
                stopped ? "outcome.stopped" : "outcome.sum",
                Long.toString(filed),
                Long.toString(there),
                Long.toString(refused)));
        StringBuilder text = new StringBuilder();
        // What is not in the archive comes first.
        for (FilingOutcome outcome : outcomes) {
            if (outcome instanceof FilingOutcome.Refused r) {
                text.append(TEXTS.text("outcome.refused", r.sentence())).append('\n');
            }
        }
        for (FilingOutcome outcome : outcomes) {
            if (outcome instanceof FilingOutcome.Filed f) {
                f.remarks().forEach(remark -> text.append(TEXTS.text(
                                "outcome.look", String.valueOf(f.file().getFileName()), remark))
                        .append('\n'));
            }
        }
        sentences.setText(text.toString().strip());
        sentences.setCaretPosition(0);
        scroll.setVisible(text.length() > 0);
        // Most sentences take two lines.
        sentences.setRows((int)
                Math.min(8, Math.max(2, 2 * text.chars().filter(c -> c == '\n').count())));
        revalidate();
    }
}
