/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.List;

/** Part of what is drawn over a picture. Stateless; planning needs no screen and may happen on any thread. */
public interface Layer {
    /** Lower-case word for settings. */
    String id();

    /** What a person reads on its switch. */
    String label();

    /** What the switch's tooltip says. */
    String hint();

    /** Key that shows and hides it, a code of {@link java.awt.event.KeyEvent}. */
    int key();

    /** Works out what to draw, in picture pixels. */
    List<Drawn> plan(LayerInput input);
}
