/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.List;
import oblate.disc.PixelPoint;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Pattern;

/** Something a layer wants drawn, in picture pixels. */
public sealed interface Drawn {
    /**
     * A line.
     *
     * @param ink what it means
     * @param pattern how sure it is
     * @param points in order
     * @param strong drawn thicker
     */
    record Line(Ink ink, Pattern pattern, List<PixelPoint> points, boolean strong) implements Drawn {
        /** Copies the list. */
        public Line {
            points = List.copyOf(points);
        }
    }

    /**
     * A point.
     *
     * @param ink what it means
     * @param pattern how sure it is
     * @param at where
     * @param label written beside it; may be empty
     * @param radiusScreenPx radius of its ring (screen px)
     */
    record Spot(Ink ink, Pattern pattern, PixelPoint at, String label, double radiusScreenPx) implements Drawn {}

    /**
     * Words at a place.
     *
     * @param ink what they mean
     * @param at where their middle is
     * @param text the words
     */
    record Words(Ink ink, PixelPoint at, String text) implements Drawn {}

    /**
     * Words beside a round thing.
     *
     * @param ink what they mean
     * @param at its middle
     * @param radiusPx its radius (picture px)
     * @param text the words
     */
    record Label(Ink ink, PixelPoint at, double radiusPx, String text) implements Drawn {}
}
