/* SPDX-License-Identifier: Apache-2.0 */
/**
 * What a night has to offer over a place: when followed features cross the central meridian, what the moons do, how high, how dark, how long a capture may last.
 *
 * <p>The concept a newcomer gets wrong: a feature is not seen when it is up but when it is turned to us, and how well that is known fades with every day since
 * its last mark. Each time carries its error; a feature that cannot be timed is listed with the reason, never left out in silence.
 */
package oblate.drift.plan;
