/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.CardLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Toolkit;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.Timer;

/** A place at the top into which a sheet slides; at once where the desktop wants no motion. */
final class SlideIn extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final int STEP_MS = 15;
    private static final double SHARE_PER_STEP = 0.14;
    private final Timer motion;
    private double share = 1;

    private final boolean moving;

    /**
     * @param wanted whether this person wants motion at all
     */
    SlideIn(boolean wanted) {
        super(new CardLayout());
        moving = wanted;
        setOpaque(false);
        setVisible(false);
        motion = new Timer(STEP_MS, e -> step());
    }

    /** Takes a sheet in, to be shown when it is opened; each has a name of its own. */
    void hold(JComponent sheet) {
        add(sheet, sheet.getName());
    }

    /** Shows a sheet that it holds. */
    void open(JComponent sheet) {
        ((CardLayout) getLayout()).show(this, sheet.getName());
        if (!isVisible() && moving && desktopMoves()) {
            share = 0;
            motion.start();
        } else {
            share = 1;
        }
        setVisible(true);
        revalidate();
        repaint();
    }

    /** Takes the sheet away. */
    void close() {
        motion.stop();
        setVisible(false);
    }

    private void step() {
        share = Math.min(1, share + SHARE_PER_STEP);
        if (share >= 1) {
            motion.stop();
        }
        revalidate();
    }

    private static boolean desktopMoves() {
        Object gtk = Toolkit.getDefaultToolkit().getDesktopProperty("gnome.Gtk/EnableAnimations");
        return !Integer.valueOf(0).equals(gtk) && !Boolean.FALSE.equals(gtk);
    }

    @Override
    public Dimension getPreferredSize() {
        // As high as the one shown, not as the highest of all.
        for (Component sheet : getComponents()) {
            if (sheet.isVisible()) {
                Dimension full = sheet.getPreferredSize();
                return new Dimension(full.width, (int) Math.round(full.height * share));
            }
        }
        return new Dimension();
    }
}
