/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.Color;
import java.awt.Cursor;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.function.Supplier;
import javax.swing.JComponent;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Shows two images of one size: side by side, one after the other, or parted by a line that follows the mouse. On the event thread only. */
final class PairCanvas extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(PairCanvas.class);

    /** How two images are shown. */
    enum Manner {
        SIDE_BY_SIDE,
        BLINK,
        SLIDER;

        @Override
        public String toString() {
            return TEXTS.word("compare.manner", this);
        }
    }

    private final transient Supplier<Palette> palette;
    private transient List<BufferedImage> images = List.of();
    private transient List<String> words = List.of("", "", "");
    private Manner manner = Manner.SIDE_BY_SIDE;
    private boolean secondShown;
    private double share = 0.5;
    private transient Runnable whenResized = () -> {};

    PairCanvas(Supplier<Palette> palette) {
        this.palette = palette;
        setName("pair");
        MouseAdapter mouse = new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                slide(e);
            }

            @Override
            public void mouseDragged(MouseEvent e) {
                slide(e);
            }
        };
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                whenResized.run();
            }
        });
    }

    void whenResized(Runnable listener) {
        whenResized = listener;
    }

    private void slide(MouseEvent e) {
        requestFocusInWindow();
        if (manner == Manner.SLIDER && !images.isEmpty()) {
            int width = images.get(0).getWidth();
            share = Math.max(0, Math.min(1, (e.getX() - (getWidth() - width) / 2.0) / width));
            repaint();
        }
    }

    /** Moves the line that parts the pictures, in shares of their width. */
    void slideBy(double more) {
        if (manner == Manner.SLIDER) {
            share = Math.max(0, Math.min(1, share + more));
            repaint();
        }
    }

    void setManner(Manner chosen) {
        manner = chosen;
        setCursor(Cursor.getPredefinedCursor(chosen == Manner.SLIDER ? Cursor.E_RESIZE_CURSOR : Cursor.DEFAULT_CURSOR));
        repaint();
    }

    void blink() {
        secondShown = !secondShown;
        repaint();
    }

    /** Shows two images with what is said of the first, the second and both. */
    void show(BufferedImage first, BufferedImage second, List<String> said) {
        images = List.of(first, second);
        words = List.copyOf(said);
        repaint();
    }

    void clear() {
        images = List.of();
        repaint();
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = palette.get();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setColor(colours.night());
        g2.fillRect(0, 0, getWidth(), getHeight());
        g2.setFont(Theme.figureFont(-1));
        g2.setColor(colours.nightInk());
        if (images.isEmpty()) {
            centred(g2, TEXTS.text("compare.drawing"), getWidth() / 2, getHeight() / 2);
        } else {
            paintPair(g2, colours);
            g2.setFont(Theme.bodyFont(-1));
            g2.setColor(colours.nightInk());
            centred(g2, words.get(2), getWidth() / 2, getHeight() - 10);
        }
        g2.dispose();
    }

    private void paintPair(Graphics2D g, Palette colours) {
        BufferedImage first = images.get(0);
        BufferedImage second = images.get(1);
        int middle = getWidth() / 2;
        int left = middle - first.getWidth() / 2;
        int top = (getHeight() - 24 - first.getHeight()) / 2 + 12;
        if (manner == Manner.SIDE_BY_SIDE) {
            g.drawImage(first, middle - 4 - first.getWidth(), top, null);
            g.drawImage(second, middle + 4, top, null);
            centred(g, words.get(0), middle - 4 - first.getWidth() / 2, 18);
            centred(g, words.get(1), middle + 4 + first.getWidth() / 2, 18);
        } else if (manner == Manner.BLINK) {
            g.drawImage(secondShown ? second : first, left, top, null);
            centred(g, words.get(secondShown ? 1 : 0), middle, 18);
        } else {
            int cut = left + (int) Math.round(share * first.getWidth());
            g.drawImage(second, left, top, null);
            Graphics2D part = (Graphics2D) g.create();
            part.clipRect(left, top, cut - left, first.getHeight());
            part.drawImage(first, left, top, null);
            part.dispose();
            g.setColor(new Color(0, 0, 0, 160));
            g.fillRect(cut - 2, top, 5, first.getHeight());
            g.setColor(colours.accent());
            g.fillRect(cut, top, 1, first.getHeight());
            g.fillOval(cut - 5, top + first.getHeight() / 2 - 5, 11, 11);
            g.setColor(colours.nightInk());
            g.drawString(words.get(0), 12, 18);
            g.drawString(words.get(1), getWidth() - 12 - g.getFontMetrics().stringWidth(words.get(1)), 18);
        }
    }

    private static void centred(Graphics2D g, String text, int x, int y) {
        FontMetrics m = g.getFontMetrics();
        g.drawString(text, x - m.stringWidth(text) / 2, y);
    }
}
