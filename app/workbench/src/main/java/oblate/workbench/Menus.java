/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.swing.Action;
import javax.swing.ButtonGroup;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import javax.swing.JRadioButtonMenuItem;
import oblate.workbench.actions.ActionList;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** What the window itself can do, and the menu bar: every action of the window and of the panel shown, with its key. */
final class Menus {
    private static final Texts TEXTS = Texts.of(Menus.class);
    private static final String FIRST_PANEL = "nights";
    private final MainWindow window;
    private final JMenuBar bar = new JMenuBar();
    private final List<Deed> archive;
    private final Deed undo;
    private final Deed redo;
    private final List<Deed> themes = new ArrayList<>();
    private final List<Deed> bearings = new ArrayList<>();
    private final List<Deed> view;
    private final List<Deed> help;
    private boolean filled;

    Menus(MainWindow window) {
        this.window = window;
        archive = List.of(
                Deed.of(TEXTS, "archive.open", window::openAnother),
                Deed.of(TEXTS, "archive.sample", window::openSample),
                Deed.of(TEXTS, "archive.read", window.shelf()::refresh),
                Deed.of(TEXTS, "archive.close", window::close));
        undo = Deed.of(TEXTS, "edit.undo", window.edits()::undo);
        redo = Deed.of(TEXTS, "edit.redo", window.edits()::redo);
        for (Theme theme : Theme.values()) {
            themes.add(Deed.of(TEXTS, "view.theme." + lower(theme.name()), () -> setTheme(theme)));
        }
        for (Bearing bearing : Bearing.values()) {
            bearings.add(Deed.of(TEXTS, "view.bearing." + lower(bearing.name()), () -> setBearing(bearing)));
        }
        view = List.of(
                Deed.of(
                        TEXTS,
                        "view.bearing.next",
                        () -> setBearing(window.bearing().next())),
                Deed.of(TEXTS, "view.theme.next", this::nextTheme),
                Deed.of(TEXTS, "view.inspector", window::toggleInspector));
        help = List.of(
                Deed.of(TEXTS, "help.actions", window::findAction), Deed.of(TEXTS, "help.walk", window::walkThrough));
        window.edits().whenChanged(this::rebuild);
    }

    private static String lower(String name) {
        return name.toLowerCase(Locale.ROOT).replace('_', '.');
    }

    JMenuBar bar() {
        return bar;
    }

    private void nextTheme() {
        setTheme(Theme.values()[(window.theme().ordinal() + 1) % Theme.values().length]);
    }

    private void setTheme(Theme theme) {
        window.setTheme(theme);
        rebuild();
    }

    private void setBearing(Bearing bearing) {
        window.setBearing(bearing);
        rebuild();
    }

    /** Everything that can be done now. */
    ActionList actions() {
        window.makeAllThatShip();
        ActionList all = new ActionList();
        for (PanelSlot slot : window.slots()) {
            if (slot.panel().id().equals(window.shown())) {
                all = all.with(slot.panel().label(), slot.actions());
            }
        }
        all = all.with(TEXTS.text("menu.archive"), archive).with(TEXTS.text("menu.edit"), List.of(undo, redo));
        List<Action> looks = new ArrayList<>(view);
        looks.addAll(themes);
        looks.addAll(bearings);
        all = all.with(TEXTS.text("menu.view"), looks).with(TEXTS.text("menu.go"), ways());
        for (PanelSlot slot : window.slots()) {
            if (!slot.panel().id().equals(window.shown())) {
                all = all.with(
                        slot.panel().label(),
                        slot.actions().stream().map(a -> elsewhere(slot, a)).toList());
            }
        }
        return all.with(TEXTS.text("menu.help"), help);
    }

    /** An action of a panel that is not shown: it is shown first. */
    private Action elsewhere(PanelSlot slot, Action action) {
        return Deed.named(
                slot.panel().id() + "." + action.getValue(Action.NAME),
                String.valueOf(action.getValue(Action.NAME)),
                "",
                () -> {
                    window.showPanel(slot.panel().id());
                    action.actionPerformed(new java.awt.event.ActionEvent(window.frame(), 0, ""));
                });
    }

    private List<Deed> ways() {
        List<Deed> ways = new ArrayList<>();
        List<PanelSlot> slots = window.slots();
        for (int i = 0; i < slots.size(); i++) {
            WorkbenchPanel panel = slots.get(i).panel();
            ways.add(Deed.named(
                    "go." + panel.id(),
                    panel.label(),
                    i < 9 ? "menu " + (i + 1) : "",
                    () -> window.showPanel(panel.id())));
        }
        return ways;
    }

    /** Makes the menus for the first time. */
    void fill() {
        filled = true;
        rebuild();
    }

    /** Makes the menus anew for the panel shown; while the window is being put together, with every part of it, nothing. */
    void rebuild() {
        if (!filled) {
            return;
        }
        bar.removeAll();
        bar.add(archiveMenu());
        bar.add(editMenu());
        bar.add(viewMenu());
        JMenu go = new JMenu(TEXTS.text("menu.go"));
        ways().forEach(go::add);
        bar.add(go);
        panelMenu();
        JMenu helping = new JMenu(TEXTS.text("menu.help"));
        help.forEach(helping::add);
        bar.add(helping);
        bar.revalidate();
        bar.repaint();
    }

    private JMenu archiveMenu() {
        JMenu menu = new JMenu(TEXTS.text("menu.archive"));
        window.slots().stream()
                .filter(s -> s.panel().id().equals(FIRST_PANEL))
                .flatMap(s -> s.actions().stream())
                .forEach(menu::add);
        menu.addSeparator();
        archive.subList(0, archive.size() - 1).forEach(menu::add);
        menu.addSeparator();
        menu.add(archive.get(archive.size() - 1));
        return menu;
    }

    private JMenu editMenu() {
        JMenu menu = new JMenu(TEXTS.text("menu.edit"));
        EditHistory edits = window.edits();
        undo.setEnabled(edits.nextUndo().isPresent());
        undo.putValue(
                Action.NAME,
                edits.nextUndo().map(what -> TEXTS.text("edit.undo.of", what)).orElse(TEXTS.text("edit.undo")));
        redo.setEnabled(edits.nextRedo().isPresent());
        redo.putValue(
                Action.NAME,
                edits.nextRedo().map(what -> TEXTS.text("edit.redo.of", what)).orElse(TEXTS.text("edit.redo")));
        menu.add(undo);
        menu.add(redo);
        return menu;
    }

    private JMenu viewMenu() {
        JMenu menu = new JMenu(TEXTS.text("menu.view"));
        choices(menu, themes, window.theme().ordinal());
        menu.addSeparator();
        choices(menu, bearings, window.bearing().ordinal());
        menu.addSeparator();
        view.forEach(menu::add);
        return menu;
    }

    private static void choices(JMenu menu, List<Deed> deeds, int chosen) {
        ButtonGroup group = new ButtonGroup();
        for (int i = 0; i < deeds.size(); i++) {
            JMenuItem item = new JRadioButtonMenuItem(deeds.get(i));
            item.setSelected(i == chosen);
            group.add(item);
            menu.add(item);
        }
    }

    private void panelMenu() {
        for (PanelSlot slot : window.slots()) {
            if (slot.panel().id().equals(window.shown())
                    && !slot.actions().isEmpty()
                    && !slot.panel().id().equals(FIRST_PANEL)) {
                JMenu menu = new JMenu(slot.panel().label());
                slot.actions().forEach(menu::add);
                bar.add(menu);
            }
        }
    }
}
