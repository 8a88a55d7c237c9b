/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * A longitude stands on the central meridian, as seen from the Earth's centre.
 *
 * @param time when
 * @param lonDeg the longitude then (deg, 0…360)
 * @param sigmaLonDeg its standard error then (deg)
 * @param degPerMin how fast it runs over the meridian (deg per minute), positive on every planet
 */
public record MeridianCrossing(UtcTime time, double lonDeg, double sigmaLonDeg, double degPerMin) {

    /** Standard error of the time (min): that of the longitude over the speed. */
    public double sigmaMin() {
        return sigmaLonDeg / degPerMin;
    }
}
