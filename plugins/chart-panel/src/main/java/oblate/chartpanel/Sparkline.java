/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.List;
import java.util.Optional;
import javax.swing.JTable;
import javax.swing.table.DefaultTableCellRenderer;
import oblate.drift.Drift;
import oblate.drift.LongitudePoint;
import oblate.workbench.words.Texts;

/** A cell with a feature's residuals against time, small: dots about the line of zero, what was left out hollow at the edge. */
final class Sparkline extends DefaultTableCellRenderer {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(Sparkline.class);
    private static final double EDGE_SIGMAS = 3;
    private transient Optional<Drift> drift = Optional.empty();

    @Override
    public Component getTableCellRendererComponent(
            JTable table, Object value, boolean selected, boolean focused, int row, int column) {
        super.getTableCellRendererComponent(table, "", selected, false, row, column);
        drift = ((Fitted) value).drift();
        setToolTipText(drift.isPresent() ? TEXTS.text("column.residuals.tip") : null);
        return this;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        super.paintComponent(graphics);
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        drift.ifPresent(d -> paint(g, d));
        g.dispose();
    }

    private void paint(Graphics2D g, Drift d) {
        List<LongitudePoint> points = d.series().points();
        double first =
                points.stream().mapToDouble(p -> p.time().toEpochMilli()).min().orElse(0);
        double last =
                points.stream().mapToDouble(p -> p.time().toEpochMilli()).max().orElse(1);
        double edge = EDGE_SIGMAS * Math.max(1e-3, d.rmsDeg());
        double half = getHeight() / 2.0;
        g.setPaint(getForeground());
        g.setStroke(new BasicStroke(0.6f));
        g.draw(new Line2D.Double(5, half, getWidth() - 5.0, half));
        for (int i = 0; i < points.size(); i++) {
            double share = last > first ? (points.get(i).time().toEpochMilli() - first) / (last - first) : 0.5;
            double off = Math.max(-1, Math.min(1, d.states().get(i).residualDeg() / edge));
            double x = 6 + share * (getWidth() - 12);
            double y = half - off * (half - 5);
            Ellipse2D dot = new Ellipse2D.Double(x - 1.7, y - 1.7, 3.4, 3.4);
            if (d.states().get(i).used()) {
                g.fill(dot);
            } else {
                g.draw(dot);
            }
        }
    }
}
