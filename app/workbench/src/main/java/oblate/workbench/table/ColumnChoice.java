/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.table;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import oblate.report.Column;
import oblate.workbench.PanelSettings;
import oblate.workbench.words.Texts;

/** Which columns a table has; remembered for each kind of table. On the event thread only. */
final class ColumnChoice extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(ColumnChoice.class);
    private final transient PanelSettings settings;
    private final transient Runnable whenChanged;
    private final JPanel boxes = new JPanel(new MigLayout("insets 0, gap 0 1, wrap 1, fillx", "[grow,fill]"));
    private final Map<String, JCheckBox> byName = new LinkedHashMap<>();
    private final JButton all = new JButton(TEXTS.text("report.columns.all"));
    private String kind = "";

    ColumnChoice(PanelSettings settings, Runnable whenChanged) {
        super(new MigLayout("insets 0, gap 4, fill, wrap 1", "[grow,fill]", "[grow,fill][]"));
        this.settings = settings;
        this.whenChanged = whenChanged;
        setOpaque(false);
        JScrollPane scroll = new JScrollPane(boxes);
        scroll.getVerticalScrollBar().setUnitIncrement(16);
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        add(scroll, "h 120:240, grow");
        all.setName("report.columns.all");
        all.addActionListener(e -> everything());
        add(all, "growx 0");
    }

    /** Columns left out of a kind of table. */
    Set<String> leftOut(String ofKind) {
        Set<String> names = new TreeSet<>();
        for (String name : settings.text("columns." + ofKind, "").split(",")) {
            if (!name.isBlank()) {
                names.add(name);
            }
        }
        return names;
    }

    /** Shows the columns of a kind of table. */
    void show(String ofKind, List<Column> columns) {
        List<String> names = columns.stream().map(Column::name).toList();
        if (ofKind.equals(kind) && List.copyOf(byName.keySet()).equals(names)) {
            return;
        }
        kind = ofKind;
        byName.clear();
        boxes.removeAll();
        Set<String> out = leftOut(ofKind);
        for (Column column : columns) {
            JCheckBox box = new JCheckBox(column.heading(), !out.contains(column.name()));
            box.setName("report.column." + column.name());
            box.setToolTipText(column.name() + ": " + column.description());
            box.addActionListener(e -> keep());
            byName.put(column.name(), box);
            boxes.add(box);
        }
        revalidate();
        repaint();
    }

    /** How many of the columns there are, and how many are shown. */
    String words() {
        long chosen = byName.values().stream().filter(JCheckBox::isSelected).count();
        return TEXTS.text("report.columns.some", Long.toString(chosen), Integer.toString(byName.size()));
    }

    private void everything() {
        byName.values().forEach(box -> box.setSelected(true));
        keep();
    }

    private void keep() {
        Set<String> out = new TreeSet<>();
        byName.forEach((name, box) -> {
            if (!box.isSelected()) {
                out.add(name);
            }
        });
        settings.keep("columns." + kind, String.join(",", out));
        whenChanged.run();
    }
}
