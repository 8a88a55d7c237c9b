/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import oblate.workbench.words.Texts;

/**
 * The panels of the window: which there are, which are made, which one is shown. A panel is made when it is first shown, or in a quiet moment: what
 * ships so that showing it is quick, and never a stranger's before a person asks for it. On the event thread only.
 */
final class Panels {
    private static final Texts TEXTS = Texts.of(Panels.class);
    private static final int AT_FOOT = 900;
    private final PluginRoll roll;
    private final WindowFrame frame;
    private final Rail rail;
    private final Function<WorkbenchPanel, PanelSlot> newSlot;
    private final Runnable whenChanged;
    private final Map<String, PanelSlot> slots = new LinkedHashMap<>();
    private String shown = "";

    /**
     * @param newSlot gives a panel its place
     * @param whenChanged called when there are other panels, or other actions of them, or another one is shown
     */
    Panels(
            PluginRoll roll,
            WindowFrame frame,
            Rail rail,
            Function<WorkbenchPanel, PanelSlot> newSlot,
            Runnable whenChanged) {
        this.roll = roll;
        this.frame = frame;
        this.rail = rail;
        this.newSlot = newSlot;
        this.whenChanged = whenChanged;
    }

    /** Gives every panel that is switched on its slot and its place in the rail, and takes away those that are not. */
    void arrange() {
        Map<String, PanelSlot> before = new LinkedHashMap<>(slots);
        slots.clear();
        for (WorkbenchPanel panel : roll.panels()) {
            roll.ask(panel, TEXTS.text("doing.asked"), () -> slotOf(panel, before))
                    .ifPresent(s -> slots.put(s.id(), s));
        }
        rail.clear();
        for (PanelSlot slot : slots.values()) {
            rail.add(slot.id(), slot.label(), slot.icon(), slot.order() >= AT_FOOT);
        }
        before.values().stream().filter(s -> !slots.containsValue(s)).forEach(frame::remove);
        whenChanged.run();
        if (slots.containsKey(shown)) {
            rail.show(shown);
        } else if (!shown.isEmpty()) {
            show(slots.containsKey("plug-ins") ? "plug-ins" : first());
        }
    }

    private PanelSlot slotOf(WorkbenchPanel panel, Map<String, PanelSlot> before) {
        Optional<PanelSlot> known =
                before.values().stream().filter(s -> s.panel().equals(panel)).findFirst();
        return known.orElseGet(() -> newSlot.apply(panel));
    }

    List<PanelSlot> slots() {
        return List.copyOf(slots.values());
    }

    /** Id of the panel shown; empty before the first. */
    String shown() {
        return shown;
    }

    /** The wished panel if it is there, else the first. */
    String orFirst(String wish) {
        return slots.containsKey(wish) ? wish : first();
    }

    private String first() {
        return slots.keySet().stream().findFirst().orElse("");
    }

    /** Makes a panel, if it is there and not made. */
    void make(String id) {
        Optional.ofNullable(slots.get(id)).ifPresent(this::make);
    }

    /**
     * Makes one panel that ships.
     *
     * @return whether one was made
     */
    boolean makeOneThatShips() {
        Optional<PanelSlot> next = slots.values().stream()
                .filter(s -> s.component().isEmpty() && !roll.isStranger(s.panel()))
                .findFirst();
        return next.isPresent() && make(next.get());
    }

    private boolean make(PanelSlot slot) {
        if (slot.component().isPresent()) {
            return true;
        }
        if (!slots.containsValue(slot)) {
            return false;
        }
        Optional<PanelSlot> made = roll.ask(slot.panel(), TEXTS.text("doing.making"), () -> {
            slot.create();
            frame.addPanel(slot.card().orElseThrow(), slot.id());
            return slot;
        });
        if (made.isEmpty()) {
            return false;
        }
        inspectorChanged(slot);
        whenChanged.run();
        return true;
    }

    /**
     * Shows a panel; when it cannot be made, the first one.
     *
     * @return whether it or the first is shown
     */
    boolean show(String id) {
        PanelSlot slot = slots.get(id);
        if (slot == null || !make(slot)) {
            return !id.equals(first()) && !first().isEmpty() && show(first());
        }
        shown = id;
        frame.showPanel(id);
        rail.show(id);
        inspectorChanged(slot);
        whenChanged.run();
        roll.tell(slot.panel(), TEXTS.text("doing.shown"), () -> slot.component()
                .orElseThrow()
                .requestFocusInWindow());
        return true;
    }

    void inspectorChanged(PanelSlot slot) {
        slot.inspector().ifPresent(i -> frame.addInspector(i, slot.id()));
        if (slot.id().equals(shown)) {
            frame.showInspector(slot);
        }
    }

    void toggleInspector() {
        frame.toggleInspector();
        Optional.ofNullable(slots.get(shown)).ifPresent(frame::showInspector);
    }
}
