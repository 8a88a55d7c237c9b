/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.io.IOException;
import java.io.OutputStream;
import oblate.base.Plugin;

/** Extension point: draws charts of drifts into a file. Stateless; needs no screen. */
public interface ChartWriter extends Plugin {

    /** Draws a chart. The same order gives the same bytes. */
    void write(ChartOrder order, OutputStream out) throws IOException;
}
