/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.time.Clock;
import java.util.Optional;
import javax.swing.Icon;
import javax.swing.JComponent;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.LineIcon;
import oblate.workbench.words.Texts;

/** The panel of the coming night. */
public final class TonightPanel implements WorkbenchPanel {
    private static final Texts TEXTS = Texts.of(TonightPanel.class);

    @Override
    public String id() {
        return "tonight";
    }

    @Override
    public String label() {
        return TEXTS.text("panel");
    }

    @Override
    public int order() {
        return 500;
    }

    @Override
    public Optional<Icon> icon() {
        return Optional.of(new LineIcon(24, g -> {
            g.draw(new Line2D.Double(2, 19.5, 22, 19.5));
            g.draw(new Arc2D.Double(3.5, 7, 17, 25, 0, 180, Arc2D.OPEN));
            g.fill(new Ellipse2D.Double(13.4, 4.6, 5.4, 5));
        }));
    }

    @Override
    public JComponent create(PanelContext context) {
        return new TonightView(context, Clock.systemUTC());
    }
}
