/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;

/** Calls back on every change of a text. */
record Typed(Runnable deed) implements DocumentListener {
    @Override
    public void insertUpdate(DocumentEvent e) {
        deed.run();
    }

    @Override
    public void removeUpdate(DocumentEvent e) {
        deed.run();
    }

    @Override
    public void changedUpdate(DocumentEvent e) {
        deed.run();
    }
}
