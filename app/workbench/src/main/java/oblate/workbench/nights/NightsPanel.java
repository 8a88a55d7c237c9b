/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.Optional;
import javax.swing.Icon;
import javax.swing.JComponent;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.LineIcon;
import oblate.workbench.words.Texts;

/** Pictures by night, what the season shows of the planet, what wants a look; files dropped on the window are filed here. */
public final class NightsPanel implements WorkbenchPanel {
    private static final Texts TEXTS = Texts.of(NightsPanel.class);

    @Override
    public String id() {
        return "nights";
    }

    @Override
    public String label() {
        return TEXTS.text("nights.label");
    }

    @Override
    public int order() {
        return 100;
    }

    @Override
    public Optional<Icon> icon() {
        return Optional.of(new LineIcon(24, Drawings::nights));
    }

    @Override
    public JComponent create(PanelContext context) {
        return new NightsView(context);
    }
}
