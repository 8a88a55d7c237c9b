/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

/** The plain meaning of a range of longitudes, for comparison: go from its start until its end, and see whether one is met. */
final class RoundTheCircle {
    private RoundTheCircle() {}

    static boolean isIn(double deg, double from, double to) {
        if (Math.abs(to - from) >= 360) {
            return true;
        }
        double width = ((to - from) % 360 + 360) % 360;
        double way = ((deg - from) % 360 + 360) % 360;
        return way <= width;
    }
}
