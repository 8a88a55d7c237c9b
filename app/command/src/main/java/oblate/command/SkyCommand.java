/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.base.ProblemException;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate sky PLANET --at TIME… [--site …]}. */
@Command(
        name = "sky",
        mixinStandardHelpOptions = true,
        description = {
            "What a planet looks like at an instant: central meridians, tilt, diameter, phase, place.",
            "With a site, also where it stands in the sky there."
        },
        footer = {
            "",
            "Examples:  oblate sky jupiter --at 2024-12-07T20:00:00Z",
            "           oblate sky jupiter --at 2024-12-07T20:00:00Z --site 48.2,16.3,170"
        })
final class SkyCommand implements Callable<Integer> {
    private static final int MOST_COLUMNS_TO_READ = 4;

    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PLANET", description = "mercury … neptune")
    private String planet;

    @Mixin
    private InstantOptions instants;

    @Mixin
    private SiteOptions site;

    @Option(
            names = "--wavelengths",
            paramLabel = "NM,NM",
            defaultValue = "450,650",
            description = "with --site: the colours between which dispersion is told (default: ${DEFAULT-VALUE})")
    private String wavelengths;

    @Mixin
    private OutputOptions output;

    SkyCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        PlanetModel model = services.planet(planet);
        Wavelengths colours = Wavelengths.parse(wavelengths);
        Optional<GroundSite> place = site.site(services);
        Sky sky = services.sky();
        Optional<GroundSky> ground = place.map(p -> GroundSky.over(sky, p));
        List<SkyRow> rows = new ArrayList<>();
        int status = 0;
        for (String text : instants.texts(console)) {
            try {
                UtcTime time = UtcTime.parse(text, sky.leapSeconds());
                rows.add(new SkyRow(sky.disc(model, time), ground.map(g -> g.view(model, time))));
            } catch (ProblemException e) {
                console.say(e.getMessage());
                status = 1;
            }
        }
        if (!rows.isEmpty()) {
            SkyTable table = new SkyTable(sky.leapSeconds(), ground, colours);
            boolean read = output.isText() && rows.size() <= MOST_COLUMNS_TO_READ;
            output.write(read ? table.turned(rows) : table.rows(rows), services, console);
            SunCaution.of(model, rows.stream().flatMap(r -> r.ground().stream()).toList())
                    .ifPresent(console::say);
        }
        return status;
    }
}
