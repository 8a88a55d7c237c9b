/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import oblate.sky.GroundSite;

/**
 * The place a picture was taken from.
 *
 * @param name what it is called
 * @param ground where it is
 */
public record ShotSite(String name, GroundSite ground) {}
