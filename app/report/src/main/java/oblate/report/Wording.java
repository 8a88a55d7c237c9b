/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.stream.Collectors;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Sentences and names that tables share. */
final class Wording {

    private Wording() {}

    static String sense(PlanetModel planet) {
        return planet.globe().longitudePositive() == LongitudeSense.WEST ? "west" : "east";
    }

    static String longitudes(PlanetModel planet) {
        return "planetographic, 0 to 360 deg, positive to the planet's " + sense(planet)
                + ": a feature that runs ahead of its system has a decreasing longitude";
    }

    static String systems(PlanetModel planet) {
        return planet.globe().systems().stream()
                .map(system -> system.label() + " " + rate(system) + " deg/d")
                .collect(Collectors.joining(", "));
    }

    private static String rate(RotationSystem system) {
        return ReportTable.digits(system.degPerDay(), -1);
    }

    static String radii(PlanetModel planet) {
        return "equatorial " + ReportTable.digits(planet.globe().figure().equatorialRadiusKm(), -1) + " km, polar "
                + ReportTable.digits(planet.globe().figure().polarRadiusKm(), -1) + " km";
    }

    /** "lon_sys2_deg" for a numbered system, "lon_iau_deg" for the only one. */
    static String lonColumn(RotationSystem system) {
        return "lon_" + (system.id().matches("\\d+") ? "sys" + system.id() : system.id()) + "_deg";
    }
}
