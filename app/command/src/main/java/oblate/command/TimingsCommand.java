/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.drift.timing.Timings;
import oblate.report.ReportTable;
import oblate.report.TimingTable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code oblate timings --archive DIR}. */
@Command(
        name = "timings",
        mixinStandardHelpOptions = true,
        description = {
            "Observed minus predicted times (O-P) of transits, shadows, occultations, eclipses, and what they say of each night's clock.",
            "Times come from moons and shadows marked on fitted pictures, and from states: what was seen before and after a contact.",
            "States are kept in the archive (oblate states), are marks whose \"what\" is one (oblate marks add … --what clear), or rows of a CSV file.",
            "Foretold is what the site of the picture sees; without a site, what the Earth's centre sees, and the error says so."
        },
        footer = {
            "",
            "States:  transit         clear, on_limb, on_disc",
            "         shadow_transit  not_seen, on_limb, seen, on_disc",
            "         occultation     clear, on_limb, seen (some of it), gone",
            "         eclipse         clear, on_limb (fading), seen, gone",
            "Examples:  oblate timings --archive season --moon io,europa",
            "           oblate timings --archive season --by night",
            "           oblate timings --planet jupiter --observations seen.csv --format csv"
        })
final class TimingsCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    /** What a row is about. */
    enum By {
        EVENT,
        PICTURE,
        NIGHT
    }

    @Option(names = "--archive", paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Option(
            names = "--planet",
            paramLabel = "PLANET",
            description = "needed without an archive, or when it holds several planets")
    private String planet;

    @Option(names = "--moon", split = ",", paramLabel = "MOON", description = "only these, parted by commas")
    private List<String> moons = List.of();

    @Option(names = "--from", paramLabel = "TIME", description = "pictures not before this date or instant")
    private String from;

    @Option(names = "--to", paramLabel = "TIME", description = "pictures before this date or instant")
    private String to;

    @Option(
            names = "--observations",
            paramLabel = "FILE",
            description =
                    "CSV of states, besides those of the archive: picture or time_utc, moon, phenomenon, state, and if known sigma_s, observer, site;"
                            + " - for standard input")
    private String observations;

    @Option(
            names = "--by",
            paramLabel = "WHAT",
            defaultValue = "event",
            description = "one row per event (but for text: one for each of its moments), per picture, or per night:"
                    + " event, picture, night"
                    + " (default: ${DEFAULT-VALUE})")
    private String by;

    @Mixin
    private OutputOptions output;

    TimingsCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        By rows = ChartKind.choice("--by", by, By.values());
        Timings timings = new TimingSource(services, console)
                .timings(new TimingSource.Wish(
                        Optional.ofNullable(archive),
                        Optional.ofNullable(planet),
                        moons,
                        Optional.ofNullable(from).map(SearchOptions::instant),
                        Optional.ofNullable(to).map(SearchOptions::instant),
                        Optional.ofNullable(observations)));
        if (timings.events().isEmpty() && output.isText()) {
            console.say("There is nothing to time: no moon or shadow of "
                    + timings.planet().label() + " is marked, and no state is said.");
            return 0;
        }
        output.write(table(timings, rows), services, console);
        if (output.isText()) {
            timings.nights().forEach(n -> console.say(n.words()));
        }
        return 0;
    }

    private ReportTable table(Timings timings, By rows) {
        String ephemeris = services.sky().ephemeris().name();
        if (rows == By.NIGHT) {
            return TimingTable.nights(timings.planet(), timings.nights(), ephemeris);
        }
        boolean byPicture = rows == By.PICTURE;
        return output.isText()
                ? TimingText.of(timings.planet(), byPicture ? timings.singles() : timings.brief(), byPicture)
                : TimingTable.of(timings.planet(), byPicture ? timings.singles() : timings.events(), ephemeris);
    }
}
