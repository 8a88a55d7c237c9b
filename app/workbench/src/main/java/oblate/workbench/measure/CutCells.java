/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.event.ActionEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import javax.swing.Scrollable;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Cut-outs in rows in order of time, each under its date; a click opens its picture. On the event thread only. */
final class CutCells extends JComponent implements Scrollable {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(CutCells.class);
    static final int SIDE_PX = 112;
    private static final int GAP = 10;
    private static final int STEP_X = SIDE_PX + GAP;
    private static final int STEP_Y = SIDE_PX + 46;
    private final transient PanelContext context;
    private final transient List<Cut> cuts = new ArrayList<>();
    private String remark = "";
    private int chosen;

    /**
     * One cut-out.
     *
     * @param pictureId picture it is from
     * @param time mid-time of that
     * @param words what is said under it
     * @param image the cut-out
     */
    record Cut(long pictureId, Instant time, String words, BufferedImage image) {}

    CutCells(PanelContext context, LongConsumer whenChosen) {
        this.context = context;
        setName("season.cells");
        setFocusable(true);
        setToolTipText("");
        setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
        addMouseListener(new MouseAdapter() {
            @Override
            public void mouseClicked(MouseEvent e) {
                at(e).ifPresent(c -> whenChosen.accept(c.pictureId()));
            }
        });
        key("LEFT", () -> choose(chosen - 1));
        key("RIGHT", () -> choose(chosen + 1));
        key("UP", () -> choose(chosen - columns()));
        key("DOWN", () -> choose(chosen + columns()));
        key("HOME", () -> choose(0));
        key("END", () -> choose(cuts.size() - 1));
        key("ENTER", () -> {
            if (chosen < cuts.size()) {
                whenChosen.accept(cuts.get(chosen).pictureId());
            }
        });
    }

    private void key(String stroke, Runnable deed) {
        getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(stroke), stroke);
        getActionMap().put(stroke, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    private void choose(int index) {
        if (index >= 0 && index < cuts.size()) {
            chosen = index;
            scrollRectToVisible(cell(index));
            repaint();
        }
    }

    static BufferedImage turned(BufferedImage image) {
        BufferedImage turned = new BufferedImage(image.getWidth(), image.getHeight(), image.getType());
        Graphics2D g = turned.createGraphics();
        g.rotate(Math.PI, image.getWidth() / 2.0, image.getHeight() / 2.0);
        g.drawImage(image, 0, 0, null);
        g.dispose();
        return turned;
    }

    void clear(String words) {
        cuts.clear();
        chosen = 0;
        remark = words;
        revalidate();
        repaint();
    }

    void add(Cut cut) {
        cuts.add(cut);
        remark = "";
        revalidate();
        repaint();
    }

    void finished(String words) {
        remark = cuts.isEmpty() ? words : "";
        repaint();
    }

    /** Cut-outs shown so far. */
    int count() {
        return cuts.size();
    }

    private int columns() {
        return Math.max(1, (getWidth() - 2 * GAP) / STEP_X);
    }

    private Rectangle cell(int index) {
        return new Rectangle(GAP + index % columns() * STEP_X, GAP + index / columns() * STEP_Y, SIDE_PX, STEP_Y - GAP);
    }

    private Optional<Cut> at(MouseEvent e) {
        for (int i = 0; i < cuts.size(); i++) {
            if (cell(i).contains(e.getPoint())) {
                return Optional.of(cuts.get(i));
            }
        }
        return Optional.empty();
    }

    @Override
    public String getToolTipText(MouseEvent event) {
        return at(event)
                .map(c -> TEXTS.text("season.cell.tip", Figures.dayUt(c.time()), Figures.clockUt(c.time())))
                .orElse(null);
    }

    @Override
    public Dimension getPreferredSize() {
        int rows = (cuts.size() + columns() - 1) / columns();
        return new Dimension(3 * STEP_X, Math.max(STEP_Y, rows * STEP_Y) + 2 * GAP);
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = context.palette();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setColor(colours.ground());
        g2.fillRect(0, 0, getWidth(), getHeight());
        g2.setFont(Theme.bodyFont(0));
        g2.setColor(colours.quietInk());
        g2.drawString(remark, GAP + 4, GAP + 20);
        Rectangle clip = g.getClipBounds();
        for (int i = 0; i < cuts.size(); i++) {
            Rectangle r = cell(i);
            if (r.intersects(clip)) {
                paintCut(g2, colours, cuts.get(i), r);
                if (i == chosen && isFocusOwner()) {
                    g2.setColor(colours.accent());
                    g2.setStroke(new BasicStroke(2));
                    g2.drawRect(r.x - 1, r.y - 1, SIDE_PX + 1, SIDE_PX + 1);
                }
            }
        }
        g2.dispose();
    }

    private static void paintCut(Graphics2D g, Palette colours, Cut cut, Rectangle r) {
        g.setColor(colours.night());
        g.fillRect(r.x, r.y, SIDE_PX, SIDE_PX);
        g.drawImage(cut.image(), r.x, r.y, null);
        g.setColor(new Color(0, 0, 0, 90));
        g.drawRect(r.x, r.y, SIDE_PX - 1, SIDE_PX - 1);
        g.setFont(Theme.bodyFont(-2));
        g.setColor(colours.ink());
        g.drawString(Figures.dayUt(cut.time()), r.x, r.y + SIDE_PX + 14);
        g.setFont(Theme.figureFont(-3));
        g.setColor(colours.quietInk());
        g.drawString(Figures.clockUt(cut.time()).replace(" UT", "") + "  " + cut.words(), r.x, r.y + SIDE_PX + 28);
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return new Dimension(600, 400);
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return 40;
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
        return visible.height;
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        return true;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return false;
    }
}
