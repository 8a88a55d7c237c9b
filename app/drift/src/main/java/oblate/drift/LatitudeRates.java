/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * The rates to be expected at a latitude. For Jupiter after its jets, rounded outward, in System II: within 9.5° of the equator −9…0; 21.5° to 26° N −13…0.8; 18° to 21.5° S
 * −1.2…5; elsewhere −1.7…1.2. Other planets have one window. Stateless.
 */
final class LatitudeRates {
    private LatitudeRates() {}

    static RateWindow window(PlanetModel planet, RotationSystem system, double latGraphicDeg) {
        RotationSystem two = planet.globe().system("2").orElse(null);
        if (!planet.id().equals("jupiter") || two == null) {
            return RateWindow.of(planet, system);
        }
        double shift = Motion.driftInSystem(planet.globe(), 0, two, system);
        RateWindow own = inSystemTwo(latGraphicDeg);
        return new RateWindow(own.lowDegPerDay() + shift, own.highDegPerDay() + shift);
    }

    private static RateWindow inSystemTwo(double lat) {
        if (Math.abs(lat) < 9.5) {
            return new RateWindow(-9, 0);
        }
        if (lat >= 21.5 && lat <= 26) {
            return new RateWindow(-13, 0.8);
        }
        return lat <= -18 && lat >= -21.5 ? new RateWindow(-1.2, 5) : new RateWindow(-1.7, 1.2);
    }
}
