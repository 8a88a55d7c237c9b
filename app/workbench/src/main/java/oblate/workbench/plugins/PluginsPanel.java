/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.plugins;

import java.awt.BorderLayout;
import java.awt.Toolkit;
import java.awt.datatransfer.StringSelection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.Icon;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.table.DefaultTableModel;
import net.miginfocom.swing.MigLayout;
import oblate.base.PluginEntry;
import oblate.base.PluginFault;
import oblate.base.PluginRefusal;
import oblate.workbench.PanelContext;
import oblate.workbench.PluginRoll;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.LineIcon;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Lists plug-ins: what failed or is switched off, what was refused, what is in use. */
public final class PluginsPanel implements WorkbenchPanel {
    private static final Texts TEXTS = Texts.of(PluginsPanel.class);

    @Override
    public String id() {
        return "plug-ins";
    }

    @Override
    public String label() {
        return TEXTS.text("label");
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
            List<PluginFault> faults = context.plugins().faults();
            List<PluginRoll.Entry> entries = context.plugins().entries();
            // Asked for after the entries, since making those may refuse some more.
            List<PluginRefusal> refusals = context.plugins().refusals();
            if (!faults.isEmpty()) {
                heading(TEXTS.text("heading.off"));
                faults.forEach(this::addFault);
            }
            if (!refusals.isEmpty()) {
                heading(TEXTS.text("heading.refused"));
                for (PluginRefusal refusal : refusals) {
                    body.add(sentence(refusal), "wmin 0");
                }
            }
            heading(TEXTS.text("heading.used"));
            body.add(
                    words(TEXTS.text(
                            "folder",
                            context.workbench()
                                    .settingsFolder()
                                    .resolve("plugins")
                                    .toString())),
                    "wmin 0");
            jars(entries).forEach(jar -> body.add(offButton(jar), "growx 0"));
            body.add(table(entries), "gaptop 8");
            body.revalidate();
            body.repaint();
        }

        private void addFault(PluginFault fault) {
            JTextArea area = words(fault.sentence());
            area.setForeground(
                    fault.details().isEmpty()
                            ? context.palette().ink()
                            : context.palette().alarm());
            area.setName("fault." + fault.jar());
            body.add(area, "wmin 0");
            JPanel buttons = new JPanel(new MigLayout("insets 0, gap 8"));
            buttons.setOpaque(false);
            JButton on = new JButton(TEXTS.text("on"));
            on.setName("on." + fault.jar());
            on.setToolTipText(TEXTS.text("on.tip"));
            on.addActionListener(e -> context.plugins().switchOn(fault));
            buttons.add(on);
            if (!fault.details().isEmpty()) {
                JButton copy = new JButton(TEXTS.text("copy"));
                copy.setName("copy." + fault.jar());
                copy.setToolTipText(TEXTS.text("copy.tip"));
                copy.addActionListener(e -> {
                    Toolkit.getDefaultToolkit()
                            .getSystemClipboard()
                            .setContents(new StringSelection(fault.text()), null);
                    context.say(TEXTS.text("copied", fault.jar()));
                });
                buttons.add(copy);
            }
            body.add(buttons, "growx 0");
        }

        private static Set<String> jars(List<PluginRoll.Entry> entries) {
            return entries.stream()
                    .map(PluginRoll.Entry::jar)
                    .filter(jar -> !jar.equals(PluginEntry.BUNDLED))
                    .collect(Collectors.toCollection(TreeSet::new));
        }

        private JButton offButton(String jar) {
            JButton off = new JButton(TEXTS.text("off", jar));
            off.setName("off." + jar);
            off.addActionListener(e -> context.plugins().switchOff(jar));
            return off;
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
            area.getAccessibleContext().setAccessibleName(text);
            area.setEditable(false);
            area.setOpaque(false);
            area.setLineWrap(true);
            area.setWrapStyleWord(true);
            area.setBorder(null);
            area.setFont(Theme.bodyFont(0));
            area.setForeground(context.palette().quietInk());
            return area;
        }

        private JComponent table(List<PluginRoll.Entry> entries) {
            DefaultTableModel model = new DefaultTableModel(
                    new String[] {
                        TEXTS.text("column.kind"),
                        TEXTS.text("column.name"),
                        TEXTS.text("column.id"),
                        TEXTS.text("column.jar")
                    },
                    0);
            entries.forEach(e -> model.addRow(new Object[] {e.kind(), e.label(), e.id(), e.jar()}));
            JTable table = new JTable(model);
            table.setDefaultEditor(Object.class, null);
            table.setRowHeight(26);
            table.setShowGrid(false);
            table.setRowSelectionAllowed(false);
            table.setName("plugin.table");
            table.getAccessibleContext().setAccessibleName(TEXTS.text("table"));
            JPanel both = new JPanel(new BorderLayout());
            both.setOpaque(false);
            both.add(table.getTableHeader(), BorderLayout.NORTH);
            both.add(table, BorderLayout.CENTER);
            return both;
        }
    }
}
