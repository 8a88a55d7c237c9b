/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.function.Supplier;
import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import oblate.drift.Alternative;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/**
 * The kinds of motion that were compared, each with how much worse its criterion is than that of the chosen one, as bars, and what it counts for in predictions; a line at
 * 4, under which the choice is open.
 */
final class ModelBars extends JComponent implements Accessible {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(ModelBars.class);
    private static final int ROW = 22;
    private static final int FIGURES = 94;
    private static final double OPEN = 4;
    private static final double MOST = 20;
    private final transient List<Alternative> kinds;
    private final transient Supplier<Palette> palette;

    ModelBars(List<Alternative> kinds, Supplier<Palette> palette) {
        this.kinds = List.copyOf(kinds);
        this.palette = palette;
        setName("drift.models");
        setPreferredSize(new Dimension(220, ROW * this.kinds.size() + 18));
        setToolTipText(TEXTS.text("models.tip"));
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                private static final long serialVersionUID = 1L;

                @Override
                public AccessibleRole getAccessibleRole() {
                    return AccessibleRole.CANVAS;
                }

                @Override
                public String getAccessibleName() {
                    return TEXTS.text(
                            "models.name",
                            String.join(
                                    "; ",
                                    kinds.stream()
                                            .map(k -> words(k, k.equals(kinds.get(0))))
                                            .toList()));
                }
            };
        }
        return accessibleContext;
    }

    /** One kind in words, for those who cannot see the bar. */
    static String words(Alternative kind, boolean chosen) {
        String motion = Tracks.motion(kind.curve().modelId());
        return chosen
                ? TEXTS.text("models.chosen", motion, share(kind))
                : TEXTS.text("models.worse", motion, Figures.fixed(kind.criterion(), 1), share(kind));
    }

    private static String share(Alternative kind) {
        return TEXTS.text("models.share", Figures.fixed(100 * kind.weight(), 0));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Palette colours = palette.get();
        g.setFont(Theme.bodyFont(-1));
        int words = kinds.stream()
                .mapToInt(k ->
                        g.getFontMetrics().stringWidth(Tracks.motion(k.curve().modelId())))
                .max()
                .orElse(0);
        double left = words + 10.0;
        double length = Math.max(20, getWidth() - left - FIGURES);
        double x = left + OPEN / MOST * length;
        for (int i = 0; i < kinds.size(); i++) {
            double share = Math.min(1, Math.max(0, kinds.get(i).criterion()) / MOST);
            double y = i * ROW;
            g.setPaint(i == 0 ? colours.ink() : colours.quietInk());
            g.setFont(i == 0 ? Theme.headFont(-1) : Theme.bodyFont(-1));
            g.drawString(Tracks.motion(kinds.get(i).curve().modelId()), 0, (float) y + 15);
            Rectangle2D bar = new Rectangle2D.Double(left, y + 5, Math.max(3, share * length), ROW - 10.0);
            g.setPaint(i == 0 ? colours.accent() : colours.quietInk());
            g.fill(bar);
            g.setFont(Theme.figureFont(-2));
            g.setPaint(colours.ink());
            String figure = i == 0
                    ? TEXTS.text("models.best")
                    : "+" + Figures.fixed(kinds.get(i).criterion(), 1);
            double from = bar.getMaxX() + 5;
            boolean crosses = from < x + 3 && from + g.getFontMetrics().stringWidth(figure) > x - 3;
            g.drawString(figure, (float) (crosses ? x + 5 : from), (float) y + 15);
            ended(g, share(kinds.get(i)), y + 15);
        }
        g.setPaint(colours.ink());
        g.setStroke(new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {2, 3}, 0));
        g.draw(new Line2D.Double(x, 0, x, ROW * kinds.size()));
        g.setFont(Theme.bodyFont(-2));
        g.setPaint(colours.quietInk());
        g.drawString(TEXTS.text("models.open"), (float) left, ROW * kinds.size() + 13f);
        ended(g, TEXTS.text("models.shares"), ROW * kinds.size() + 13.0);
        g.dispose();
    }

    /** Words that end at the right edge. */
    private void ended(Graphics2D g, String words, double y) {
        g.drawString(words, getWidth() - 2 - g.getFontMetrics().stringWidth(words), (float) y);
    }
}
