/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench.window;

import java.awt.Component;
import java.awt.Container;
import java.awt.Frame;
import java.awt.Rectangle;
import java.awt.Toolkit;
import java.lang.reflect.InvocationTargetException;
import java.util.Arrays;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.RepaintManager;
import javax.swing.SwingUtilities;

/**
 * Runs the program's own main class, or shows a bare frame in the same look, and prints the instant (ms since 1970) at which a person could use it:
 * the wall of pictures is laid out with its rows, and nothing waits to be painted. Then it ends the process.
 */
public final class StartProbe {
    private StartProbe() {}

    /**
     * Starts what is asked for, and the probe beside it.
     *
     * @param words {@code bare}, or {@code program} and the words of the command line
     */
    public static void main(String[] words) throws ReflectiveOperationException {
        Thread probe = new Thread(StartProbe::look, "start-probe");
        probe.setDaemon(true);
        probe.start();
        if (words[0].equals("bare")) {
            SwingUtilities.invokeLater(StartProbe::bareFrame);
        } else {
            Class.forName("oblate.launcher.Main")
                    .getMethod("main", String[].class)
                    .invoke(null, (Object) Arrays.copyOfRange(words, 1, words.length));
        }
    }

    private static void bareFrame() {
        com.formdev.flatlaf.FlatDarkLaf.setup();
        JFrame frame = new JFrame("bare");
        JLabel label = new JLabel("An empty window");
        label.setName("bare");
        frame.add(label);
        frame.setSize(1440, 900);
        frame.setVisible(true);
    }

    private static void look() {
        AtomicBoolean usable = new AtomicBoolean();
        try {
            while (!usable.get()) {
                Thread.sleep(3);
                // Asking for the frames does not start the toolkit, so that the probe costs nothing before the program
                // does it.
                if (Frame.getFrames().length > 0) {
                    SwingUtilities.invokeAndWait(() -> usable.set(isUsable()));
                }
            }
        } catch (InterruptedException | InvocationTargetException e) {
            throw new IllegalStateException(e);
        }
        Toolkit.getDefaultToolkit().sync();
        System.out.println("usable " + System.currentTimeMillis());
        System.out.flush();
        System.exit(0);
    }

    private static boolean isUsable() {
        for (Frame frame : Frame.getFrames()) {
            if (frame.isShowing() && frame instanceof JFrame window) {
                Component awaited = find(window.getContentPane());
                if (awaited != null && awaited.isShowing() && isWhole(awaited) && isPainted(window)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean isWhole(Component awaited) {
        return awaited.getName().equals("bare")
                || awaited.getPreferredSize().height > awaited.getParent().getHeight();
    }

    private static boolean isPainted(JFrame window) {
        Rectangle dirty = RepaintManager.currentManager(window).getDirtyRegion(window.getRootPane());
        return dirty.isEmpty();
    }

    private static Component find(Container in) {
        for (Component child : in.getComponents()) {
            if ("wall".equals(child.getName()) || "bare".equals(child.getName())) {
                return child instanceof JComponent ? child : null;
            }
            Component found = child instanceof Container c ? find(c) : null;
            if (found != null) {
                return found;
            }
        }
        return null;
    }
}
