/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.Color;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import oblate.workbench.look.Palette;
import oblate.workbench.look.StillCaret;
import oblate.workbench.look.Theme;

/** Sentences one under the other, wrapped to the width there is; they can be selected and copied. */
final class Sentences extends JPanel {
    private static final long serialVersionUID = 1L;
    private final transient Supplier<Palette> palette;

    Sentences(String name, Supplier<Palette> palette, String insets) {
        super(new MigLayout("insets " + insets + ", gap 0 4, wrap 1, fillx", "[grow,fill]"));
        this.palette = palette;
        setName(name);
        setOpaque(false);
    }

    /** Puts these in place of those before, in a colour of the theme. */
    void show(List<String> sentences, Function<Palette, Color> ink) {
        removeAll();
        add(sentences, ink);
    }

    /** Adds some. */
    void add(List<String> sentences, Function<Palette, Color> ink) {
        for (String sentence : sentences) {
            JTextArea area = new JTextArea(sentence);
            area.getAccessibleContext().setAccessibleName(sentence);
            area.setCaret(new StillCaret());
            area.setEditable(false);
            area.setOpaque(false);
            area.setLineWrap(true);
            area.setWrapStyleWord(true);
            area.setBorder(null);
            area.setMargin(new java.awt.Insets(0, 0, 0, 0));
            area.setFont(Theme.bodyFont(-1));
            area.setForeground(ink.apply(palette.get()));
            add(area, "wmin 0");
        }
        revalidate();
        repaint();
    }
}
