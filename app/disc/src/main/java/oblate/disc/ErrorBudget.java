/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * Standard errors of a mark in its parts: longitude (deg) and planetographic latitude (deg).
 *
 * @param pickLonDeg from placing the pointer
 * @param pickLatDeg same, latitude
 * @param centreLonDeg from the fitted centre
 * @param centreLatDeg same, latitude
 * @param scaleLonDeg from the fitted radius
 * @param scaleLatDeg same, latitude
 * @param angleLonDeg from the fitted pole angle
 * @param angleLatDeg same, latitude
 * @param timeLonDeg from the picture's time
 * @param totalLonDeg all together, with their correlations
 * @param totalLatDeg same, latitude
 */
public record ErrorBudget(
        double pickLonDeg,
        double pickLatDeg,
        double centreLonDeg,
        double centreLatDeg,
        double scaleLonDeg,
        double scaleLatDeg,
        double angleLonDeg,
        double angleLatDeg,
        double timeLonDeg,
        double totalLonDeg,
        double totalLatDeg) {}
