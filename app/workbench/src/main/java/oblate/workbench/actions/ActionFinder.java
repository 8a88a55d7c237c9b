/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.actions;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.event.ActionEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.function.Supplier;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.ListCellRenderer;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import net.miginfocom.swing.MigLayout;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The list of everything that can be done, with its keys, narrowed by typing; Enter does the chosen one. On the event thread only. */
public final class ActionFinder extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(ActionFinder.class);
    private static final int WIDTH = 620;
    private static final int HEIGHT = 420;
    private final transient Supplier<ActionList> actions;
    private final transient Supplier<Palette> palette;
    private final transient Runnable whenLeft;
    private final JTextField typed = new JTextField();
    private final DefaultListModel<ActionList.Entry> model = new DefaultListModel<>();
    private final JList<ActionList.Entry> list = new JList<>(model);

    /**
     * @param actions what there is, asked each time it is opened
     * @param palette colours of the present theme
     * @param whenLeft called when it is done with
     */
    public ActionFinder(Supplier<ActionList> actions, Supplier<Palette> palette, Runnable whenLeft) {
        super(new MigLayout("insets 10, gap 6, fill, wrap 1", "[grow,fill]", "[][grow,fill][]"));
        this.actions = actions;
        this.palette = palette;
        this.whenLeft = whenLeft;
        setName("actions");
        typed.setName("actions.typed");
        typed.putClientProperty("JTextField.placeholderText", TEXTS.text("finder.prompt"));
        typed.getAccessibleContext().setAccessibleName(TEXTS.text("finder.prompt"));
        list.setName("actions.list");
        list.getAccessibleContext().setAccessibleName(TEXTS.text("finder.list"));
        list.setCellRenderer(new Line());
        list.setFocusable(false);
        add(typed);
        add(new JScrollPane(list));
        add(new JLabel(TEXTS.text("finder.hint")));
        key(KeyEvent.VK_ESCAPE, whenLeft);
        key(KeyEvent.VK_ENTER, this::act);
        key(KeyEvent.VK_DOWN, () -> move(1));
        key(KeyEvent.VK_UP, () -> move(-1));
        key(KeyEvent.VK_PAGE_DOWN, () -> move(10));
        key(KeyEvent.VK_PAGE_UP, () -> move(-10));
        typed.getDocument().addDocumentListener(new Typing());
        list.addMouseListener(new MouseAdapter() {
            @Override
            public void mouseClicked(MouseEvent e) {
                act();
            }
        });
        setPreferredSize(new Dimension(WIDTH, HEIGHT));
    }

    private void key(int code, Runnable deed) {
        String name = "finder " + code;
        typed.getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(code, 0), name);
        typed.getActionMap().put(name, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    /** Shows everything and waits for words. */
    public void open() {
        setBackground(palette.get().raised());
        setBorder(BorderFactory.createLineBorder(palette.get().accent()));
        typed.setText("");
        fill();
        typed.requestFocusInWindow();
    }

    private void fill() {
        List<ActionList.Entry> found = actions.get().matching(typed.getText());
        model.clear();
        model.addAll(found);
        list.setSelectedIndex(found.isEmpty() ? -1 : 0);
        list.ensureIndexIsVisible(0);
    }

    private void move(int by) {
        if (model.isEmpty()) {
            return;
        }
        int next = Math.max(0, Math.min(model.size() - 1, list.getSelectedIndex() + by));
        list.setSelectedIndex(next);
        list.ensureIndexIsVisible(next);
    }

    private void act() {
        ActionList.Entry chosen = list.getSelectedValue();
        if (chosen == null || !chosen.action().isEnabled()) {
            return;
        }
        // Gone first: what is done may move the focus or open something in the same place.
        whenLeft.run();
        chosen.action().actionPerformed(new ActionEvent(this, ActionEvent.ACTION_PERFORMED, "finder"));
    }

    private final class Typing implements DocumentListener {
        @Override
        public void insertUpdate(DocumentEvent e) {
            fill();
        }

        @Override
        public void removeUpdate(DocumentEvent e) {
            fill();
        }

        @Override
        public void changedUpdate(DocumentEvent e) {
            fill();
        }
    }

    /** One line: what, in which menu, by which key. */
    private final class Line extends JPanel implements ListCellRenderer<ActionList.Entry> {
        private static final long serialVersionUID = 1L;
        private final JLabel name = new JLabel();
        private final JLabel section = new JLabel();
        private final JLabel key = new JLabel();

        Line() {
            super(new MigLayout("insets 3 8 3 8, gap 12, fillx", "[grow,fill][110!,fill][150!,right]"));
            add(name, "wmin 0");
            add(section);
            add(key);
        }

        @Override
        public Component getListCellRendererComponent(
                JList<? extends ActionList.Entry> of,
                ActionList.Entry entry,
                int index,
                boolean selected,
                boolean focused) {
            Palette colours = palette.get();
            Action action = entry.action();
            setBackground(selected ? colours.line() : colours.raised());
            name.setText(String.valueOf(action.getValue(Action.NAME)));
            name.setForeground(action.isEnabled() ? colours.ink() : colours.quietInk());
            section.setText(entry.section());
            section.setForeground(colours.quietInk());
            key.setText(Deed.keyOf(action).orElse(""));
            key.setForeground(colours.accent());
            key.setFont(Theme.figureFont(-1));
            getAccessibleContext().setAccessibleName(name.getText() + ", " + section.getText() + ", " + key.getText());
            return this;
        }
    }
}
