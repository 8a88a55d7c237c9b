/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.time.Instant;
import java.util.List;

/**
 * A map made of one picture or several.
 *
 * @param frame the sheet
 * @param planes one or three arrays of {@code heightPx × widthPx} brightnesses, row after row from the top left, black at 0; NaN where nothing is known. Not copied
 * @param contributions what each picture gave, in the order they were taken
 */
public record PlanetMap(MapFrame frame, List<float[]> planes, List<Contribution> contributions) {

    /**
     * What one picture gave.
     *
     * @param name of the picture
     * @param time its middle (UTC)
     * @param meridianDeg its central meridian in the map's system (deg)
     * @param covered share of the sheet it could fill, 0…1
     * @param weight share of the map's weight that is its, 0…1
     * @param gain what its brightness was multiplied by to match the pictures before it
     * @param law how it darkens towards the limb, as taken out
     */
    public record Contribution(
            String name, Instant time, double meridianDeg, double covered, double weight, double gain, LimbLaw law) {}

    /** Copies the lists, not the arrays. */
    public PlanetMap {
        planes = List.copyOf(planes);
        contributions = List.copyOf(contributions);
    }

    /** Share of the sheet that is known, 0…1. */
    public double covered() {
        int n = 0;
        for (float v : planes.get(0)) {
            n += Float.isNaN(v) ? 0 : 1;
        }
        return (double) n / planes.get(0).length;
    }
}
