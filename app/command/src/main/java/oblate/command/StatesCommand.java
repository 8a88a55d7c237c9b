/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.SeenState;
import oblate.image.CaptureTime;
import oblate.report.ReportTable;
import oblate.sky.PlanetModel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code oblate states --archive DIR}: what was seen of moons before and after their contacts. */
@Command(
        name = "states",
        mixinStandardHelpOptions = true,
        description = {
            "Lists what was seen of moons in pictures and looks: clear of the limb, on it, gone … With add, import or withdraw, says more.",
            "Nothing is overwritten: the newest word about a picture, moon and phenomenon counts, the older ones stay. oblate timings reads them."
        },
        footer = {
            "",
            "Examples:  oblate states --archive season --format csv --out seen.csv",
            "           oblate states add 18 --archive season --moon io --phenomenon transit --state on_limb",
            "           oblate states import seen.csv --archive season",
            "           oblate states withdraw 18 --archive season --moon io"
        })
final class StatesCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Option(names = "--archive", paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Option(names = "--planet", paramLabel = "PLANET", description = "needed when the archive holds several planets")
    private String planet;

    @Option(names = "--moon", paramLabel = "MOON", description = "only of this moon")
    private String moon;

    @Option(names = "--history", description = "also words that newer ones replaced or took back")
    private boolean history;

    @Mixin
    private OutputOptions output;

    StatesCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        if (archive == null) {
            throw new UsageException("no archive is given; add --archive DIR");
        }
        try (Archive open = services.openArchive(archive)) {
            PlanetModel of = planet(services, open, Optional.ofNullable(planet));
            Optional<String> only = Optional.ofNullable(moon).map(m -> new StateReader(services, of, Optional.of(open))
                    .moon(m, "--moon")
                    .id());
            List<SeenState> states = (history ? open.seenStateHistory(of.id()) : open.seenStates(of.id()))
                    .stream()
                            .filter(s -> only.map(s.moonId()::equals).orElse(true))
                            .toList();
            if (states.isEmpty() && output.isText()) {
                console.say("No state of a moon of " + of.label() + " is kept.");
            } else {
                output.write(table(open, of, states), services, console);
            }
            return 0;
        }
    }

    /** The planet with moons that is named, or the only one of the archive. */
    static PlanetModel planet(Services services, Archive open, Optional<String> word) {
        return services.planetWithMoons(
                new PlanetChoice(services).of(open, word).id());
    }

    /** A state with its picture. */
    private record Row(SeenState state, Optional<ArchivedPicture> picture) {
        Optional<CaptureTime> time() {
            return picture.flatMap(ArchivedPicture::time);
        }

        String observer() {
            return state.look()
                    .flatMap(SeenState.Look::observer)
                    .or(() -> picture.flatMap(ArchivedPicture::observer))
                    .orElse(null);
        }

        String site() {
            return state.look()
                    .flatMap(SeenState.Look::site)
                    .or(() -> picture.flatMap(ArchivedPicture::site))
                    .orElse(null);
        }
    }

    /** The columns of a file that can be read again, and who said it when. */
    static ReportTable table(Archive open, PlanetModel planet, List<SeenState> states) {
        TableOf<Row> t = new TableOf<Row>("States of the moons of " + planet.label())
                .text("picture", "name of the picture; blank for a look", r -> r.picture()
                        .map(ArchivedPicture::name)
                        .orElse(null))
                .text("time_utc", "middle of the capture, or when it was looked", r -> r.state()
                        .look()
                        .map(SeenState.Look::utc)
                        .or(() -> r.time().map(CaptureTime::midUtc))
                        .orElse(null))
                .text("sigma_s", "standard uncertainty of that, s", r -> r.state()
                        .look()
                        .map(SeenState.Look::sigmaS)
                        .or(() -> r.time().map(CaptureTime::uncertaintyS))
                        .map(s -> String.format(Locale.ROOT, "%.3f", s).replaceFirst("\\.?0+$", ""))
                        .orElse(null))
                .text("observer", "whose clock", Row::observer)
                .text("site", "where", Row::site)
                .text("moon", "moon", r -> r.state().moonId())
                .text("phenomenon", "what it is about", r -> r.state().phenomenon())
                .text("state", "what was seen; open: an earlier word is taken back", r -> r.state()
                        .state())
                .text("seen_by", "who says so", r -> r.state().seenBy())
                .text("said_utc", "when that was said", r -> r.state().saidUtc().orElse(null));
        return t.rows(states.stream()
                .map(s -> new Row(s, s.pictureId().flatMap(open::picture)))
                .toList());
    }
}
