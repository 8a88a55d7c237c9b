/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import oblate.report.TimingTable;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.GroundView;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;
import oblate.sky.event.Contact;

/**
 * A place with its sky, for the columns that depend on it.
 *
 * @param sky the sky over the place
 */
record SiteView(GroundSky sky) {
    private static final double LOWEST_PLANET_DEG = 5;
    private static final double HIGHEST_SUN_DEG = -6;

    /** What counts as observable, in words. */
    static final String RULE = "planet above 5 deg, Sun below -6 deg, and not hidden";

    /** From where times are counted, in words. */
    static String from(Optional<SiteView> view) {
        return view.map(v -> {
                    GroundSite site = v.sky().site();
                    return String.format(
                            Locale.ROOT,
                            "as seen from latitude %.4f, longitude %.4f (east positive), %.0f m",
                            site.latDeg(),
                            site.lonEastDeg(),
                            site.heightM());
                })
                .orElse("as seen from the Earth's centre");
    }

    /** The same in a column: {@code geocentre}, or the place. */
    static String seenFrom(Optional<SiteView> view) {
        return view.map(v -> v.sky().site())
                .map(s -> String.format(
                        Locale.ROOT, "lat %.4f lon %.4f height %.0f m", s.latDeg(), s.lonEastDeg(), s.heightM()))
                .orElse(TimingTable.GEOCENTRE);
    }

    GroundView at(PlanetModel planet, UtcTime time) {
        return sky.view(planet, time);
    }

    /** Whether planet and Sun allow to see something then. */
    boolean isUp(PlanetModel planet, UtcTime time) {
        GroundView view = at(planet, time);
        return view.altitudeDeg() > LOWEST_PLANET_DEG && view.sunAltitudeDeg() < HIGHEST_SUN_DEG;
    }

    /** Columns with the altitudes of planet and Sun at a contact; blank where there is none. */
    <T> void columns(TableOf<T> table, String name, Function<T, PlanetModel> planet, Function<T, Contact> contact) {
        table.number("planet_alt_" + name + "_deg", "deg", 1, "altitude of the planet", r -> {
            Contact c = contact.apply(r);
            return c == null ? null : at(planet.apply(r), c.time()).altitudeDeg();
        });
        table.number("sun_alt_" + name + "_deg", "deg", 1, "altitude of the Sun", r -> {
            Contact c = contact.apply(r);
            return c == null ? null : at(planet.apply(r), c.time()).sunAltitudeDeg();
        });
    }
}
