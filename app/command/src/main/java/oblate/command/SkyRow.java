/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.Optional;
import oblate.sky.ApparentDisc;
import oblate.sky.GroundView;

/**
 * What {@code oblate sky} tells of one instant.
 *
 * @param disc the apparent disc
 * @param ground where it stands over the site, if one was given
 */
record SkyRow(ApparentDisc disc, Optional<GroundView> ground) {}
