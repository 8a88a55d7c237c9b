/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import oblate.base.ProblemException;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
import oblate.sky.ShadowPlace;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code oblate moons PLANET --at TIME…}. */
@Command(
        name = "moons",
        mixinStandardHelpOptions = true,
        description = "Where a planet's moons and their shadows are, as seen from the Earth's centre.",
        footer = {"", "Example:  oblate moons jupiter --at 2024-12-07T20:00:00Z"})
final class MoonsCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PLANET", description = "a planet whose moons are known")
    private String planet;

    @Mixin
    private InstantOptions instants;

    @Mixin
    private OutputOptions output;

    MoonsCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    private record Row(PlanetModel planet, UtcTime time, MoonPlace moon) {}

    @Override
    public Integer call() {
        PlanetModel model = services.planetWithMoons(planet);
        List<Row> rows = new ArrayList<>();
        int status = 0;
        for (String text : instants.texts(console)) {
            try {
                UtcTime time = UtcTime.parse(text, services.sky().leapSeconds());
                services.sky().moons(model, time).forEach(m -> rows.add(new Row(model, time, m)));
            } catch (ProblemException e) {
                console.say(e.getMessage());
                status = 1;
            }
        }
        if (!rows.isEmpty()) {
            output.write(table(services.sky()).rows(rows), services, console);
        }
        return status;
    }

    private static TableOf<Row> table(Sky sky) {
        TableOf<Row> t = new TableOf<>("Moons");
        t.fact(
                "offsets",
                "moon minus planet's centre; x to celestial west along the equator as seen, y north, z toward the Earth");
        t.text("time_utc", "instant of observation", r -> r.time().iso());
        t.text("planet", "planet", r -> r.planet().id());
        t.text("moon", "moon", r -> r.moon().id());
        number(t, "distance_au", "AU", 8, MoonPlace::distanceAu);
        number(t, "dra_cosdec_arcsec", "arcsec", 4, MoonPlace::dRaCosDecArcsec);
        number(t, "ddec_arcsec", "arcsec", 4, MoonPlace::dDecArcsec);
        number(t, "x_west_radii", "", 5, MoonPlace::xWestRadii);
        number(t, "y_north_radii", "", 5, MoonPlace::yNorthRadii);
        number(t, "z_toward_earth_radii", "", 5, MoonPlace::zTowardEarthRadii);
        number(t, "planet_radius_arcsec", "arcsec", 4, MoonPlace::planetRadiusArcsec);
        number(t, "moon_diameter_arcsec", "arcsec", 4, MoonPlace::diameterArcsec);
        flag(t, "in_transit", MoonPlace::inTransit);
        flag(t, "occulted", MoonPlace::occulted);
        flag(t, "eclipsed", MoonPlace::eclipsed);
        flag(t, "shadow_on_disc", m -> m.shadow().isPresent());
        shadow(t, "shadow_dra_cosdec_arcsec", "arcsec", 4, ShadowPlace::dRaCosDecArcsec);
        shadow(t, "shadow_ddec_arcsec", "arcsec", 4, ShadowPlace::dDecArcsec);
        shadow(t, "shadow_x_west_radii", "", 5, ShadowPlace::xWestRadii);
        shadow(t, "shadow_y_north_radii", "", 5, ShadowPlace::yNorthRadii);
        shadow(t, "shadow_lon_iau_deg", "deg", 3, ShadowPlace::lonIauDeg);
        shadow(t, "shadow_lat_graphic_deg", "deg", 3, ShadowPlace::latGraphicDeg);
        t.number(
                "offset_sigma_arcsec",
                "arcsec",
                4,
                "standard error of dra_cosdec and of ddec: series and orbits behind it, not the ephemeris of the planet",
                r -> r.moon().offsetSigmaArcsec());
        t.text("ephemeris", "planetary ephemeris", r -> sky.ephemeris().name());
        t.text("leap_seconds", "table of leap seconds used", r -> sky.leapSeconds()
                .saidOf(r.time()));
        return t;
    }

    private static void number(
            TableOf<Row> t, String name, String unit, int decimals, Function<MoonPlace, Double> value) {
        t.number(name, unit, decimals, name, r -> value.apply(r.moon()));
    }

    private static void flag(TableOf<Row> t, String name, Function<MoonPlace, Boolean> value) {
        t.text(name, name, r -> value.apply(r.moon()) ? "yes" : "no");
    }

    private static void shadow(
            TableOf<Row> t, String name, String unit, int decimals, Function<ShadowPlace, Double> value) {
        t.number(name, unit, decimals, name, r -> r.moon().shadow().map(value).orElse(null));
    }
}
