/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

/**
 * A link settled by hand.
 *
 * @param mark number of the mark, from 0
 * @param track where it belongs; empty for no track
 * @param reason why; never empty
 */
public record Settlement(int mark, String track, String reason) {}
