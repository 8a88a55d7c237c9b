/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * Which way planetographic longitude grows on a planet (IAU: so that the sub-observer longitude grows with time). {@code WEST} for direct
 * rotators (Mercury, Mars, Jupiter, Saturn, Neptune), {@code EAST} for retrograde ones (Venus, Uranus).
 */
public enum LongitudeSense {
    WEST,
    EAST
}
