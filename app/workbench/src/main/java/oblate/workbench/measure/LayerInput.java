/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.List;
import java.util.Optional;
import oblate.archive.StoredMark;
import oblate.disc.DiscFrame;
import oblate.disc.Trust;
import oblate.sky.RotationSystem;

/**
 * What layers plan from. Immutable.
 *
 * @param frame the placed disc
 * @param trust what its fit thinks of itself
 * @param system system of the meridians
 * @param marks current marks of the picture
 * @param chosenMark the mark being worked on
 * @param expected features expected on this picture
 * @param moons moons and shadows expected on it
 * @param gridStepDeg distance between lines of the grid (deg)
 */
public record LayerInput(
        DiscFrame frame,
        Trust trust,
        RotationSystem system,
        List<StoredMark> marks,
        Optional<Long> chosenMark,
        List<Expected> expected,
        List<MoonSpot> moons,
        double gridStepDeg) {
    /** Copies the lists. */
    public LayerInput {
        marks = List.copyOf(marks);
        expected = List.copyOf(expected);
        moons = List.copyOf(moons);
    }
}
