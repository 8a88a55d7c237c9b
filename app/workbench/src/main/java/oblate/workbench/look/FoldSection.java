/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.BorderLayout;
import java.awt.Cursor;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Path2D;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import oblate.workbench.words.Texts;

/** A section of the inspector: a heading that folds what is under it. */
public final class FoldSection extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(FoldSection.class);
    private final JLabel heading = new JLabel();
    private final JComponent content;
    private transient Consumer<Boolean> whenFolded = open -> {};

    /** An open section. */
    public FoldSection(String title, JComponent content) {
        super(new BorderLayout(0, 6));
        this.content = content;
        setOpaque(false);
        setBorder(BorderFactory.createEmptyBorder(8, 12, 8, 12));
        heading.setText(title);
        heading.setIconTextGap(6);
        heading.setIcon(new LineIcon(12, g -> paintArrow(g, content.isVisible())));
        heading.setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        heading.setToolTipText(TEXTS.text("fold.tip"));
        heading.addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                setOpen(!content.isVisible());
                whenFolded.accept(content.isVisible());
            }
        });
        add(heading, BorderLayout.NORTH);
        add(content, BorderLayout.CENTER);
    }

    /** Opens or folds it. */
    public void setOpen(boolean open) {
        content.setVisible(open);
        heading.repaint();
        revalidate();
    }

    /** Changes the heading. */
    public void setTitle(String title) {
        heading.setText(title);
    }

    /** Told true when a person opens the section, false when they fold it. */
    public void whenFolded(Consumer<Boolean> listener) {
        whenFolded = listener;
    }

    private static void paintArrow(Graphics2D g, boolean open) {
        Path2D arrow = new Path2D.Double();
        if (open) {
            arrow.moveTo(3, 8);
            arrow.lineTo(12, 18);
            arrow.lineTo(21, 8);
        } else {
            arrow.moveTo(8, 3);
            arrow.lineTo(18, 12);
            arrow.lineTo(8, 21);
        }
        g.setStroke(new java.awt.BasicStroke(3f));
        g.draw(arrow);
    }
}
