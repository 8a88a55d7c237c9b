/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.io.IOException;
import java.io.OutputStream;
import oblate.base.Plugin;

/** Extension point: draws charts into a file. Stateless; needs no screen. */
public interface ChartWriter extends Plugin {

    /** Whether it can draw this. */
    boolean draws(ChartContent content);

    /**
     * Draws a chart of a content it said it can draw. The same order gives the same bytes.
     *
     * @throws IOException when the stream does not take them
     */
    void write(ChartOrder order, OutputStream out) throws IOException;
}
