/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

/**
 * A moon crossing the plane of its planet's axis and the line of sight.
 *
 * @param beforeDay moment of the viewer's clock before
 * @param afterDay moment after, with no other conjunction between
 * @param behind whether the moon stands beyond the planet
 */
record Conjunction(double beforeDay, double afterDay, boolean behind) {}
