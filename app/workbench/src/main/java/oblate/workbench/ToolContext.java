/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Optional;
import oblate.disc.PixelPoint;

/** What a measuring tool gets from the desk. On the event thread only. */
public interface ToolContext {
    /** The picture on the desk. */
    Optional<ToolPicture> picture();

    /** Asks the tool for its overlay again, e.g. when a calculation in the background has ended. */
    void redraw();

    /** Shows a result under the picture; it stays until the next one, or until the tool is laid down. */
    void tell(String result);

    /** Sets a mark, as a click without a tool does: it is kept in the archive, asks for its name and can be undone. */
    void addMark(PixelPoint at);

    /** The desk's own panel: archive, sky, background work, palette, settings. */
    PanelContext panel();
}
