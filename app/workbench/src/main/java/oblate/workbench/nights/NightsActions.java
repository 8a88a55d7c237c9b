/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.event.ActionEvent;
import java.util.ArrayList;
import java.util.List;
import javax.swing.AbstractAction;
import javax.swing.Action;
import javax.swing.KeyStroke;

/** What can be done with nights, each with its name, a sentence and its key. */
final class NightsActions {
    private final List<Action> all = new ArrayList<>();

    /** Adds one; a blank key for none. */
    Action add(String name, String sentence, String key, Runnable deed) {
        Action action = new AbstractAction(name) {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        };
        action.putValue(Action.SHORT_DESCRIPTION, sentence);
        if (!key.isBlank()) {
            action.putValue(Action.ACCELERATOR_KEY, KeyStroke.getKeyStroke(key));
        }
        all.add(action);
        return action;
    }

    /** All of them, in order. */
    List<Action> all() {
        return List.copyOf(all);
    }
}
