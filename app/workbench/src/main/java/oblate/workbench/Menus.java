/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Toolkit;
import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.List;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.ButtonGroup;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import javax.swing.JRadioButtonMenuItem;
import javax.swing.KeyStroke;
import oblate.workbench.look.Theme;

/** The menu bar: every action of the window and of the panel shown, with its key. */
final class Menus {
    private final MainWindow window;
    private final JMenuBar bar = new JMenuBar();

    Menus(MainWindow window) {
        this.window = window;
        window.edits().whenChanged(this::rebuild);
    }

    JMenuBar bar() {
        return bar;
    }

    static KeyStroke ctrl(int key) {
        return KeyStroke.getKeyStroke(key, Toolkit.getDefaultToolkit().getMenuShortcutKeyMaskEx());
    }

    static KeyStroke ctrlShift(int key) {
        return KeyStroke.getKeyStroke(
                key, Toolkit.getDefaultToolkit().getMenuShortcutKeyMaskEx() | InputEvent.SHIFT_DOWN_MASK);
    }

    void rebuild() {
        bar.removeAll();
        bar.add(archiveMenu());
        bar.add(editMenu());
        bar.add(viewMenu());
        bar.add(goMenu());
        panelMenu();
        bar.revalidate();
        bar.repaint();
    }

    private JMenu archiveMenu() {
        JMenu menu = new JMenu("Archive");
        window.slots().stream()
                .filter(s -> s.id().equals("nights"))
                .flatMap(s -> s.actions().stream())
                .forEach(menu::add);
        menu.add(item(
                "Read again",
                KeyStroke.getKeyStroke(KeyEvent.VK_F5, InputEvent.CTRL_DOWN_MASK),
                window.shelf()::refresh));
        menu.addSeparator();
        menu.add(item("Close window", ctrl(KeyEvent.VK_W), window::close));
        return menu;
    }

    private JMenu editMenu() {
        JMenu menu = new JMenu("Edit");
        EditHistory edits = window.edits();
        JMenuItem undo = item("Undo " + edits.nextUndo().orElse(""), ctrl(KeyEvent.VK_Z), edits::undo);
        undo.setEnabled(edits.nextUndo().isPresent());
        JMenuItem redo = item("Redo " + edits.nextRedo().orElse(""), ctrlShift(KeyEvent.VK_Z), edits::redo);
        redo.setEnabled(edits.nextRedo().isPresent());
        menu.add(undo);
        menu.add(redo);
        return menu;
    }

    private JMenu viewMenu() {
        JMenu menu = new JMenu("View");
        ButtonGroup themes = new ButtonGroup();
        for (Theme theme : Theme.values()) {
            JRadioButtonMenuItem choice = new JRadioButtonMenuItem(theme.label(), theme == window.theme());
            choice.addActionListener(e -> {
                window.setTheme(theme);
                rebuild();
            });
            themes.add(choice);
            menu.add(choice);
        }
        menu.addSeparator();
        ButtonGroup bearings = new ButtonGroup();
        for (Bearing bearing : Bearing.values()) {
            JRadioButtonMenuItem choice =
                    new JRadioButtonMenuItem(capital(bearing.words()), bearing == window.bearing());
            choice.addActionListener(e -> setBearing(bearing));
            bearings.add(choice);
            menu.add(choice);
        }
        menu.add(item(
                "Next way up",
                KeyStroke.getKeyStroke(KeyEvent.VK_F6, 0),
                () -> setBearing(window.bearing().next())));
        menu.addSeparator();
        menu.add(
                item("Show or hide the inspector", KeyStroke.getKeyStroke(KeyEvent.VK_F9, 0), window::toggleInspector));
        return menu;
    }

    private void setBearing(Bearing bearing) {
        window.setBearing(bearing);
        rebuild();
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
    }

    private JMenu goMenu() {
        JMenu menu = new JMenu("Go");
        List<PanelSlot> slots = window.slots();
        for (int i = 0; i < slots.size(); i++) {
            String id = slots.get(i).id();
            KeyStroke key = i < 9 ? ctrl(KeyEvent.VK_1 + i) : null;
            menu.add(item(slots.get(i).label(), key, () -> window.showPanel(id)));
        }
        return menu;
    }

    private void panelMenu() {
        for (PanelSlot slot : window.slots()) {
            if (slot.id().equals(window.shown())
                    && !slot.actions().isEmpty()
                    && !slot.id().equals("nights")) {
                JMenu menu = new JMenu(slot.label());
                slot.actions().forEach(menu::add);
                bar.add(menu);
            }
        }
    }

    private static JMenuItem item(String text, KeyStroke key, Runnable deed) {
        Action action = new AbstractAction(text) {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        };
        action.putValue(Action.ACCELERATOR_KEY, key);
        return new JMenuItem(action);
    }
}
