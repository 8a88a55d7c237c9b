/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.OptionalDouble;

/**
 * One row of a file of marks.
 *
 * @param row its number, counted from 1 below the line of column names
 * @param feature name of the feature, empty while unnamed
 * @param point what was measured
 * @param kind what it is, such as "bright spot"; empty where not told
 * @param sizeDeg its length in longitude (deg); empty where not told
 */
public record MarkRow(int row, String feature, LongitudePoint point, String kind, OptionalDouble sizeDeg) {

    /** The mark as one to be linked. */
    public LinkMark toLink() {
        return new LinkMark(point, kind, sizeDeg, feature);
    }
}
