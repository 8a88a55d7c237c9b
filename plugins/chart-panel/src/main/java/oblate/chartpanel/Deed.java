/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.event.ActionEvent;
import javax.swing.AbstractAction;

/** An action of menus and keys. */
final class Deed extends AbstractAction {
    private static final long serialVersionUID = 1L;
    private final transient Runnable what;

    Deed(String name, Runnable what) {
        super(name);
        this.what = what;
    }

    @Override
    public void actionPerformed(ActionEvent e) {
        what.run();
    }
}
