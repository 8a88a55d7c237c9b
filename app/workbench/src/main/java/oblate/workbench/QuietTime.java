/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.BooleanSupplier;
import javax.swing.Timer;

/** What can wait until no work is under way: done in small steps, with pauses in which the event thread is free. On the event thread only. */
final class QuietTime {
    private static final int FIRST_MS = 600;
    private static final int BETWEEN_MS = 120;
    private final Background background;
    private final BooleanSupplier isOver;
    private final Deque<BooleanSupplier> deeds = new ArrayDeque<>();
    private final Timer timer = new Timer(BETWEEN_MS, e -> next());

    /**
     * @param isOver whether the window is closed, so that nothing more is to be done
     */
    QuietTime(Background background, BooleanSupplier isOver) {
        this.background = background;
        this.isOver = isOver;
        timer.setInitialDelay(FIRST_MS);
    }

    /**
     * Does something in quiet moments, after what was asked for before.
     *
     * @param step does a part of it; says whether there was a part to do
     */
    void whenQuiet(BooleanSupplier step) {
        deeds.add(step);
        timer.start();
    }

    private void next() {
        if (isOver.getAsBoolean()) {
            deeds.clear();
        }
        if (deeds.isEmpty()) {
            timer.stop();
        } else if (background.isIdle() && !deeds.peek().getAsBoolean()) {
            deeds.poll();
        }
    }
}
