/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import oblate.archive.Feature;

/**
 * Where a feature is expected at a picture's time.
 *
 * @param feature the feature
 * @param lonDeg longitude in the planet's IAU system (deg, 0…360)
 * @param sigmaLonDeg its standard error (deg)
 * @param latDeg planetographic latitude (deg)
 * @param sigmaLatDeg its standard error (deg)
 * @param basis what this rests on, a few words, e.g. "drift of 12 marks"
 * @param fromDrift true when a fitted drift says so, false when it is only where it was last seen
 */
public record Expected(
        Feature feature,
        double lonDeg,
        double sigmaLonDeg,
        double latDeg,
        double sigmaLatDeg,
        String basis,
        boolean fromDrift) {
    /** Distance of a measured place from this, in standard errors of both together. */
    public double sigmasFrom(double lonIauDeg, double latGraphicDeg, double sigmaOtherDeg) {
        double lon = Math.IEEEremainder(lonIauDeg - lonDeg, 360) / Math.hypot(sigmaLonDeg, sigmaOtherDeg);
        double lat = (latGraphicDeg - latDeg) / Math.hypot(sigmaLatDeg, sigmaOtherDeg);
        return Math.hypot(lon, lat);
    }

    /** Measured longitude minus this one (deg, −180…180). */
    public double lonDifferenceDeg(double lonIauDeg) {
        return Math.IEEEremainder(lonIauDeg - lonDeg, 360);
    }
}
