/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Dimension;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import oblate.workbench.look.Palette;

/** What the window is put together of: rail, the panel shown, its inspector, ribbon, foot; and where they were left. On the event thread only. */
final class WindowFrame {
    private static final int INSPECTOR_PX = 408;
    private static final int INSPECTOR_LEAST_PX = 240;
    private static final int PANEL_LEAST_PX = 480;
    private final PanelSettings settings;
    private final JFrame frame = new JFrame();
    private final JPanel cards = new JPanel(new CardLayout());
    private final InspectorCards inspectorCards = new InspectorCards();
    private final JScrollPane inspectorScroll = new JScrollPane(inspectorCards);
    private final JSplitPane split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT);
    private final JPanel root = new JPanel(new BorderLayout());

    WindowFrame(PanelSettings settings) {
        this.settings = settings;
    }

    /**
     * Puts the parts in their places.
     *
     * @param whenFilesDropped gets files dropped anywhere
     * @param whenClosed called when the person closes the window
     */
    void build(
            String title,
            Rail rail,
            JComponent ribbon,
            JComponent status,
            Consumer<List<Path>> whenFilesDropped,
            Runnable whenClosed) {
        frame.setTitle(title);
        frame.setIconImages(AppIcon.images());
        frame.setDefaultCloseOperation(JFrame.DO_NOTHING_ON_CLOSE);
        frame.setName("oblate");
        inspectorScroll.setBorder(BorderFactory.createEmptyBorder());
        inspectorScroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        inspectorScroll.getVerticalScrollBar().setUnitIncrement(16);
        inspectorScroll.setMinimumSize(new Dimension(INSPECTOR_LEAST_PX, 100));
        cards.setMinimumSize(new Dimension(PANEL_LEAST_PX, 300));
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setLeftComponent(cards);
        split.setRightComponent(inspectorScroll);
        split.setResizeWeight(1);
        split.setDividerSize(6);
        JPanel foot = new JPanel(new BorderLayout());
        foot.add(ribbon, BorderLayout.CENTER);
        foot.add(status, BorderLayout.SOUTH);
        root.add(rail, BorderLayout.WEST);
        root.add(split, BorderLayout.CENTER);
        root.add(foot, BorderLayout.SOUTH);
        FileDrop.everywhere(root, whenFilesDropped);
        frame.setContentPane(root);
        frame.setBounds(bounds());
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                whenClosed.run();
            }
        });
    }

    private Rectangle bounds() {
        Rectangle screen = frame.getGraphicsConfiguration().getBounds();
        int width = Math.min(settings.number("width", 1440), screen.width);
        int height = Math.min(settings.number("height", 900), screen.height);
        int x = settings.number("x", screen.x + (screen.width - width) / 2);
        int y = settings.number("y", screen.y + (screen.height - height) / 2);
        Rectangle wish = new Rectangle(x, y, width, height);
        return screen.intersects(wish) ? wish : new Rectangle(screen.x, screen.y, width, height);
    }

    /** Lays everything out at its later size, so that showing it does not have to. */
    void layOut() {
        frame.addNotify();
        frame.validate();
        int inspectorPx = Math.max(INSPECTOR_LEAST_PX, Math.min(700, settings.number("inspector", INSPECTOR_PX)));
        divide(inspectorPx);
        frame.validate();
    }

    private void divide(int inspectorPx) {
        split.setDividerLocation(Math.max(PANEL_LEAST_PX, split.getWidth() - inspectorPx - split.getDividerSize()));
    }

    /** A strip above the panels. */
    void addAbove(JComponent strip) {
        root.add(strip, BorderLayout.NORTH);
    }

    /** Takes a panel in; it is hidden before, so that it does not think that it is seen. */
    void addPanel(JComponent card, String id) {
        card.setVisible(cards.getComponentCount() == 0);
        cards.add(card, id);
    }

    void showPanel(String id) {
        ((CardLayout) cards.getLayout()).show(cards, id);
    }

    /** Takes a panel and its inspector out. */
    void remove(PanelSlot slot) {
        slot.card().ifPresent(cards::remove);
        slot.inspector().ifPresent(inspectorCards::remove);
    }

    /** Takes an inspector in, without showing it. */
    void addInspector(JComponent inspector, String id) {
        if (inspector.getParent() != inspectorCards) {
            inspectorCards.add(inspector, id);
        }
    }

    /** Shows a panel's inspector, or none for a panel that has none. */
    void showInspector(PanelSlot slot) {
        boolean had = inspectorScroll.isVisible();
        boolean wanted = slot.inspector().isPresent() && settings.flag("inspector.shown", true);
        inspectorScroll.setVisible(wanted);
        if (slot.inspector().isPresent()) {
            ((CardLayout) inspectorCards.getLayout()).show(inspectorCards, slot.id());
        }
        if (wanted && !had) {
            divide(settings.number("inspector", INSPECTOR_PX));
        }
    }

    void toggleInspector() {
        settings.keep("inspector.shown", !settings.flag("inspector.shown", true));
    }

    void colour(Palette palette) {
        root.setBackground(palette.ground());
        frame.repaint();
    }

    /** Keeps where the window and its parts are. */
    void keepPlaces() {
        settings.keep("width", frame.getWidth());
        settings.keep("height", frame.getHeight());
        settings.keep("x", frame.getX());
        settings.keep("y", frame.getY());
        if (inspectorScroll.isVisible()) {
            settings.keep("inspector", inspectorScroll.getWidth());
        }
    }

    JFrame frame() {
        return frame;
    }
}
