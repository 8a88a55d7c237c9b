/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.List;
import java.util.Optional;

/**
 * What the moons beside a placed disc say.
 *
 * @param points small bright things found beside it, brightest first
 * @param matches those that are moons
 * @param placement the disc's placement turned or mirrored as the moons ask
 * @param turned probability that the pole is the other way round than the fit has it
 * @param mirrored probability that the picture is mirrored
 * @param clock what they say about the time
 */
public record MoonFinding(
        List<PointLight> points,
        List<Match> matches,
        Placement placement,
        double turned,
        double mirrored,
        Optional<ClockFinding> clock) {

    /**
     * A moon found.
     *
     * @param moon its name
     * @param light where it was found
     * @param aheadPx how far it lies from where the sky has it at the stated time, to the right (px)
     * @param belowPx the same, down (px)
     */
    public record Match(String moon, PointLight light, double aheadPx, double belowPx) {}

    /** Copies the lists. */
    public MoonFinding {
        points = List.copyOf(points);
        matches = List.copyOf(matches);
    }
}
