/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.Optional;
import javax.swing.Icon;
import javax.swing.JComponent;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.LineIcon;
import oblate.workbench.words.Texts;

/** The panel of drifts: longitude against date. */
public final class ChartPanel implements WorkbenchPanel {
    private static final Texts TEXTS = Texts.of(ChartPanel.class);

    @Override
    public String id() {
        return "longitude-date";
    }

    @Override
    public String label() {
        return TEXTS.text("panel.drift");
    }

    @Override
    public int order() {
        return 300;
    }

    @Override
    public Optional<Icon> icon() {
        return Optional.of(new LineIcon(24, Drawings::drift));
    }

    @Override
    public JComponent create(PanelContext context) {
        return new DriftView(context);
    }
}
