/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.ArrayList;
import java.util.List;

/** The point of a globe under a body, changed in place; see {@link SubPoint}. Belongs to one thread. */
final class WorkSubPoint {
    private final Globe globe;
    private final double perRatio2;
    private final double polarRatio;
    final double[] lonDeg;
    double latCentricDeg;
    double latGraphicDeg;

    /** Sine of the planetocentric latitude. */
    double sinLat;

    /** Short over long axis of the outline seen from the body; see {@link Spheroid#apparentAxisRatio}. */
    double axisRatio;

    WorkSubPoint(Globe globe) {
        this.globe = globe;
        polarRatio = globe.figure().polarRatio();
        perRatio2 = 1 / (polarRatio * polarRatio);
        lonDeg = new double[globe.systems().size()];
    }

    /** Goes under a body, given the vector from the planet's centre to it (ICRF, any length). */
    void under(WorkVec3 direction, WorkOrientation orientation) {
        double u = direction.dot(orientation.node);
        double v = direction.dot(orientation.beyondNode);
        double w = direction.dot(orientation.pole);
        double across = Math.sqrt(u * u + v * v);
        double length = Math.sqrt(u * u + v * v + w * w);
        latCentricDeg = Math.toDegrees(Math.atan2(w, across));
        latGraphicDeg = Math.toDegrees(Math.atan2(perRatio2 * w, across));
        sinLat = w / length;
        double flat = polarRatio * across;
        axisRatio = Math.sqrt(w * w + flat * flat) / length;
        double fromNodeDeg = Math.toDegrees(Math.atan2(v, u));
        double sign = globe.longitudePositive() == LongitudeSense.WEST ? 1 : -1;
        List<RotationSystem> systems = globe.systems();
        for (int i = 0; i < lonDeg.length; i++) {
            lonDeg[i] = Angles.wrapDeg(sign * (orientation.meridianDeg(systems.get(i)) - fromNodeDeg));
        }
    }

    SubPoint frozen() {
        // Up to two the list is as small as can be, and as it is it is kept.
        List<Double> longitudes =
                switch (lonDeg.length) {
                    case 1 -> List.of(lonDeg[0]);
                    case 2 -> List.of(lonDeg[0], lonDeg[1]);
                    case 3 -> List.of(lonDeg[0], lonDeg[1], lonDeg[2]);
                    default -> boxed();
                };
        return new SubPoint(globe, longitudes, latCentricDeg, latGraphicDeg);
    }

    private List<Double> boxed() {
        List<Double> longitudes = new ArrayList<>();
        for (double lon : lonDeg) {
            longitudes.add(lon);
        }
        return longitudes;
    }
}
