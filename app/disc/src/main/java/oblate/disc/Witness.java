/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * One source's word on the pole angle, the scale, or whether the picture is mirrored.
 *
 * @param quantity "pole angle" (deg), "scale" (arcsec/px), "mirrored" (probability, 1 yes, 0 no), "clock offset" (s) or "north end" (probability that the end called north
 *     is north)
 * @param source "limb", "belts", "rings", "moons", "phase", "run", "kit", "hand", "hint", "picture"
 * @param value its word, in the quantity's unit
 * @param sigma its standard error, in the same unit; of a probability p the root of p (1 − p)
 */
public record Witness(String quantity, String source, double value, double sigma) {}
