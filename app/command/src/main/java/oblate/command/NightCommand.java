/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import oblate.sky.DarkWindow;
import oblate.sky.GroundNight;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.PlanetModel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate night PLANET --date D --site …}. */
@Command(
        name = "night",
        mixinStandardHelpOptions = true,
        description = {
            "One night over a place: setting and rising of Sun and planet, twilights, and when the planet can be observed.",
            "The night of a date runs from its noon to the next, by the site's longitude; all times are UTC."
        },
        footer = {
            "",
            "Examples:  oblate night jupiter --date 2024-12-07 --site 48.2,16.3,170",
            "           oblate night jupiter --date 2024-12-07 --site \"back garden\" --archive season --track"
        })
final class NightCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PLANET", description = "mercury … neptune")
    private String planet;

    @Option(
            names = "--date",
            required = true,
            paramLabel = "DATE",
            description = "date of the evening, e.g. 2024-12-07")
    private String date;

    @Mixin
    private SiteOptions site;

    @Mixin
    private Darkness darkness;

    @Option(names = "--track", description = "the planet's way through the dark window instead, step by step")
    private boolean track;

    @Option(
            names = "--step",
            paramLabel = "MIN",
            defaultValue = "15",
            description = "with --track: minutes from line to line (default: ${DEFAULT-VALUE})")
    private double stepMin;

    @Option(
            names = "--wavelengths",
            paramLabel = "NM,NM",
            defaultValue = "450,650",
            description = "with --track: the colours between which dispersion is told (default: ${DEFAULT-VALUE})")
    private String wavelengths;

    @Mixin
    private OutputOptions output;

    NightCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        PlanetModel model = services.planet(planet);
        LocalDate day = day();
        Wavelengths colours = Wavelengths.parse(wavelengths);
        if (!(stepMin >= 0.1 && stepMin <= 1440)) {
            throw new UsageException("--step " + stepMin + " is not a number of minutes from 0.1 to 1440");
        }
        GroundSite place = site.site(services)
                .orElseThrow(() -> new UsageException("no place is given; add --site LAT,LON,HEIGHT"));
        double sunBelowDeg = darkness.sunBelowDeg();
        double minAltitudeDeg = darkness.minAltitudeDeg();
        GroundNight night = GroundNight.of(GroundSky.over(services.sky(), place), day);
        List<DarkWindow> windows = night.windows(model, sunBelowDeg, minAltitudeDeg, track ? stepMin : 5);
        NightTable table = new NightTable(night, model, darkness.said());
        output.write(track ? table.track(windows, colours) : table.events(windows), services, console);
        SunCaution.of(model, windows.stream().flatMap(w -> w.track().stream()).toList())
                .ifPresent(console::say);
        return 0;
    }

    private LocalDate day() {
        try {
            return LocalDate.parse(date.strip());
        } catch (DateTimeException e) {
            throw new UsageException("--date \"" + date + "\" is not a date of the calendar; write it like 2024-12-07");
        }
    }
}
