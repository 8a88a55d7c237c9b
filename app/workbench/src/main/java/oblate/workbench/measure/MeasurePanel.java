/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Optional;
import javax.swing.Icon;
import javax.swing.JComponent;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.LineIcon;
import oblate.workbench.words.Texts;

/** The measuring desk. */
public final class MeasurePanel implements WorkbenchPanel {
    private static final Texts TEXTS = Texts.of(MeasurePanel.class);

    @Override
    public String id() {
        return "measure";
    }

    @Override
    public String label() {
        return TEXTS.text("label");
    }

    @Override
    public int order() {
        return 200;
    }

    @Override
    public Optional<Icon> icon() {
        return Optional.of(new LineIcon(24, Drawings::measure));
    }

    @Override
    public JComponent create(PanelContext context) {
        return new MeasureView(context);
    }
}
