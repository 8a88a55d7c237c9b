/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import oblate.drift.plan.PlanItem;
import oblate.sky.UtcTime;

/** Where in the night the pointer is, and what is chosen; shared by all that draws the night. On the event thread only. */
final class NightPointer {
    private final List<Runnable> listeners = new ArrayList<>();
    private final List<Runnable> choiceListeners = new ArrayList<>();
    private Optional<UtcTime> hover = Optional.empty();
    private Optional<PlanItem> chosen = Optional.empty();

    Optional<UtcTime> hover() {
        return hover;
    }

    Optional<PlanItem> chosen() {
        return chosen;
    }

    void hover(Optional<UtcTime> time) {
        change(time, chosen);
    }

    void choose(Optional<PlanItem> item) {
        change(hover, item);
    }

    private void change(Optional<UtcTime> time, Optional<PlanItem> item) {
        boolean moved = !Objects.equals(time, hover);
        boolean other = !Objects.equals(item, chosen);
        hover = time;
        chosen = item;
        if (moved || other) {
            List.copyOf(listeners).forEach(Runnable::run);
        }
        if (other) {
            List.copyOf(choiceListeners).forEach(Runnable::run);
        }
    }

    /** Called when something else is chosen. */
    void whenChosen(Runnable listener) {
        choiceListeners.add(listener);
    }

    /** Called when the pointer has moved, too. */
    void whenChanged(Runnable listener) {
        listeners.add(listener);
    }
}
