/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

/**
 * One row of a file of marks.
 *
 * @param row its number, counted from 1 below the line of column names
 * @param feature name of the feature, empty while unnamed
 * @param point what was measured
 */
public record MarkRow(int row, String feature, LongitudePoint point) {}
