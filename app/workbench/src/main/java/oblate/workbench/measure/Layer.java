/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.List;

/** Part of what is drawn over a picture. Stateless; planning needs no screen and may happen on any thread. */
public interface Layer {
    /** Lower-case word for settings. */
    String id();

    /** What a person reads on its switch. */
    String label();

    /** Works out what to draw, in picture pixels. */
    List<Drawn> plan(LayerInput input);
}
