/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.Optional;
import javax.swing.Icon;
import javax.swing.JComponent;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.LineIcon;
import oblate.workbench.words.Texts;

/** The panel of speeds: speed against latitude, beside a published profile of winds. */
public final class SpeedPanel implements WorkbenchPanel {
    private static final Texts TEXTS = Texts.of(SpeedPanel.class);

    @Override
    public String id() {
        return "speed-latitude";
    }

    @Override
    public String label() {
        return TEXTS.text("panel.speed");
    }

    @Override
    public int order() {
        return 310;
    }

    @Override
    public Optional<Icon> icon() {
        return Optional.of(new LineIcon(24, SpeedPanel::paint));
    }

    @Override
    public JComponent create(PanelContext context) {
        return new SpeedView(context);
    }

    /** Axes, a wavy profile, two points. */
    private static void paint(Graphics2D g) {
        g.setStroke(new BasicStroke(1.6f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(new Line2D.Double(4, 3, 4, 21));
        g.draw(new Line2D.Double(4, 21, 21, 21));
        Path2D wind = new Path2D.Double();
        wind.moveTo(9, 19);
        wind.curveTo(9, 15, 15, 16, 15, 12);
        wind.curveTo(15, 8, 9, 8, 10, 4);
        g.draw(wind);
        g.fill(new Ellipse2D.Double(16, 6, 3.6, 3.6));
        g.fill(new Ellipse2D.Double(17, 14, 3.6, 3.6));
    }
}
