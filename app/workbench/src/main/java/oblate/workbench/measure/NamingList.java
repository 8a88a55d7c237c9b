/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import oblate.archive.Feature;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The small list under a fresh mark: names that fit, best first; typing filters or makes a new one. */
final class NamingList extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(NamingList.class);
    private static final int WIDTH = 440;
    private static final int ROWS = 5;
    private static final String[] KINDS = {"spot", "oval", "bar", "barge", "projection", "storm", "moon", "shadow"};
    private final transient Supplier<Palette> palette;
    private final transient Consumer<Feature> whenNamed;
    private final transient Runnable whenLeft;
    private final JTextField typed = new JTextField();
    private final JComboBox<String> kind = new JComboBox<>(KINDS);
    private final DefaultListModel<Offer> model = new DefaultListModel<>();
    private final JList<Offer> list = new JList<>(model);
    private final JLabel keys = new JLabel(TEXTS.text("naming.words"));
    private transient List<Offer> offers = List.of();
    private transient String planetId = "";

    /** Told of steps the mark is to be moved by (screen px of the picture's scale). */
    interface Nudge {
        void by(double dx, double dy);
    }

    NamingList(Supplier<Palette> palette, Consumer<Feature> whenNamed, Runnable whenLeft, Nudge nudge) {
        super(new BorderLayout(0, 6));
        this.palette = palette;
        this.whenNamed = whenNamed;
        this.whenLeft = whenLeft;
        setName("naming");
        setOpaque(false);
        setBorder(BorderFactory.createEmptyBorder(8, 8, 8, 8));
        typed.setName("naming.text");
        typed.putClientProperty("JTextField.placeholderText", TEXTS.text("naming.prompt"));
        list.setName("naming.list");
        list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        list.setCellRenderer(new Row());
        list.setFocusable(false);
        list.setOpaque(false);
        JScrollPane scroll = new JScrollPane(list);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setOpaque(false);
        scroll.getViewport().setOpaque(false);
        JPanel top = new JPanel(new BorderLayout(6, 0));
        top.setOpaque(false);
        kind.setToolTipText(TEXTS.text("naming.kind.tip"));
        kind.addActionListener(e -> refill());
        top.add(typed, BorderLayout.CENTER);
        top.add(kind, BorderLayout.EAST);
        add(top, BorderLayout.NORTH);
        add(scroll, BorderLayout.CENTER);
        keys.setFont(Theme.bodyFont(-2));
        add(keys, BorderLayout.SOUTH);
        typed.getDocument().addDocumentListener(new Refill());
        key(KeyEvent.VK_ENTER, 0, this::take);
        key(KeyEvent.VK_ESCAPE, 0, whenLeft);
        key(KeyEvent.VK_DOWN, 0, () -> move(1));
        key(KeyEvent.VK_UP, 0, () -> move(-1));
        for (int large = 0; large < 2; large++) {
            double step = large == 0 ? MeasureActions.STEP : 10 * MeasureActions.STEP;
            int with = InputEvent.CTRL_DOWN_MASK | (large == 0 ? 0 : InputEvent.SHIFT_DOWN_MASK);
            key(KeyEvent.VK_LEFT, with, () -> nudge.by(-step, 0));
            key(KeyEvent.VK_RIGHT, with, () -> nudge.by(step, 0));
            key(KeyEvent.VK_UP, with, () -> nudge.by(0, -step));
            key(KeyEvent.VK_DOWN, with, () -> nudge.by(0, step));
        }
        list.addMouseListener(new MouseAdapter() {
            @Override
            public void mouseClicked(MouseEvent e) {
                take();
            }
        });
        addMouseListener(new MouseAdapter() {});
        setVisible(false);
    }

    private void key(int code, int modifiers, Runnable deed) {
        String name = "naming." + code + "." + modifiers;
        typed.getInputMap(JComponent.WHEN_FOCUSED).put(KeyStroke.getKeyStroke(code, modifiers), name);
        typed.getActionMap().put(name, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    void ask(List<Offer> ranked, String planet, boolean beside) {
        offers = ranked;
        planetId = planet;
        kind.setSelectedItem(beside ? "moon" : "spot");
        typed.setText("");
        keys.setForeground(palette.get().quietInk());
        refill();
        // So many whole rows, whatever the face of the theme.
        list.setVisibleRowCount(Math.max(2, Math.min(ROWS, model.size())));
        setSize(WIDTH, getPreferredSize().height);
        setVisible(true);
        typed.requestFocusInWindow();
    }

    private void refill() {
        model.clear();
        Offer.filter(offers, typed.getText(), planetId, String.valueOf(kind.getSelectedItem()))
                .forEach(model::addElement);
        // A name that is far from expected must be chosen, never taken by a quick Enter.
        boolean forward =
                !model.isEmpty() && (!typed.getText().isBlank() || model.get(0).sigmas() <= Offer.NEAR_SIGMAS);
        if (forward) {
            list.setSelectedIndex(0);
        } else {
            list.clearSelection();
        }
        keys.setText(
                forward
                        ? TEXTS.text("naming.words")
                        : model.isEmpty() ? TEXTS.text("naming.words.none") : TEXTS.text("naming.words.nothing"));
    }

    private void move(int step) {
        int to = Math.max(0, Math.min(model.size() - 1, list.getSelectedIndex() + step));
        list.setSelectedIndex(to);
        list.ensureIndexIsVisible(to);
    }

    private void take() {
        Offer offer = list.getSelectedValue();
        if (offer == null) {
            whenLeft.run();
        } else {
            whenNamed.accept(offer.feature());
        }
    }

    @Override
    protected void paintComponent(Graphics g) {
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        Palette colours = palette.get();
        g2.setColor(colours.raised());
        g2.fillRoundRect(0, 0, getWidth() - 1, getHeight() - 1, 12, 12);
        g2.setColor(colours.line());
        g2.drawRoundRect(0, 0, getWidth() - 1, getHeight() - 1, 12, 12);
        g2.dispose();
    }

    /** Refills on every change of the text. */
    private final class Refill implements DocumentListener {
        @Override
        public void insertUpdate(DocumentEvent e) {
            refill();
        }

        @Override
        public void removeUpdate(DocumentEvent e) {
            refill();
        }

        @Override
        public void changedUpdate(DocumentEvent e) {
            refill();
        }
    }

    /** Name on the first line, what speaks for it on the second. */
    private final class Row extends JPanel implements ListCellRenderer<Offer> {
        private static final long serialVersionUID = 1L;
        private final JLabel name = new JLabel();
        private final JLabel detail = new JLabel();

        Row() {
            super(new BorderLayout(0, 1));
            setBorder(BorderFactory.createEmptyBorder(4, 8, 4, 8));
            add(name, BorderLayout.NORTH);
            add(detail, BorderLayout.SOUTH);
        }

        @Override
        public Component getListCellRendererComponent(
                JList<? extends Offer> of, Offer offer, int index, boolean selected, boolean focused) {
            Palette colours = palette.get();
            name.setText(
                    offer.isNew()
                            ? TEXTS.text("naming.new", offer.feature().name())
                            : offer.feature().name());
            name.setFont(Theme.headFont(0));
            name.setForeground(colours.ink());
            detail.setText(offer.detail());
            detail.setFont(Theme.figureFont(-2));
            detail.setForeground(colours.quietInk());
            setOpaque(selected);
            Color a = colours.accent();
            Color r = colours.raised();
            setBackground(new Color(
                    (a.getRed() + 4 * r.getRed()) / 5,
                    (a.getGreen() + 4 * r.getGreen()) / 5,
                    (a.getBlue() + 4 * r.getBlue()) / 5));
            return this;
        }
    }
}
