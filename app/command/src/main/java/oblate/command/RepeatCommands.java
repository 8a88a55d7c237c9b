/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.MarkSearch;
import oblate.archive.StoredMark;
import oblate.disc.PickRepeat;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The blind repeat of one's own marks: a list to mark again, and what comes of it. */
final class RepeatCommands {
    private RepeatCommands() {}

    /** One point to be marked again, or marked again. */
    private record Item(String picture, String feature, String what, Optional<PickRepeat.Pair> pair) {}

    private static List<StoredMark> own(Archive open, String measurer) {
        return open.marks(MarkSearch.all()).stream()
                .filter(m ->
                        m.mark().measurer().equals(measurer) && m.featureName().isPresent())
                .toList();
    }

    /** {@code oblate marks blind}. */
    @Command(
            name = "blind",
            mixinStandardHelpOptions = true,
            description = {
                "Lists points you marked before, in a shuffled order and without their places, to be marked again.",
                "Fill in x_px and y_px without looking the old ones up and hand the list to: oblate marks repeat"
            })
    static final class Blind implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
        private Path archive;

        @Option(
                names = "--measurer",
                paramLabel = "NAME",
                defaultValue = "${sys:user.name}",
                description = "whose marks (default: the user's name)")
        private String measurer;

        @Option(
                names = "--count",
                paramLabel = "N",
                defaultValue = "20",
                description = "how many (default: ${DEFAULT-VALUE})")
        private int count;

        @Option(
                names = "--shuffle",
                paramLabel = "N",
                defaultValue = "1",
                description = "another number gives another choice (default: ${DEFAULT-VALUE})")
        private long seed;

        @Mixin
        private OutputOptions output;

        Blind(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            try (Archive open = services.openArchive(archive)) {
                List<StoredMark> marks = new ArrayList<>(own(open, measurer));
                if (marks.isEmpty()) {
                    console.say("There is no named mark by " + measurer + " in this archive.");
                    return 1;
                }
                Collections.shuffle(marks, new Random(seed));
                List<Item> items = marks.subList(0, Math.min(Math.max(1, count), marks.size())).stream()
                        .map(m -> new Item(
                                Long.toString(m.mark().pictureId()),
                                m.featureName().orElseThrow(),
                                m.mark().what(),
                                Optional.empty()))
                        .toList();
                TableOf<Item> t = new TableOf<>("Points to mark again");
                t.text("picture", "number of the picture", Item::picture);
                t.text("feature", "feature", Item::feature);
                t.text("what", "what of it", Item::what);
                t.text("x_px", "to be filled in", i -> null);
                t.text("y_px", "to be filled in", i -> null);
                output.write(t.rows(items), services, console);
                return 0;
            }
        }
    }

    /** {@code oblate marks repeat}. */
    @Command(
            name = "repeat",
            mixinStandardHelpOptions = true,
            description = {
                "Compares points marked again with the first marks and tells your own pick error.",
                "With enough pairs it is kept in the settings and used for your marks from then on. No mark is changed."
            })
    static final class Repeat implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
        private Path archive;

        @Option(
                names = "--points",
                required = true,
                paramLabel = "FILE",
                description = "CSV with columns picture, feature, x_px, y_px and what; - for standard input")
        private String points;

        @Option(
                names = "--measurer",
                paramLabel = "NAME",
                defaultValue = "${sys:user.name}",
                description = "whose marks (default: the user's name)")
        private String measurer;

        @Mixin
        private OutputOptions output;

        Repeat(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            try (Archive open = services.openArchive(archive)) {
                List<StoredMark> own = own(open, measurer);
                List<Item> items = new ArrayList<>();
                int status = 0;
                for (Marking.Wish wish : Marking.wishes(points, console)) {
                    ArchivedPicture picture = open.pictureCalled(wish.picture());
                    String feature = wish.feature().orElse("");
                    Optional<StoredMark> first = own.stream()
                            .filter(m -> m.mark().pictureId() == picture.id()
                                    && m.featureName().orElseThrow().equals(feature)
                                    && m.mark().what().equals(wish.what()))
                            .findFirst();
                    if (first.isEmpty()) {
                        console.say("Picture " + wish.picture() + ": " + measurer + " has no mark of \"" + feature
                                + "\" (" + wish.what() + ") there; left out.");
                        status = 1;
                    } else {
                        items.add(new Item(
                                wish.picture(),
                                feature,
                                wish.what(),
                                Optional.of(
                                        new PickRepeat.Pair(first.get().mark().pixel(), wish.pixel()))));
                    }
                }
                return tell(items, status);
            }
        }

        private int tell(List<Item> items, int status) {
            if (items.isEmpty()) {
                console.say("No point could be compared.");
                return 1;
            }
            TableOf<Item> t = new TableOf<>("Marked again");
            t.text("picture", "picture", Item::picture);
            t.text("feature", "feature", Item::feature);
            t.number("right_px", "px", 2, "second mark right of the first", i -> difference(i, true));
            t.number("down_px", "px", 2, "second mark below the first", i -> difference(i, false));
            output.write(t.rows(items), services, console);
            PickRepeat repeat = PickRepeat.of(
                    items.stream().map(i -> i.pair().orElseThrow()).toList());
            console.say(String.format(
                    Locale.ROOT,
                    "Pick error of %s: %.2f +- %.2f px (one standard error, each direction) from %d pairs, %d left out as other points.",
                    measurer,
                    repeat.sigmaPx(),
                    repeat.sigmaOfSigmaPx(),
                    repeat.pairs(),
                    repeat.leftOut()));
            if (repeat.pairs() >= PickRepeat.LEAST_PAIRS) {
                new PickErrors(services.settingsFolder()).keep(measurer, Math.max(0.05, repeat.sigmaPx()));
                console.say("Kept; marks by " + measurer + " carry it from now on.");
            } else {
                console.say("Not kept: at least " + PickRepeat.LEAST_PAIRS + " pairs are needed.");
            }
            return status;
        }

        private static Double difference(Item item, boolean right) {
            PickRepeat.Pair pair = item.pair().orElseThrow();
            return right
                    ? pair.second().xPx() - pair.first().xPx()
                    : pair.second().yPx() - pair.first().yPx();
        }
    }
}
