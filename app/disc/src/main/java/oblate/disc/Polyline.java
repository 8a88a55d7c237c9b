/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.List;

/**
 * A line to draw on a picture.
 *
 * @param role "outline", "terminator", "meridian", "parallel", "central-meridian", "equator", "ring"
 * @param label e.g. "30" for a parallel at +30° or a meridian at 30° of the grid's system; empty when there is none
 * @param points at least two, in order; closed lines repeat the first
 */
public record Polyline(String role, String label, List<PixelPoint> points) {

    /** Copies the list. */
    public Polyline {
        points = List.copyOf(points);
    }
}
