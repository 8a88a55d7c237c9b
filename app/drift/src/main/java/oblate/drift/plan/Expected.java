/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import oblate.sky.RotationSystem;

/**
 * Where a feature is expected when it crosses the meridian.
 *
 * @param lonDeg longitude (deg, 0…360)
 * @param sigmaLonDeg its standard error (deg)
 * @param system system of the longitude
 * @param daysBeyondArc days since its last mark, or until its first; 0 between marks
 */
public record Expected(double lonDeg, double sigmaLonDeg, RotationSystem system, double daysBeyondArc) {}
