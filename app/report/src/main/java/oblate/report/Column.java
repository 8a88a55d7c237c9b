/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

/**
 * A column of a table.
 *
 * @param name lower-case with the unit at the end, e.g. "lon_deg"
 * @param heading what a person reads, e.g. "Lon II"
 * @param unit VOUnits string, e.g. "deg"; empty for none
 * @param ucd UCD1+ word, e.g. "pos.bodyrc.lon"
 * @param description one sentence: system, direction, latitude kind
 * @param decimals digits after the point for numbers; −1 for texts and times
 */
public record Column(String name, String heading, String unit, String ucd, String description, int decimals) {}
