/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.ladder;

import java.time.Instant;

/**
 * A mark drawn on a ladder's strips.
 *
 * @param feature place of its feature in the ladder's list
 * @param time middle of its picture
 * @param lonDeg planetographic longitude in the frame's system (deg)
 * @param latGraphicDeg planetographic latitude (deg)
 * @param used false when the fit left it out
 */
public record LadderMark(int feature, Instant time, double lonDeg, double latGraphicDeg, boolean used) {}
