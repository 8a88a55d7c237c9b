/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Component;
import java.awt.Container;
import java.awt.Window;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JMenu;
import javax.swing.JPopupMenu;
import javax.swing.SwingUtilities;
import oblate.workbench.look.Theme;

/**
 * The theme of the window, and its change: what is seen is given the new look at once, the other panels when they are shown next or in a quiet
 * moment. On the event thread only.
 */
final class Look {
    private final PanelSettings settings;
    private final JFrame frame;
    private final Panels panels;
    private final QuietTime quiet;
    private final Runnable whenChanged;
    private final Set<JComponent> inOldLook = Collections.newSetFromMap(new IdentityHashMap<>());
    private Theme theme;

    /**
     * @param theme the one that is installed
     * @param settings keep the chosen one
     * @param whenChanged called when what is seen has the new look
     */
    Look(Theme theme, PanelSettings settings, JFrame frame, Panels panels, QuietTime quiet, Runnable whenChanged) {
        this.theme = theme;
        this.settings = settings;
        this.frame = frame;
        this.panels = panels;
        this.quiet = quiet;
        this.whenChanged = whenChanged;
    }

    /** The theme that was chosen last. */
    static Theme kept(DeskSettings kept) {
        String name = kept.forPanel("desk").text("theme", Theme.DUSK.name());
        return List.of(Theme.values()).stream()
                .filter(t -> t.name().equals(name))
                .findFirst()
                .orElse(Theme.DUSK);
    }

    Theme theme() {
        return theme;
    }

    /** Changes the theme: the colours at once, the look of what is seen right after, in a turn of its own. */
    void change(Theme chosen) {
        theme = chosen;
        settings.keep("theme", chosen.name());
        chosen.install();
        SwingUtilities.invokeLater(this::dressWhatIsSeen);
    }

    private void dressWhatIsSeen() {
        for (PanelSlot slot : panels.slots()) {
            if (!slot.id().equals(panels.shown())) {
                parts(slot).forEach(inOldLook::add);
            }
        }
        for (Window window : Window.getWindows()) {
            dress(window);
        }
        frame.invalidate();
        frame.validate();
        whenChanged.run();
        quiet.whenQuiet(this::dressOne);
    }

    /** Makes sure that a panel has the present look. */
    void wear(String panelId) {
        panels.slots().stream()
                .filter(s -> s.id().equals(panelId))
                .flatMap(Look::parts)
                .forEach(this::catchUp);
    }

    private static Stream<JComponent> parts(PanelSlot slot) {
        return Stream.of(slot.card(), slot.inspector()).flatMap(Optional::stream);
    }

    private boolean dressOne() {
        Optional<JComponent> next = inOldLook.stream().findFirst();
        next.ifPresent(this::catchUp);
        return next.isPresent();
    }

    private void catchUp(JComponent part) {
        if (inOldLook.remove(part)) {
            dress(part);
            part.revalidate();
        }
    }

    /** As the toolkit does it for a whole window, but for the parts that can wait. */
    private void dress(Component component) {
        if (component instanceof JComponent part) {
            if (inOldLook.contains(part)) {
                return;
            }
            part.updateUI();
            JPopupMenu popup = part.getComponentPopupMenu();
            if (popup != null) {
                SwingUtilities.updateComponentTreeUI(popup);
            }
        }
        Component[] inside = component instanceof JMenu menu
                ? menu.getMenuComponents()
                : component instanceof Container container ? container.getComponents() : new Component[0];
        for (Component child : inside) {
            dress(child);
        }
    }
}
