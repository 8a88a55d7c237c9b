/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

/**
 * A seeing or transparency estimate, kept as given with the name of its scale: scales run in opposite directions and are not converted.
 *
 * @param value as given, e.g. "7" or "II"
 * @param scale name of the scale, e.g. "Pickering", "Antoniadi", "limiting magnitude"
 */
public record Rating(String value, String scale) {}
