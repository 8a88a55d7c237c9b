/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.plugins;

import java.awt.BorderLayout;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.Icon;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.table.DefaultTableModel;
import net.miginfocom.swing.MigLayout;
import oblate.base.PluginRefusal;
import oblate.workbench.PanelContext;
import oblate.workbench.PluginRoll;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.LineIcon;
import oblate.workbench.look.Theme;

/** Lists plug-ins. */
public final class PluginsPanel implements WorkbenchPanel {
    @Override
    public String id() {
        return "plug-ins";
    }

    @Override
    public String label() {
        return "Plug-ins";
    }

    @Override
    public int order() {
        return 900;
    }

    @Override
    public Optional<Icon> icon() {
        return Optional.of(new LineIcon(24, Drawings::plugins));
    }

    @Override
    public JComponent create(PanelContext context) {
        return new View(context);
    }

    /** The component. */
    private static final class View extends JPanel {
        private static final long serialVersionUID = 1L;
        private final transient PanelContext context;
        private final JPanel body = new JPanel(new MigLayout("insets 24, gap 0 8, wrap 1, fillx", "[grow,fill]"));

        View(PanelContext context) {
            super(new BorderLayout());
            this.context = context;
            setOpaque(false);
            body.setOpaque(false);
            JScrollPane scroll = new JScrollPane(body);
            scroll.setBorder(BorderFactory.createEmptyBorder());
            scroll.getVerticalScrollBar().setUnitIncrement(24);
            add(scroll, BorderLayout.CENTER);
            context.plugins().whenChanged(this::fill);
            context.whenLookChanged(this::fill);
            fill();
        }

        private void fill() {
            body.removeAll();
            List<PluginRefusal> refusals = context.plugins().refusals();
            if (!refusals.isEmpty()) {
                heading("Refused");
                for (PluginRefusal refusal : refusals) {
                    body.add(sentence(refusal), "wmin 0");
                }
            }
            heading("In use");
            body.add(
                    words("Jars with plug-ins go into “plugins” in the settings folder: "
                            + context.workbench().settingsFolder().resolve("plugins")
                            + ". They are read when the program starts."),
                    "wmin 0");
            body.add(table(), "gaptop 8");
            body.revalidate();
            body.repaint();
        }

        private void heading(String text) {
            JLabel label = new JLabel(text);
            label.setFont(Theme.headFont(3));
            label.setForeground(context.palette().ink());
            body.add(label, "gaptop 8");
        }

        private JComponent sentence(PluginRefusal refusal) {
            JTextArea area = words(refusal.where() + " – " + refusal.what() + ": " + refusal.reason());
            area.setForeground(context.palette().alarm());
            area.setName("refusal");
            return area;
        }

        private JTextArea words(String text) {
            JTextArea area = new JTextArea(text);
            area.setEditable(false);
            area.setOpaque(false);
            area.setLineWrap(true);
            area.setWrapStyleWord(true);
            area.setBorder(null);
            area.setFont(Theme.bodyFont(0));
            area.setForeground(context.palette().quietInk());
            return area;
        }

        private JComponent table() {
            List<PluginRoll.Entry> entries = context.plugins().entries();
            DefaultTableModel model = new DefaultTableModel(new String[] {"Kind", "Name", "Id", "Jar"}, 0);
            entries.forEach(e -> model.addRow(new Object[] {e.kind(), e.label(), e.id(), e.jar()}));
            JTable table = new JTable(model);
            table.setDefaultEditor(Object.class, null);
            table.setRowHeight(26);
            table.setShowGrid(false);
            table.setRowSelectionAllowed(false);
            table.setName("plugin.table");
            JPanel both = new JPanel(new BorderLayout());
            both.setOpaque(false);
            both.add(table.getTableHeader(), BorderLayout.NORTH);
            both.add(table, BorderLayout.CENTER);
            return both;
        }
    }
}
