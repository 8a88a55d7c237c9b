/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import oblate.base.ProblemException;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code oblate sky PLANET --at TIME…}. */
@Command(
        name = "sky",
        mixinStandardHelpOptions = true,
        description = "What a planet looks like at an instant: central meridians, tilt, diameter, phase, place.",
        footer = {"", "Example:  oblate sky jupiter --at 2024-12-07T20:00:00Z"})
final class SkyCommand implements Callable<Integer> {
    private static final int MOST_COLUMNS_TO_READ = 4;

    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PLANET", description = "mercury … neptune")
    private String planet;

    @Mixin
    private InstantOptions instants;

    @Mixin
    private OutputOptions output;

    SkyCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        PlanetModel model = services.planet(planet);
        List<ApparentDisc> discs = new ArrayList<>();
        int status = 0;
        for (String text : instants.texts(console)) {
            try {
                discs.add(services.sky().disc(model, UtcTime.parse(text)));
            } catch (ProblemException e) {
                console.say(e.getMessage());
                status = 1;
            }
        }
        if (!discs.isEmpty()) {
            SkyTable table = new SkyTable();
            boolean read = output.isText() && discs.size() <= MOST_COLUMNS_TO_READ;
            output.write(read ? table.turned(discs) : table.rows(discs), services, console);
        }
        return status;
    }
}
