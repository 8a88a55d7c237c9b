/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.event.ActionEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.JComponent;
import javax.swing.KeyStroke;

/**
 * Everything that can be done on the measuring desk: each with a name, what its tooltip says, and its key. Keys without Ctrl that are no function keys work while the
 * picture has the focus, so that they can be typed into fields.
 */
final class MeasureActions {
    /** Fine step of marks and outlines (px and deg); Shift makes it ten times as large. */
    static final double STEP = 0.1;

    private static final double TURN_DEG = 1;
    private static final double LARGE_TURN_DEG = 15;
    private final List<One> all = new ArrayList<>();

    /**
     * An action.
     *
     * @param id lower-case words with dots
     * @param action the action, with its name, tooltip and key
     * @param listed whether it stands in the menu
     */
    record One(String id, Action action, boolean listed) {
        KeyStroke key() {
            return (KeyStroke) action.getValue(Action.ACCELERATOR_KEY);
        }

        /** Whether its key also works when the focus is beside the picture. */
        boolean everywhere() {
            int code = key() == null ? 0 : key().getKeyCode();
            return code >= KeyEvent.VK_F1 && code <= KeyEvent.VK_F12
                    || code == KeyEvent.VK_PAGE_DOWN
                    || code == KeyEvent.VK_PAGE_UP;
        }
    }

    MeasureActions(MeasureView view) {
        fitting(view);
        going(view);
        marking(view);
        outlining(view);
        looking(view);
        layers(view);
        comparing(view);
    }

    List<One> all() {
        return List.copyOf(all);
    }

    Action action(String id) {
        return all.stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow()
                .action();
    }

    private void fitting(MeasureView view) {
        add(
                "fit",
                "Fit the disc",
                "Finds the disc in the picture. Where that fails: Ctrl and drag from the disc’s centre to its edge, and it starts from there",
                key(KeyEvent.VK_F5),
                view.desk().fits()::fit);
        add(
                "hand",
                "Outline by hand",
                "Draws the outline by handles instead of fitting it",
                key(KeyEvent.VK_H),
                view::toggleHand);
    }

    private void going(MeasureView view) {
        Desk desk = view.desk();
        add(
                "accept",
                "Accept and next",
                "Goes on to the next picture without marks",
                key(KeyEvent.VK_SPACE),
                desk::acceptAndGoOn);
        add("next", "Next picture of the night", "", key(KeyEvent.VK_PAGE_DOWN), () -> desk.step(1));
        add("previous", "Previous picture of the night", "", key(KeyEvent.VK_PAGE_UP), () -> desk.step(-1));
    }

    private void marking(MeasureView view) {
        MarkHand hand = view.desk().hand();
        add("name", "Name the chosen mark", "", key(KeyEvent.VK_F2), view::renameChosen);
        add(
                "withdraw",
                "Withdraw the chosen mark",
                "It stays readable, and can be undone",
                key(KeyEvent.VK_DELETE),
                hand::withdraw);
        add("mark", "Mark at the pointer", "As a click does", key(KeyEvent.VK_INSERT), view::markAtPointer);
        quiet("enter", key(KeyEvent.VK_ENTER), view::enter);
        quiet("none", key(KeyEvent.VK_ESCAPE), view::escape);
        for (int large = 0; large < 2; large++) {
            double step = large == 0 ? STEP : 10 * STEP;
            int shift = large == 0 ? 0 : InputEvent.SHIFT_DOWN_MASK;
            quiet("left" + large, key(KeyEvent.VK_LEFT, shift), () -> view.nudge(-step, 0));
            quiet("right" + large, key(KeyEvent.VK_RIGHT, shift), () -> view.nudge(step, 0));
            quiet("up" + large, key(KeyEvent.VK_UP, shift), () -> view.nudge(0, -step));
            quiet("down" + large, key(KeyEvent.VK_DOWN, shift), () -> view.nudge(0, step));
        }
    }

    private void outlining(MeasureView view) {
        HandOutline outline = view.outline();
        for (int large = 0; large < 2; large++) {
            double step = large == 0 ? STEP : 10 * STEP;
            int shift = large == 0 ? 0 : InputEvent.SHIFT_DOWN_MASK;
            quiet("outline.smaller" + large, key(KeyEvent.VK_OPEN_BRACKET, shift), () -> outline.grow(-step));
            quiet("outline.larger" + large, key(KeyEvent.VK_CLOSE_BRACKET, shift), () -> outline.grow(step));
            quiet("outline.left" + large, key(KeyEvent.VK_COMMA, shift), () -> outline.turn(step));
            quiet("outline.right" + large, key(KeyEvent.VK_PERIOD, shift), () -> outline.turn(-step));
        }
        quiet("outline.mirror", key(KeyEvent.VK_M), outline::mirror);
        quiet("outline.fit", key(KeyEvent.VK_F), outline::fitFromHere);
    }

    private void looking(MeasureView view) {
        DiscCanvas canvas = view.canvas();
        ViewSettings settings = view.settings();
        add("whole", "Whole disc", "", key(KeyEvent.VK_0), canvas::showWhole);
        add("in", "Larger", "The wheel does it at the pointer", key(KeyEvent.VK_PLUS), () -> canvas.zoom(1.25));
        quiet("in2", key(KeyEvent.VK_EQUALS), () -> canvas.zoom(1.25));
        quiet("in3", key(KeyEvent.VK_ADD), () -> canvas.zoom(1.25));
        add("out", "Smaller", "", key(KeyEvent.VK_MINUS), () -> canvas.zoom(0.8));
        quiet("out2", key(KeyEvent.VK_SUBTRACT), () -> canvas.zoom(0.8));
        int ctrl = InputEvent.CTRL_DOWN_MASK;
        int both = ctrl | InputEvent.SHIFT_DOWN_MASK;
        add(
                "turn.right",
                "Turn the view to the right by 1°",
                "With Shift by 15°",
                key(KeyEvent.VK_RIGHT, ctrl),
                () -> settings.turnBy(TURN_DEG));
        add(
                "turn.left",
                "Turn the view to the left by 1°",
                "With Shift by 15°",
                key(KeyEvent.VK_LEFT, ctrl),
                () -> settings.turnBy(-TURN_DEG));
        quiet("turn.right15", key(KeyEvent.VK_RIGHT, both), () -> settings.turnBy(LARGE_TURN_DEG));
        quiet("turn.left15", key(KeyEvent.VK_LEFT, both), () -> settings.turnBy(-LARGE_TURN_DEG));
        add("flip", "Flip the view", "Exchanges left and right on the screen only", key(KeyEvent.VK_X), settings::flip);
        add(
                "straight",
                "Straighten the view",
                "Neither turned nor flipped any more",
                key(KeyEvent.VK_HOME),
                settings::straighten);
        add(
                "channel",
                "Next colour",
                "All colours, red, green, blue",
                key(KeyEvent.VK_C, InputEvent.SHIFT_DOWN_MASK),
                () -> settings.setChannel(settings.channel().next()));
        add(
                "sharpen",
                "Sharpen the view",
                "For the eye only; three amounts, then none",
                key(KeyEvent.VK_S, InputEvent.SHIFT_DOWN_MASK),
                settings::nextSharpen);
        add(
                "grid.step",
                "Next density of the grid",
                "5°, 10°, 15°, 30°",
                key(KeyEvent.VK_G, InputEvent.SHIFT_DOWN_MASK),
                settings::nextGridStep);
        add("grid.system", "Next rotation system of the grid", "", key(KeyEvent.VK_Y), view::nextSystem);
        add(
                "layer.magnifier",
                "Magnifier",
                "The pixels about the pointer, eight times as large",
                key(KeyEvent.VK_L),
                () -> settings.setMagnifies(!settings.magnifies()));
    }

    private void layers(MeasureView view) {
        for (Layer layer : Layers.all()) {
            int code = layer.key();
            add("layer." + layer.id(), layer.label(), layer.hint(), key(code), () -> view.settings()
                    .show(layer, !view.settings().shows(layer)));
        }
    }

    private void comparing(MeasureView view) {
        add(
                "compare",
                "Two pictures",
                "This picture and another, in the same frame",
                key(KeyEvent.VK_P),
                view::toggleCompare);
        add(
                "season",
                "This place through the season",
                "The chosen mark’s place, or the pointer’s, on every fitted picture",
                key(KeyEvent.VK_R),
                view::toggleSeason);
    }

    private void add(String id, String name, String hint, KeyStroke key, Runnable deed) {
        all.add(new One(id, action(name, hint, key, deed), true));
    }

    private void quiet(String id, KeyStroke key, Runnable deed) {
        all.add(new One(id, action(id, "", key, deed), false));
    }

    private static KeyStroke key(int code) {
        return key(code, 0);
    }

    private static KeyStroke key(int code, int modifiers) {
        return KeyStroke.getKeyStroke(code, modifiers);
    }

    private static Action action(String name, String hint, KeyStroke key, Runnable deed) {
        Action action = new AbstractAction(name) {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        };
        action.putValue(Action.ACCELERATOR_KEY, key);
        String tip = hint.isEmpty() ? name : hint;
        action.putValue(Action.SHORT_DESCRIPTION, tip + "  (" + keyText(key) + ")");
        return action;
    }

    /** A key as a person reads it, e.g. {@code Shift+G}. */
    static String keyText(KeyStroke key) {
        String modifiers = InputEvent.getModifiersExText(key.getModifiers());
        String code = key.getKeyCode() == KeyEvent.VK_PERIOD ? "." : KeyEvent.getKeyText(key.getKeyCode());
        return Optional.of(modifiers)
                        .filter(m -> !m.isEmpty())
                        .map(m -> m + "+")
                        .orElse("")
                + code;
    }

    /** Binds the keys to the picture and to the panel about it. */
    void bind(JComponent picture, JComponent panel) {
        for (One one : all) {
            JComponent where = one.everywhere() ? panel : picture;
            int when = one.everywhere() ? JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT : JComponent.WHEN_FOCUSED;
            where.getInputMap(when).put(one.key(), one.id());
            where.getActionMap().put(one.id(), one.action());
        }
    }

    /** The actions for the menu; those whose keys belong to the picture only say them in words. */
    List<Action> forMenu() {
        List<Action> menu = new ArrayList<>();
        for (One one : all) {
            if (one.listed()) {
                menu.add(one.everywhere() ? one.action() : worded(one));
            }
        }
        return menu;
    }

    private static Action worded(One one) {
        Action action = new AbstractAction(one.action().getValue(Action.NAME) + "  (" + keyText(one.key()) + ")") {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                one.action().actionPerformed(e);
            }
        };
        action.putValue(Action.SHORT_DESCRIPTION, one.action().getValue(Action.SHORT_DESCRIPTION));
        return action;
    }
}
