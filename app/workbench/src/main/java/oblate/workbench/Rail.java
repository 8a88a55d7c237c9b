/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.Icon;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.LineIcon;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The strip of panels at the left edge. */
final class Rail extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(Rail.class);
    private final transient Supplier<Palette> palette;
    private final transient Consumer<String> whenChosen;
    private final Map<String, Entry> entries = new LinkedHashMap<>();
    private final ButtonGroup group = new ButtonGroup();

    Rail(Supplier<Palette> palette, Consumer<String> whenChosen) {
        super(new MigLayout("insets 8 0 8 0, gap 0 4, wrap 1, fillx", "[grow,fill]"));
        this.palette = palette;
        this.whenChosen = whenChosen;
        setOpaque(false);
    }

    void add(String id, String label, Optional<Icon> icon, boolean atFoot) {
        Entry entry = new Entry(label, icon.orElseGet(() -> initial(label)));
        entry.setName("rail." + id);
        int number = entries.size() + 1;
        entry.setToolTipText(number < 10 ? TEXTS.text("rail.tip", label, Integer.toString(number)) : label);
        entry.addActionListener(e -> whenChosen.accept(id));
        // Tab stops once at the rail; the arrows go along it, Space or Enter chooses.
        step(entry, "UP", -1);
        step(entry, "DOWN", 1);
        Deed.named("choose", label, "ENTER", entry::doClick).bind(entry, WHEN_FOCUSED);
        group.add(entry);
        entries.put(id, entry);
        add(entry, atFoot ? "pushy, aligny bottom" : "");
    }

    private void step(Entry from, String key, int by) {
        Deed.named("step " + by, key, key, () -> {
                    List<Entry> all = List.copyOf(entries.values());
                    all.get(Math.floorMod(all.indexOf(from) + by, all.size())).requestFocusInWindow();
                })
                .bind(from, WHEN_FOCUSED);
    }

    void show(String id) {
        Entry entry = entries.get(id);
        if (entry != null) {
            entry.setSelected(true);
        }
    }

    /** Takes every entry out, so that they can be put in anew. */
    void clear() {
        entries.values().forEach(e -> {
            group.remove(e);
            remove(e);
        });
        entries.clear();
        revalidate();
        repaint();
    }

    private static Icon initial(String label) {
        String letter = label.isEmpty() ? "?" : label.substring(0, 1);
        return new LineIcon(24, g -> {
            g.draw(new java.awt.geom.Ellipse2D.Double(3, 3, 18, 18));
            g.setFont(Theme.headFont(-1));
            FontMetrics m = g.getFontMetrics();
            g.drawString(letter, 12 - m.stringWidth(letter) / 2f, 12 + m.getAscent() / 2f - 1.5f);
        });
    }

    private final class Entry extends JToggleButton {
        private static final long serialVersionUID = 1L;

        Entry(String label, Icon icon) {
            super(label, icon);
            setBorder(BorderFactory.createEmptyBorder(8, 4, 6, 4));
            setContentAreaFilled(false);
            setFocusPainted(false);
        }

        @Override
        public Dimension getPreferredSize() {
            return new Dimension(76, 60);
        }

        @Override
        protected void paintComponent(Graphics g) {
            Palette colours = palette.get();
            Graphics2D g2 = (Graphics2D) g.create();
            g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            boolean on = isSelected();
            if (on || getModel().isRollover()) {
                g2.setColor(on ? colours.raised() : new Color(colours.raised().getRGB() & 0xFFFFFF | 0x80000000, true));
                g2.fillRoundRect(6, 0, getWidth() - 12, getHeight(), 12, 12);
            }
            if (on) {
                g2.setColor(colours.accent());
                g2.fillRoundRect(0, 12, 4, getHeight() - 24, 4, 4);
            }
            setForeground(on ? colours.accent() : colours.quietInk());
            getIcon().paintIcon(this, g2, (getWidth() - getIcon().getIconWidth()) / 2, 9);
            g2.setFont(on ? Theme.headFont(-2) : Theme.bodyFont(-2));
            g2.setColor(on ? colours.ink() : colours.quietInk());
            FontMetrics m = g2.getFontMetrics();
            g2.drawString(getText(), (getWidth() - m.stringWidth(getText())) / 2f, getHeight() - 10f);
            if (isFocusOwner()) {
                g2.setColor(colours.accent());
                g2.drawRoundRect(7, 1, getWidth() - 15, getHeight() - 3, 10, 10);
            }
            g2.dispose();
        }
    }
}
