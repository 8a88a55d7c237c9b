package oblate.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import oblate.base.ProblemException;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
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

    @Option(
            names = "--at",
            paramLabel = "TIME",
            arity = "1..*",
            description = "instants, ISO 8601 with Z, e.g. 2024-12-07T20:00:00Z")
    private List<String> times = new ArrayList<>();

    @Option(names = "--times", paramLabel = "FILE", description = "a file with one instant per line; - for standard input")
    private String timesFile;

    @Mixin
    private OutputOptions output;

    SkyCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        PlanetModel model = services.planet(planet);
        List<String> wanted = new ArrayList<>(times);
        if (timesFile != null) {
            wanted.addAll(readTimes());
        }
        if (wanted.isEmpty()) {
            throw new UsageException("no instant is given; add --at TIME or --times FILE");
        }
        List<ApparentDisc> discs = new ArrayList<>();
        int status = 0;
        for (String text : wanted) {
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

    private List<String> readTimes() {
        try (BufferedReader lines = timesFile.equals("-")
                ? new BufferedReader(new InputStreamReader(console.in(), StandardCharsets.UTF_8))
                : Files.newBufferedReader(Path.of(timesFile), StandardCharsets.UTF_8)) {
            return lines.lines().map(String::strip).filter(l -> !l.isEmpty()).toList();
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_READ, timesFile, e.getMessage());
        }
    }
}
