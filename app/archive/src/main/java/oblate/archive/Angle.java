/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

/** Longitudes brought into range. */
final class Angle {
    private Angle() {}

    /** The same direction, at least 0 and below 360 (deg). */
    static double turn(double deg) {
        double in = deg % 360;
        if (in < 0) {
            in += 360;
        }
        return in >= 360 ? 0 : in;
    }
}
