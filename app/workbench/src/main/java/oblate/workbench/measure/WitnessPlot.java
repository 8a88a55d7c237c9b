/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import javax.swing.JComponent;
import oblate.disc.DiscFit;
import oblate.disc.Witness;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Each source's word on the pole angle with its error, on one axis, and all of them together. */
final class WitnessPlot extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(WitnessPlot.class);
    private static final int ROW = 22;
    private static final int NAME = 52;
    private static final int VALUE = 104;
    private final transient Supplier<Palette> palette;
    private final transient List<Witness> rows;

    WitnessPlot(Supplier<Palette> palette, DiscFit fit) {
        this.palette = palette;
        rows = new ArrayList<>(fit.witnesses().stream()
                .filter(w -> w.quantity().equals("pole angle") && Double.isFinite(w.sigma()))
                .toList());
        rows.add(new Witness(
                "pole angle",
                "all",
                fit.placement().poleAngleDeg(),
                fit.covariance().sigmaPoleAngleDeg()));
        setToolTipText(TEXTS.text("witness.tip"));
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(280, rows.size() * ROW + 4);
    }

    @Override
    protected void paintComponent(Graphics g) {
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        Palette colours = palette.get();
        double about = rows.get(rows.size() - 1).value();
        double reach = rows.stream()
                .mapToDouble(w -> Math.abs(Math.IEEEremainder(w.value() - about, 360)) + 1.3 * w.sigma())
                .max()
                .orElse(1);
        int left = NAME;
        int width = Math.max(20, getWidth() - NAME - VALUE);
        double middle = left + width / 2.0;
        double pxPerDeg = width / 2.0 / Math.max(reach, 1e-6);
        g2.setColor(colours.line());
        g2.draw(new Line2D.Double(middle, 0, middle, (double) rows.size() * ROW));
        for (int i = 0; i < rows.size(); i++) {
            Witness w = rows.get(i);
            boolean all = i == rows.size() - 1;
            double y = i * ROW + ROW / 2.0;
            double x = middle + Math.IEEEremainder(w.value() - about, 360) * pxPerDeg;
            double half = w.sigma() * pxPerDeg;
            Color colour = all ? colours.accent() : colours.ink();
            g2.setFont(all ? Theme.headFont(-2) : Theme.bodyFont(-2));
            FontMetrics m = g2.getFontMetrics();
            float base = (float) (y + m.getAscent() / 2.0 - 1.5);
            g2.setColor(all ? colours.ink() : colours.quietInk());
            g2.drawString(all ? TEXTS.text("witness.all") : w.source(), 0, base);
            g2.setFont(Theme.figureFont(-3));
            String value = Figures.withSigma(w.value(), w.sigma(), "°");
            g2.drawString(value, getWidth() - g2.getFontMetrics().stringWidth(value), base);
            g2.setColor(colour);
            g2.setStroke(new BasicStroke(1.4f));
            g2.draw(new Line2D.Double(Math.max(left, x - half), y, Math.min(left + (double) width, x + half), y));
            if (all) {
                Path2D diamond = new Path2D.Double();
                diamond.moveTo(x - 5, y);
                diamond.lineTo(x, y - 5);
                diamond.lineTo(x + 5, y);
                diamond.lineTo(x, y + 5);
                diamond.closePath();
                g2.fill(diamond);
            } else {
                g2.fill(new Ellipse2D.Double(x - 3.5, y - 3.5, 7, 7));
            }
        }
        g2.dispose();
    }
}
