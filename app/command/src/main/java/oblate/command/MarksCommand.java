/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.MarkSearch;
import oblate.archive.StoredMark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate marks --archive DIR}: list, add, supersede, withdraw. */
@Command(
        name = "marks",
        mixinStandardHelpOptions = true,
        description = {
            "Lists the marks of an archive. With add, supersede or withdraw, changes them; nothing is overwritten."
        },
        footer = {
            "",
            "Examples:  oblate marks --archive season --feature \"oval A\"",
            "           oblate marks add 17 --archive season --at 212.4,301.7 --feature \"oval A\""
        })
final class MarksCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Option(names = "--archive", paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Option(names = "--of", paramLabel = "PLANET", description = "only of this planet")
    private String planet;

    @Option(names = "--picture", paramLabel = "PICTURE", description = "only on this picture")
    private String picture;

    @Option(names = "--feature", paramLabel = "NAME", description = "only of this feature")
    private String feature;

    @Option(names = "--from", paramLabel = "TIME", description = "not before this date or instant")
    private String from;

    @Option(names = "--to", paramLabel = "TIME", description = "before this date or instant")
    private String to;

    @Option(names = "--history", description = "superseded and withdrawn marks too")
    private boolean history;

    @Mixin
    private OutputOptions output;

    MarksCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        if (archive == null) {
            throw new UsageException("no archive is given; add --archive DIR");
        }
        try (Archive open = services.openArchive(archive)) {
            MarkSearch search = new MarkSearch(
                    Optional.ofNullable(planet).map(p -> services.planet(p).id()),
                    Optional.ofNullable(picture).map(p -> open.pictureCalled(p).id()),
                    Optional.ofNullable(feature),
                    Optional.ofNullable(from).map(SearchOptions::instant),
                    Optional.ofNullable(to).map(SearchOptions::instant),
                    history);
            List<StoredMark> marks = open.marks(search);
            if (marks.isEmpty()) {
                console.say("No mark found.");
            } else {
                output.write(new MarkTable(services, open).of(marks), services, console);
            }
            return 0;
        }
    }

    /** Options that place a mark. */
    static final class PlaceOptions {
        @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
        private Path archive;

        @Option(
                names = "--pick-sigma",
                paramLabel = "PX",
                description =
                        "standard error of the pick (default: the measurer's own from a blind repeat, else 0.5 px)")
        private Double pickSigmaPx;

        @Option(
                names = "--measurer",
                paramLabel = "NAME",
                defaultValue = "${sys:user.name}",
                description = "who measured (default: the user's name)")
        private String measurer;

        @Mixin
        private OutputOptions output;

        private double pickSigmaPx(Services services) {
            return new PickErrors(services.settingsFolder()).of(pickSigmaPx, measurer);
        }
    }

    /** {@code oblate marks add}. */
    @Command(
            name = "add",
            mixinStandardHelpOptions = true,
            description = "Marks a point of a picture, or with --points many points of many pictures.")
    static final class Add implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Parameters(paramLabel = "PICTURE", arity = "0..1", description = "number or name of the picture")
        private String picture;

        @Option(names = "--at", paramLabel = "X,Y", description = "the point (px)")
        private String at;

        @Option(
                names = "--points",
                paramLabel = "FILE",
                description =
                        "CSV with columns picture, x_px, y_px and if known feature, kind, tone, what; - for standard input")
        private String points;

        @Option(
                names = "--feature",
                paramLabel = "NAME",
                description = "the feature; made when the planet has none of that name")
        private String feature;

        @Option(
                names = "--kind",
                paramLabel = "WORD",
                description =
                        "kind of a new feature: oval, spot, bar, moon, shadow … (moon: the mark is off the globe; shadow: it may be)")
        private String kind;

        @Option(names = "--tone", paramLabel = "WORD", description = "bright or dark, of a new feature")
        private String tone;

        @Option(
                names = "--what",
                paramLabel = "WORDS",
                defaultValue = "centre",
                description = "what is measured: centre, preceding end, following end, north edge, south edge;"
                        + " of a moon or shadow also what is seen, see oblate timings: clear, on_limb, gone …")
        private String what;

        @Mixin
        private PlaceOptions place;

        Add(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            if ((points == null) == (picture == null || at == null)) {
                throw new UsageException("give either PICTURE with --at X,Y, or --points FILE");
            }
            try (Archive open = services.openArchive(place.archive)) {
                Marking marking = new Marking(services, open, place.pickSigmaPx(services), place.measurer);
                List<Marking.Wish> wishes = points == null
                        ? List.of(new Marking.Wish(
                                picture,
                                Marking.point(at),
                                Optional.ofNullable(feature),
                                Optional.ofNullable(kind),
                                Optional.ofNullable(tone),
                                what))
                        : Marking.wishes(points, console);
                return place(open, marking, wishes);
            }
        }

        private int place(Archive open, Marking marking, List<Marking.Wish> wishes) {
            int status = 0;
            List<StoredMark> made = new java.util.ArrayList<>();
            for (Marking.Wish wish : wishes) {
                try {
                    made.add(marking.add(wish));
                } catch (oblate.base.ProblemException e) {
                    console.say(e.getMessage());
                    status = 1;
                }
            }
            if (!made.isEmpty()) {
                place.output.write(new MarkTable(services, open).of(made), services, console);
            }
            return status;
        }
    }

    /** {@code oblate marks supersede}. */
    @Command(
            name = "supersede",
            mixinStandardHelpOptions = true,
            description = "Replaces a mark by a better one; the old one stays readable.")
    static final class Supersede implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Parameters(paramLabel = "MARK", description = "number of the mark")
        private long mark;

        @Option(names = "--at", paramLabel = "X,Y", required = true, description = "the new point (px)")
        private String at;

        @Option(names = "--feature", paramLabel = "NAME", description = "another feature")
        private String feature;

        @Option(names = "--reason", required = true, paramLabel = "WORDS", description = "why")
        private String reason;

        @Mixin
        private PlaceOptions place;

        Supersede(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            try (Archive open = services.openArchive(place.archive)) {
                StoredMark made = new Marking(services, open, place.pickSigmaPx(services), place.measurer)
                        .supersede(mark, Marking.point(at), Optional.ofNullable(feature), reason);
                place.output.write(new MarkTable(services, open).of(List.of(made)), services, console);
                return 0;
            }
        }
    }

    /** {@code oblate marks withdraw}. */
    @Command(
            name = "withdraw",
            mixinStandardHelpOptions = true,
            description = "Takes a mark out of use; it stays readable.")
    static final class Withdraw implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Parameters(paramLabel = "MARK", description = "number of the mark")
        private long mark;

        @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
        private Path archive;

        @Option(names = "--reason", required = true, paramLabel = "WORDS", description = "why")
        private String reason;

        Withdraw(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            try (Archive open = services.openArchive(archive)) {
                open.withdrawMark(mark, reason);
                console.say("Mark " + mark + " is withdrawn.");
                return 0;
            }
        }
    }

    /** Picture of a mark, by number. */
    static ArchivedPicture pictureOf(Archive open, StoredMark mark) {
        return open.picture(mark.mark().pictureId()).orElseThrow();
    }
}
