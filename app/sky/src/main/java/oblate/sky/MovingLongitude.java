/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * A longitude on a planet that drifts at an even rate.
 *
 * @param lonDeg longitude at the epoch (deg)
 * @param degPerDay its growth (deg per day); 0 for one that stands
 * @param epoch when the longitude holds
 * @param sigmaDeg standard error of the longitude at the epoch (deg)
 * @param sigmaDegPerDay standard error of the growth (deg per day), independent of the longitude's
 */
public record MovingLongitude(double lonDeg, double degPerDay, UtcTime epoch, double sigmaDeg, double sigmaDegPerDay) {

    /** One that stands, with a standard error (deg). */
    public static MovingLongitude fixed(double lonDeg, double sigmaDeg) {
        return new MovingLongitude(lonDeg, 0, new UtcTime(10957, 43200), sigmaDeg, 0);
    }

    /** The longitude at a time (deg, 0…360). */
    public double atDeg(UtcTime time) {
        return Angles.wrapDeg(lonDeg + degPerDay * days(time));
    }

    /** Standard error of the longitude at a time (deg). */
    public double sigmaAtDeg(UtcTime time) {
        return Math.hypot(sigmaDeg, sigmaDegPerDay * days(time));
    }

    private double days(UtcTime time) {
        return time.clockSecondsSince(epoch) / 86400;
    }
}
