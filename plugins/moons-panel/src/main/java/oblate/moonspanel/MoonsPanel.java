/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.Optional;
import javax.swing.Icon;
import javax.swing.JComponent;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.LineIcon;
import oblate.workbench.words.Texts;

/** The panel of moons: their events, and what planet and moons look like. */
public final class MoonsPanel implements WorkbenchPanel {
    private static final Texts TEXTS = Texts.of(MoonsPanel.class);

    @Override
    public String id() {
        return "moons";
    }

    @Override
    public String label() {
        return TEXTS.text("panel");
    }

    @Override
    public int order() {
        return 400;
    }

    @Override
    public Optional<Icon> icon() {
        return Optional.of(new LineIcon(24, g -> {
            g.draw(new java.awt.geom.Ellipse2D.Double(8, 8.4, 8, 7.2));
            g.fill(new java.awt.geom.Ellipse2D.Double(2.2, 11.6, 2.8, 2.8));
            g.draw(new java.awt.geom.Ellipse2D.Double(19, 9.6, 2.6, 2.6));
            g.fill(new java.awt.geom.Ellipse2D.Double(12.2, 11.2, 2, 2));
        }));
    }

    @Override
    public JComponent create(PanelContext context) {
        return new MoonsView(context, java.time.Clock.systemUTC());
    }
}
