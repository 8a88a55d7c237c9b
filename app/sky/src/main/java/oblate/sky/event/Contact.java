/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import oblate.sky.UtcTime;

/**
 * One moment of an event.
 *
 * @param time when it is seen from the standpoint asked for, the Earth's centre or a place on the ground
 * @param sigmaS standard error (s), from the orbit, the radii, and how slowly the edge is crossed; large where it is grazed
 * @param speedKmS speed at which the moon crosses the edge at right angles to it (km/s, positive); small where it is grazed
 */
public record Contact(UtcTime time, double sigmaS, double speedKmS) {}
