/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.LinkedHashMap;
import java.util.Map;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.FlowingRow;
import oblate.workbench.look.LineIcon;
import oblate.workbench.words.Texts;

/** The bars over the canvas: what is done most, and below it what is shown. */
final class DeskTools extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(DeskTools.class);
    private final transient ViewSettings settings;
    private final transient Map<Layer, JToggleButton> switches = new LinkedHashMap<>();
    private final JToggleButton magnifier;
    private final JButton step;
    private final JButton system;

    DeskTools(MeasureActions actions, ViewSettings settings, ToolRack rack) {
        super(new MigLayout("insets 4 12 0 12, gap 0 0, fillx, wrap 1", "[grow,fill]"));
        this.settings = settings;
        setOpaque(false);
        FlowingRow deeds = new FlowingRow(true, 0);
        JButton fit = button(actions, "fit", "fit");
        fit.setText(TEXTS.text("tools.fit"));
        fit.setIcon(new LineIcon(15, Drawings::fit));
        deeds.add(fit);
        deeds.add(button(actions, "hand", "hand"));
        deeds.add(button(actions, "compare", "compare"));
        JButton season = button(actions, "season", "season");
        season.setText(TEXTS.text("tools.season"));
        deeds.add(season);
        deeds.add(button(actions, "accept", "next"));
        add(deeds, "wmin 0");
        FlowingRow layers = new FlowingRow(false, 0);
        for (Layer layer : Layers.all()) {
            JToggleButton toggle = toggle(actions, "layer." + layer.id(), layer.label());
            switches.put(layer, toggle);
            layers.add(toggle);
        }
        magnifier = toggle(actions, "layer.magnifier", TEXTS.text("layer.magnifier"));
        layers.add(magnifier);
        step = button(actions, "grid.step", "grid.step");
        system = button(actions, "grid.system", "grid.system");
        layers.add(step);
        layers.add(system);
        layers.add(rack);
        add(layers, "wmin 0");
    }

    private static JButton button(MeasureActions actions, String id, String name) {
        JButton button = new JButton(actions.deed(id));
        button.setToolTipText(Deed.tooltip(actions.deed(id)));
        button.setName(name);
        button.setFocusable(false);
        return button;
    }

    private static JToggleButton toggle(MeasureActions actions, String id, String label) {
        JToggleButton toggle = new JToggleButton(actions.deed(id));
        toggle.setToolTipText(Deed.tooltip(actions.deed(id)));
        toggle.setText(label);
        toggle.setName(id);
        toggle.putClientProperty("JButton.buttonType", "toolBarButton");
        toggle.setFocusable(false);
        return toggle;
    }

    /** Shows what the settings say; {@code systemWords} names the grid's system. */
    void refresh(String systemWords) {
        switches.forEach((layer, toggle) -> toggle.setSelected(settings.shows(layer)));
        magnifier.setSelected(settings.magnifies());
        step.setText(settings.gridStepDeg() + "°");
        system.setText(systemWords);
    }
}
