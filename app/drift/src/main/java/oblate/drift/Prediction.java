/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;

/**
 * Where a feature is expected.
 *
 * @param time the instant, UTC
 * @param lonDeg longitude (deg, not reduced to one turn) in the system of the drift
 * @param sigmaLonDeg its standard error (deg): of the curve, of the choice between kinds of motion, and of what no fit can know
 * @param daysBeyondArc days after the last or before the first mark used; 0 within the arc
 */
public record Prediction(Instant time, double lonDeg, double sigmaLonDeg, double daysBeyondArc) {

    /** Longitude from 0 to 360 (deg). */
    public double reducedLonDeg() {
        double lon = lonDeg % 360;
        double positive = lon < 0 ? lon + 360 : lon;
        return positive >= 360 ? 0 : positive;
    }
}
