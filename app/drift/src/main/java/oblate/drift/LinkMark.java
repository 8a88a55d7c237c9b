/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.OptionalDouble;

/**
 * A mark to be linked.
 *
 * @param point where and when
 * @param kind what it is, such as "bright spot"; empty where not known
 * @param sizeDeg its length in longitude (deg); empty where not measured
 * @param feature name of its feature; empty for one that is to be found
 */
public record LinkMark(LongitudePoint point, String kind, OptionalDouble sizeDeg, String feature) {

    /** A mark of which only the place is known. */
    public static LinkMark of(LongitudePoint point) {
        return new LinkMark(point, "", OptionalDouble.empty(), "");
    }
}
