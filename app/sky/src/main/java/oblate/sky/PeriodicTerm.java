/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * One periodic term of a pole or prime-meridian expression: coefficient × sin or cos of (phase + rate·T + accel·T²), T in Julian centuries of
 * TDB from J2000.
 *
 * @param coefficientDeg size (deg)
 * @param cosine true for a cosine, false for a sine
 * @param phaseDeg angle at J2000 (deg)
 * @param rateDegPerCentury rate of the angle (deg per Julian century)
 * @param accelDegPerCentury2 quadratic term of the angle (deg per century²), usually 0
 */
public record PeriodicTerm(
        double coefficientDeg, boolean cosine, double phaseDeg, double rateDegPerCentury, double accelDegPerCentury2) {

    /** coefficient × sin(phase + rate·T), angles in deg, rate in deg per Julian century. */
    public static PeriodicTerm sine(double coefficientDeg, double phaseDeg, double rateDegPerCentury) {
        return new PeriodicTerm(coefficientDeg, false, phaseDeg, rateDegPerCentury, 0);
    }

    /** coefficient × cos(phase + rate·T), angles in deg, rate in deg per Julian century. */
    public static PeriodicTerm cosine(double coefficientDeg, double phaseDeg, double rateDegPerCentury) {
        return new PeriodicTerm(coefficientDeg, true, phaseDeg, rateDegPerCentury, 0);
    }

    /** Value (deg) at a time in Julian centuries of TDB from J2000. */
    public double valueDeg(double centuries) {
        double angle = Math.toRadians(phaseDeg + (rateDegPerCentury + accelDegPerCentury2 * centuries) * centuries);
        return coefficientDeg * (cosine ? Math.cos(angle) : Math.sin(angle));
    }
}
