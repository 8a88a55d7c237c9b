/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.SeenState;
import oblate.drift.timing.Phenomenon;
import oblate.sky.PlanetModel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Subcommands of {@code oblate states} that say something. */
final class StateChanges {
    private StateChanges() {}

    /** Where, and who says so. */
    static final class Desk {
        @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
        private Path archive;

        @Option(
                names = "--planet",
                paramLabel = "PLANET",
                description = "needed when the archive holds several planets")
        private String planet;

        @Option(
                names = "--by",
                paramLabel = "NAME",
                defaultValue = "${sys:user.name}",
                description = "who says so (default: the user's name)")
        private String by;

        private PlanetModel planet(Services services, Archive open) {
            return StatesCommand.planet(services, open, Optional.ofNullable(planet));
        }
    }

    /** {@code oblate states add}. */
    @Command(
            name = "add",
            mixinStandardHelpOptions = true,
            description =
                    "Says what was seen of a moon in a picture, or in a look at a time. A newer word takes an older one's place.")
    static final class Add implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Parameters(paramLabel = "PICTURE", arity = "0..1", description = "number or name of the picture")
        private String picture;

        @Option(
                names = "--time",
                paramLabel = "TIME",
                description = "instant of a look without a picture, ISO 8601 with Z")
        private String time;

        @Option(names = "--sigma", paramLabel = "S", description = "its standard uncertainty (s; 1 if not given)")
        private String sigma;

        @Option(names = "--observer", paramLabel = "NAME", description = "whose clock it was")
        private String observer;

        @Option(names = "--site", paramLabel = "NAME", description = "site of the look")
        private String site;

        @Option(names = "--moon", required = true, paramLabel = "MOON", description = "the moon")
        private String moon;

        @Option(
                names = "--phenomenon",
                required = true,
                paramLabel = "WORD",
                description = "transit, shadow_transit, occultation, eclipse")
        private String phenomenon;

        @Option(
                names = "--state",
                required = true,
                paramLabel = "WORD",
                description = "clear, on_limb, on_disc, gone, seen, not_seen; see oblate timings")
        private String state;

        @Mixin
        private Desk desk;

        Add(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            if ((picture == null) == (time == null)) {
                throw new UsageException("give either PICTURE or --time TIME");
            }
            try (Archive open = services.openArchive(desk.archive)) {
                StateReader reader = new StateReader(services, desk.planet(services, open), Optional.of(open));
                StateWord word = reader.read(new StateReader.Words(
                        "states add",
                        Optional.ofNullable(picture),
                        Optional.ofNullable(time),
                        Optional.ofNullable(sigma),
                        Optional.ofNullable(observer),
                        Optional.ofNullable(site),
                        moon,
                        phenomenon,
                        state));
                int added = open.saySeen(List.of(word.seen(desk.by, "states add")));
                console.say(added == 0 ? "That is what was said already." : "It is kept.");
                return 0;
            }
        }
    }

    /** {@code oblate states import}. */
    @Command(
            name = "import",
            mixinStandardHelpOptions = true,
            description = {
                "Keeps the states of a CSV file in the archive: all rows, or none when one is wrong. What is kept already adds nothing.",
                "Columns: picture or time_utc, moon, phenomenon, state, and if known sigma_s, observer, site; as oblate states --format csv writes them."
            })
    static final class Import implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Parameters(paramLabel = "FILE", description = "the file; - for standard input")
        private String file;

        @Mixin
        private Desk desk;

        Import(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            try (Archive open = services.openArchive(desk.archive)) {
                StateRows rows =
                        new StateRows(new StateReader(services, desk.planet(services, open), Optional.of(open)));
                List<SeenState> states = rows.read(file, console).stream()
                        .map(r -> r.word().seen(desk.by, r.place()))
                        .toList();
                int added = open.saySeen(states);
                rows.remarks().forEach(console::say);
                console.say(added + " of " + states.size() + (states.size() == 1 ? " state" : " states")
                        + " said something new and " + (added == 1 ? "is" : "are") + " kept.");
                return 0;
            }
        }
    }

    /** {@code oblate states withdraw}. */
    @Command(
            name = "withdraw",
            mixinStandardHelpOptions = true,
            description = "Takes back what was said of a moon in a picture or a look; the words stay readable.")
    static final class Withdraw implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Parameters(paramLabel = "PICTURE", arity = "0..1", description = "number or name of the picture")
        private String picture;

        @Option(names = "--time", paramLabel = "TIME", description = "instant of the look")
        private String time;

        @Option(names = "--moon", required = true, paramLabel = "MOON", description = "the moon")
        private String moon;

        @Option(names = "--phenomenon", paramLabel = "WORD", description = "only of this phenomenon")
        private String phenomenon;

        @Mixin
        private Desk desk;

        Withdraw(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            if ((picture == null) == (time == null)) {
                throw new UsageException("give either PICTURE or --time TIME");
            }
            try (Archive open = services.openArchive(desk.archive)) {
                PlanetModel planet = desk.planet(services, open);
                String id = new StateReader(services, planet, Optional.of(open))
                        .moon(moon, "--moon")
                        .id();
                Optional<Long> of = Optional.ofNullable(picture)
                        .map(p -> open.pictureCalled(p).id());
                Optional<String> about = Optional.ofNullable(phenomenon)
                        .map(p -> Phenomenon.named(p, "--phenomenon").id());
                List<SeenState> back = open.seenStates(planet.id()).stream()
                        .filter(s -> s.moonId().equals(id))
                        .filter(s -> about.map(s.phenomenon()::equals).orElse(true))
                        .filter(s -> of.isPresent() ? s.pictureId().equals(of) : isLook(s))
                        .map(s -> s.takenBack(desk.by))
                        .toList();
                int taken = open.saySeen(back);
                console.say(
                        taken == 0
                                ? "No such state is kept."
                                : taken == 1 ? "It is taken back." : taken + " are taken back.");
                return taken == 0 ? 1 : 0;
            }
        }

        private boolean isLook(SeenState state) {
            return state.look()
                    .map(l -> l.utc().equals(SearchOptions.instant(time)))
                    .orElse(false);
        }
    }
}
