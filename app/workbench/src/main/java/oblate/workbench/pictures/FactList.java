/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.awt.Color;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import oblate.workbench.look.StillCaret;
import oblate.workbench.look.Theme;

/** Names and values in two columns; values wrap. */
public final class FactList extends JPanel {
    private static final long serialVersionUID = 1L;
    private final transient java.util.function.Supplier<oblate.workbench.look.Palette> palette;

    /** An empty list. */
    public FactList(java.util.function.Supplier<oblate.workbench.look.Palette> palette) {
        super(new MigLayout("insets 0, gap 10 4, wrap 2, fillx, hidemode 3", "[76!,left][grow,fill]"));
        this.palette = palette;
        setOpaque(false);
    }

    /** A name with words beside it. */
    public FactList fact(String name, String value) {
        return row(name, wrapped(value, palette.get().ink(), false));
    }

    /** A name with figures beside it. */
    public FactList figure(String name, String value) {
        return row(name, wrapped(value, palette.get().ink(), true));
    }

    /** A sentence over both columns that wants a look. */
    public FactList alarm(String sentence) {
        add(wrapped(sentence, palette.get().alarm(), false), "span 2, growx, wmin 0");
        return this;
    }

    /** A quiet sentence over both columns. */
    public FactList remark(String sentence) {
        add(wrapped(sentence, palette.get().quietInk(), false), "span 2, growx, wmin 0");
        return this;
    }

    /** A component over both columns. */
    public FactList part(JComponent component) {
        add(component, "span 2, growx, wmin 0");
        return this;
    }

    private FactList row(String name, JComponent value) {
        JLabel label = new JLabel(name);
        label.setForeground(palette.get().quietInk());
        add(label, "aligny top");
        add(value, "wmin 0");
        return this;
    }

    private static JTextArea wrapped(String text, Color ink, boolean figures) {
        JTextArea area = new JTextArea(text);
        area.setCaret(new StillCaret());
        area.setEditable(false);
        area.setFocusable(false);
        area.setOpaque(false);
        area.setLineWrap(true);
        area.setWrapStyleWord(true);
        area.setBorder(null);
        area.setMargin(new java.awt.Insets(0, 0, 0, 0));
        area.setFont(figures ? Theme.figureFont(-1) : Theme.bodyFont(0));
        area.setForeground(ink);
        return area;
    }
}
