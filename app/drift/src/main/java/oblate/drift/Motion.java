/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.RotationSystem;

/**
 * What a drift means for a turning planet: its rate in another system, the rotation period, the speed. Stateless.
 *
 * <p>A feature's angle from the node of the planet's equator, counted eastward, is W − L where longitude L grows westward and W + L where it grows
 * eastward. The feature therefore turns at w − D or w + D degrees per day, w the rate of the system and D the drift. By the IAU's rule longitudes
 * grow so that the sub-observer longitude grows with time; hence on every planet a feature that runs ahead of its system has a decreasing longitude.
 */
public final class Motion {
    private static final double DAY_S = 86_400;
    private static final double LAT_STEP_DEG = 1e-3;

    private Motion() {}

    /** Rate (deg per day about the north pole, positive eastward) at which a feature with a drift (deg per day, in a system) turns. */
    public static double turnDegPerDay(Globe globe, RotationSystem system, double driftDegPerDay) {
        return system.degPerDay() + east(globe) * driftDegPerDay;
    }

    /** Drift (deg per day) in another system: exact, because systems turn at constant rates. */
    public static double driftInSystem(Globe globe, double driftDegPerDay, RotationSystem from, RotationSystem to) {
        return driftDegPerDay + east(globe) * (from.degPerDay() - to.degPerDay());
    }

    /**
     * Sidereal rotation period (s, positive): 86400 s · 360 / |w ∓ D|.
     *
     * @param driftDegPerDay drift in the system (deg per day)
     * @return infinite for a feature that does not turn at all
     */
    public static double periodS(Globe globe, RotationSystem system, double driftDegPerDay) {
        return DAY_S * 360 / Math.abs(turnDegPerDay(globe, system, driftDegPerDay));
    }

    /** Drift (deg per day) in a system of a feature with a rotation period (s), in the planet's sense of rotation. */
    public static double driftOfPeriod(Globe globe, RotationSystem system, double periodS) {
        double turn = Math.copySign(DAY_S * 360 / periodS, system.degPerDay());
        return east(globe) * (turn - system.degPerDay());
    }

    /**
     * Speed (m/s) relative to the IAU's system, positive in the planet's sense of rotation: r(g) · dλ/dt, with r(g) = a cos g / √(1 − e² sin² g) the
     * distance from the spin axis.
     *
     * @param iauDriftDegPerDay drift in the IAU's system (deg per day)
     * @param latGraphicDeg planetographic latitude (deg)
     */
    public static double speedMS(Globe globe, double iauDriftDegPerDay, double latGraphicDeg) {
        double sense = east(globe) * Math.signum(globe.iauSystem().degPerDay());
        return sense * iauDriftDegPerDay * metresPerSecondPerDegPerDay(globe, latGraphicDeg);
    }

    /** Size (m/s) of one degree per day at a planetographic latitude (deg). */
    public static double metresPerSecondPerDegPerDay(Globe globe, double latGraphicDeg) {
        return 1000 * globe.figure().axisDistanceKm(latGraphicDeg) * Math.toRadians(1) / DAY_S;
    }

    /** Standard error (m/s) of the speed from those of drift (deg per day) and latitude (deg), taken as independent. */
    static double sigmaSpeedMS(
            Globe globe, double iauDriftDegPerDay, double sigmaDrift, double latGraphicDeg, double sigmaLatDeg) {
        double north = Math.min(90, latGraphicDeg + LAT_STEP_DEG);
        double south = Math.max(-90, latGraphicDeg - LAT_STEP_DEG);
        double perDegree = (metresPerSecondPerDegPerDay(globe, north) - metresPerSecondPerDegPerDay(globe, south))
                / (north - south);
        return Math.hypot(
                sigmaDrift * metresPerSecondPerDegPerDay(globe, latGraphicDeg),
                sigmaLatDeg * perDegree * iauDriftDegPerDay);
    }

    private static int east(Globe globe) {
        return globe.longitudePositive() == LongitudeSense.EAST ? 1 : -1;
    }
}
