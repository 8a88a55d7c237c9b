/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * The drifts among which a series is unwrapped. Too narrow a window loses features, too wide a one costs little but more rivals for short series.
 *
 * @param lowDegPerDay smallest drift (deg per day, in the series' system)
 * @param highDegPerDay largest drift (deg per day)
 */
public record RateWindow(double lowDegPerDay, double highDegPerDay) {

    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException when a bound is not finite, the window is empty, or it is wider than 2000 deg per day
     */
    public RateWindow {
        if (!Double.isFinite(lowDegPerDay)
                || !Double.isFinite(highDegPerDay)
                || !(lowDegPerDay < highDegPerDay)
                || highDegPerDay - lowDegPerDay > 2000) {
            throw new IllegalArgumentException("window " + lowDegPerDay + " … " + highDegPerDay + " deg/d");
        }
    }

    /**
     * The window for a planet, wide enough for every current reported there, in a system.
     *
     * <p>Set in the IAU's system and shifted exactly: Jupiter −16…13 (fastest jets near −13, slowest near +6), Saturn −48…20 (equator −37), Uranus −110…25
     * (high latitudes run far ahead), Neptune −60…110 (equator +80), Venus −110…15 (clouds near −80), Mars ±15 (dust clouds), Mercury ±2; ±30 for a planet
     * not named here.
     */
    public static RateWindow of(PlanetModel planet, RotationSystem system) {
        RateWindow iau = inIauSystem(planet.id());
        double shift = Motion.driftInSystem(planet.globe(), 0, planet.globe().iauSystem(), system);
        return new RateWindow(iau.lowDegPerDay + shift, iau.highDegPerDay + shift);
    }

    private static RateWindow inIauSystem(String planetId) {
        return switch (planetId) {
            case "jupiter" -> new RateWindow(-16, 13);
            case "saturn" -> new RateWindow(-48, 20);
            case "uranus" -> new RateWindow(-110, 25);
            case "neptune" -> new RateWindow(-60, 110);
            case "venus" -> new RateWindow(-110, 15);
            case "mars" -> new RateWindow(-15, 15);
            case "mercury" -> new RateWindow(-2, 2);
            default -> new RateWindow(-30, 30);
        };
    }
}
