/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Point;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JLabel;
import javax.swing.JLayeredPane;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.ListCellRenderer;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The field a search is typed into, with a list of ways to go on under it. */
final class SearchBox extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(SearchBox.class);
    private static final int ROW_PX = 26;
    private static final int MOST_ROWS = 11;
    private static final int LEAST_PX = 460;
    private final transient PanelContext context;
    private final transient Supplier<Completions> completions;
    private final JTextField field = new JTextField(24);
    private final DefaultListModel<Completions.Completion> ways = new DefaultListModel<>();
    private final JList<Completions.Completion> list = new JList<>(ways);
    private final JScrollPane popup = new JScrollPane(list);
    private final Timer pause;
    private final transient Runnable whenLeft;
    private boolean taking;

    /**
     * @param whenTyped called after a short pause in typing
     * @param whenLeft called when the person is done with the field
     */
    SearchBox(PanelContext context, Supplier<Completions> completions, Runnable whenTyped, Runnable whenLeft) {
        super(new BorderLayout());
        this.context = context;
        this.completions = completions;
        this.whenLeft = whenLeft;
        setOpaque(false);
        pause = new Timer(150, e -> whenTyped.run());
        pause.setRepeats(false);
        field.setName("search");
        field.getAccessibleContext().setAccessibleName(TEXTS.text("search.name"));
        field.putClientProperty("JTextField.placeholderText", TEXTS.text("search.prompt"));
        field.putClientProperty("JTextField.showClearButton", true);
        field.setToolTipText(TEXTS.text("search.tip"));
        field.setFocusTraversalKeysEnabled(false);
        field.getDocument().addDocumentListener(new Typed(this::typed));
        field.addFocusListener(new FocusAdapter() {
            @Override
            public void focusLost(FocusEvent e) {
                popup.setVisible(false);
            }
        });
        add(field, BorderLayout.CENTER);
        makePopup();
        key("DOWN", () -> move(1));
        key("UP", () -> move(-1));
        key("TAB", this::takeOrLeave);
        key("ENTER", this::takeOrFinish);
        key("ESCAPE", this::escape);
    }

    private void makePopup() {
        list.setName("search.ways");
        list.setFocusable(false);
        list.setFixedCellHeight(ROW_PX);
        list.setCellRenderer(new Row());
        list.addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                int row = list.locationToIndex(e.getPoint());
                if (row >= 0) {
                    take(ways.get(row));
                }
            }
        });
        popup.setVisible(false);
    }

    private void key(String stroke, Runnable deed) {
        field.getInputMap().put(KeyStroke.getKeyStroke(stroke), stroke);
        field.getActionMap().put(stroke, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(java.awt.event.ActionEvent e) {
                deed.run();
            }
        });
    }

    /** The list is in the tree only while it is shown, so it must be told. */
    void lookChanged() {
        SwingUtilities.updateComponentTreeUI(popup);
    }

    String text() {
        return field.getText().strip();
    }

    void setText(String text) {
        field.setText(text);
    }

    @Override
    public boolean requestFocusInWindow() {
        field.selectAll();
        return field.requestFocusInWindow();
    }

    private void typed() {
        pause.restart();
        if (!taking && field.isFocusOwner()) {
            // The caret follows the text only after this event.
            SwingUtilities.invokeLater(() -> {
                if (field.isFocusOwner() && !field.getText().isEmpty()) {
                    offer();
                } else {
                    popup.setVisible(false);
                }
            });
        }
    }

    private void offer() {
        List<Completions.Completion> found = new ArrayList<>();
        lastSearch().ifPresent(found::add);
        found.addAll(completions.get().at(field.getText(), field.getCaretPosition()));
        ways.clear();
        found.forEach(ways::addElement);
        list.clearSelection();
        if (found.isEmpty() || !field.isShowing()) {
            popup.setVisible(false);
            return;
        }
        place(Math.min(MOST_ROWS, found.size()));
    }

    /** Under the field, over whatever is there; no window of its own, so that the focus stays where it is. */
    private void place(int rows) {
        JLayeredPane pane = SwingUtilities.getRootPane(field).getLayeredPane();
        if (popup.getParent() != pane) {
            pane.add(popup, JLayeredPane.POPUP_LAYER);
        }
        Point at = SwingUtilities.convertPoint(field, 0, field.getHeight() + 2, pane);
        popup.setBorder(BorderFactory.createLineBorder(context.palette().line()));
        popup.setBounds(at.x, at.y, Math.max(LEAST_PX, field.getWidth()), rows * ROW_PX + 2);
        popup.setVisible(true);
        popup.revalidate();
        popup.repaint();
    }

    private Optional<Completions.Completion> lastSearch() {
        String last = context.settings().text("search", "");
        return field.getText().isEmpty() && !last.isEmpty()
                ? Optional.of(new Completions.Completion(last, TEXTS.text("search.last"), false))
                : Optional.empty();
    }

    private void move(int by) {
        if (!popup.isVisible()) {
            offer();
        }
        if (!ways.isEmpty()) {
            int row = Math.floorMod(list.getSelectedIndex() + by, ways.size());
            list.setSelectedIndex(list.getSelectedIndex() < 0 && by < 0 ? ways.size() - 1 : row);
            list.ensureIndexIsVisible(list.getSelectedIndex());
        }
    }

    private void takeOrLeave() {
        if (popup.isVisible() && !ways.isEmpty()) {
            take(ways.get(Math.max(0, list.getSelectedIndex())));
        } else {
            finish();
        }
    }

    private void takeOrFinish() {
        if (popup.isVisible() && list.getSelectedIndex() >= 0) {
            take(list.getSelectedValue());
        } else {
            finish();
        }
    }

    private void take(Completions.Completion way) {
        taking = true;
        int caret = field.getCaretPosition();
        int fromEnd = field.getText().length() - caret;
        String text = Completions.taken(field.getText(), caret, way);
        field.setText(text);
        field.setCaretPosition(Math.max(0, Math.min(text.length(), text.length() - fromEnd)));
        taking = false;
        popup.setVisible(false);
        if (way.goesOn()) {
            offer();
        }
    }

    /** Keeps the search for another time and goes to what it found. */
    private void finish() {
        popup.setVisible(false);
        keepSearch();
        whenLeft.run();
    }

    private void keepSearch() {
        if (!text().isEmpty()) {
            context.settings().keep("search", text());
        }
    }

    private void escape() {
        if (popup.isVisible()) {
            popup.setVisible(false);
        } else if (field.getText().isEmpty()) {
            whenLeft.run();
        } else {
            clear();
        }
    }

    /** Empties the field, keeping what stood there for another time. */
    void clear() {
        keepSearch();
        field.setText("");
    }

    /** One way to go on: what is typed, and what it is. */
    private final class Row extends JPanel implements ListCellRenderer<Completions.Completion> {
        private static final long serialVersionUID = 1L;
        private final JLabel text = new JLabel();
        private final JLabel hint = new JLabel();

        Row() {
            super(new BorderLayout(16, 0));
            setBorder(BorderFactory.createEmptyBorder(0, 12, 0, 12));
            add(text, BorderLayout.WEST);
            add(hint, BorderLayout.EAST);
        }

        @Override
        public Component getListCellRendererComponent(
                JList<? extends Completions.Completion> in,
                Completions.Completion way,
                int index,
                boolean selected,
                boolean focused) {
            text.setText(way.text());
            hint.setText(way.hint());
            text.setFont(Theme.bodyFont(0));
            hint.setFont(Theme.bodyFont(-2));
            setBackground(selected ? in.getSelectionBackground() : in.getBackground());
            text.setForeground(selected ? in.getSelectionForeground() : in.getForeground());
            hint.setForeground(
                    selected ? in.getSelectionForeground() : context.palette().quietInk());
            getAccessibleContext().setAccessibleName(String.format(Locale.ROOT, "%s, %s", way.text(), way.hint()));
            return this;
        }
    }
}
