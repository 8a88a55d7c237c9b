/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import oblate.sky.GroundSite;

/**
 * Where the observer stands.
 *
 * @param site the place
 * @param name its name; blank for one that was typed
 */
record Place(GroundSite site, String name) {}
