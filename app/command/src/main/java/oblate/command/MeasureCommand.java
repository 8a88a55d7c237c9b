/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.MarkSearch;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.base.ProblemException;
import oblate.disc.DiscFrame;
import oblate.disc.FitHints;
import oblate.disc.Spot;
import oblate.disc.SpotFinder;
import oblate.disc.Trust;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code oblate measure --archive DIR --night DATE}: a whole night in one go. */
@Command(
        name = "measure",
        mixinStandardHelpOptions = true,
        description = {
            "Does a whole night at once: fits what is not fitted, marks the clearest spots where asked, draws the night's map.",
            "Spots are marks without a name by the measurer \"finder\", for: oblate drift --link"
        },
        footer = {"", "Example:  oblate measure --archive season --night 2031-03-24 --spots 8 --map night.png"})
final class MeasureCommand implements Callable<Integer> {
    /** Who made the marks this command makes. */
    static final String FINDER = "finder";

    private static final double LARGEST_EMISSION_DEG = 55;
    private static final double LEAST_SEMI_LAT_DEG = 1;
    private static final double LEAST_SIGNIFICANCE = 6;
    /** Middles of drawn spots were found to half a pixel (docs/disc.md). */
    private static final double FINDER_PX = 0.6;

    private final Services services;
    private final Console console;

    @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Option(
            names = "--night",
            required = true,
            paramLabel = "DATE",
            description = "the night (evening's date, 2031-03-24)")
    private String night;

    @Option(
            names = "--spots",
            paramLabel = "N",
            defaultValue = "0",
            description = "mark up to so many spots on each picture with a trusted fit and no such marks yet")
    private int spots;

    @Option(names = "--map", paramLabel = "FILE", description = "draw the night's map there (.png or .fits)")
    private Path map;

    MeasureCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        int status = run(new FitCommand(services, console), List.of("--new-only"));
        if (spots > 0) {
            try (Archive open = services.openArchive(archive)) {
                status = Math.max(status, markSpots(open));
            }
        }
        if (map != null) {
            status = Math.max(status, run(new MapCommand(services, console), List.of("--map", map.toString())));
        }
        return status;
    }

    /** Another command on the same night. */
    private int run(Callable<Integer> command, List<String> more) {
        List<String> words = new ArrayList<>(List.of("--archive", archive.toString(), "--night", night));
        words.addAll(more);
        return new CommandLine(command)
                .setExecutionExceptionHandler((e, line, parsed) -> {
                    throw e;
                })
                .setCaseInsensitiveEnumValuesAllowed(true)
                .execute(words.toArray(String[]::new));
    }

    private record Found(ArchivedPicture picture, List<Spot> spots) {}

    private int markSpots(Archive open) {
        List<ArchivedPicture> pictures = open.pictures(SearchOptions.night(night));
        List<ArchivedPicture> todo = pictures.stream()
                .filter(p -> trusted(open, p))
                .filter(p -> open.marks(MarkSearch.ofPicture(p.id())).stream()
                        .noneMatch(m -> m.mark().measurer().equals(FINDER)))
                .toList();
        Subjects subjects = new Subjects(services, console);
        List<ManyPictures.Answer<Found>> answers = new ManyPictures(console).each(todo, "Finding spots", picture -> {
            Subject subject = subjects.ofArchive(open, picture, FitHints.none());
            DiscFrame frame = new DiscFrame(
                    subject.disc(),
                    open.currentFit(picture.id()).orElseThrow().fit().placement());
            List<Spot> found = new SpotFinder(
                            services.reader().decode(subject.file()).pixels(), frame, LARGEST_EMISSION_DEG)
                    .find(LEAST_SEMI_LAT_DEG, LEAST_SIGNIFICANCE);
            return new Found(picture, found.subList(0, Math.min(spots, found.size())));
        });
        Marking marking = new Marking(services, open, FINDER_PX, FINDER);
        List<StoredMark> made = new ArrayList<>();
        int status = 0;
        for (ManyPictures.Answer<Found> answer : answers) {
            if (answer.refusal() != null) {
                console.say(answer.refusal());
                status = 1;
                continue;
            }
            for (Spot spot : answer.value().spots()) {
                status = Math.max(status, mark(marking, answer.value().picture(), spot, made));
            }
        }
        console.say("Marked " + made.size() + " spots on " + todo.size() + " of " + pictures.size() + " pictures.");
        return status;
    }

    private int mark(Marking marking, ArchivedPicture picture, Spot spot, List<StoredMark> made) {
        try {
            made.add(marking.add(new Marking.Wish(
                    Long.toString(picture.id()),
                    spot.pixel(),
                    Optional.empty(),
                    Optional.of("spot"),
                    Optional.of(spot.bright() ? "bright" : "dark"),
                    "centre")));
            return 0;
        } catch (ProblemException e) {
            console.say(e.getMessage());
            return 1;
        }
    }

    private static boolean trusted(Archive open, ArchivedPicture picture) {
        Optional<StoredFit> fit = open.currentFit(picture.id());
        return fit.isPresent() && fit.get().fit().trust() == Trust.TRUSTED;
    }
}
