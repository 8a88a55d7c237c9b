/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Rating;
import oblate.image.CaptureTime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate pictures --archive DIR [words]}. */
@Command(
        name = "pictures",
        mixinStandardHelpOptions = true,
        description = "Lists pictures of an archive, in order of time.",
        footer = {"", "Example:  oblate pictures --archive season --cm 2:180-240 --marked no"})
final class PicturesCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "WORD", arity = "0..*", description = "words in names, notes, observers, kits")
    private List<String> words = new ArrayList<>();

    @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Mixin
    private SearchOptions search;

    @Mixin
    private OutputOptions output;

    PicturesCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        try (Archive open = services.openArchive(archive)) {
            Optional<String> sought = words.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", words));
            List<ArchivedPicture> found = open.pictures(search.search(services, sought));
            if (found.isEmpty()) {
                console.say("No picture found.");
            } else {
                output.write(table().rows(found), services, console);
            }
            return 0;
        }
    }

    private TableOf<ArchivedPicture> table() {
        TableOf<ArchivedPicture> t = new TableOf<>("Pictures");
        t.text("picture", "number in the archive", p -> p.id());
        t.text("night", "evening's date", p -> p.night().map(Object::toString).orElse(null));
        t.text("mid_time_utc", "middle of the capture", p -> p.time()
                .map(x -> x.midUtc().toString())
                .orElse(null));
        t.number("time_sigma_s", "s", 1, "its standard uncertainty", p -> p.time()
                .map(CaptureTime::uncertaintyS)
                .orElse(null));
        t.text("planet", "planet", p -> p.planetId().orElse(null));
        for (String id : List.of("1", "2", "3", "iau")) {
            t.number(
                    "cm_" + (id.equals("iau") ? id : "sys" + id) + "_deg",
                    "deg",
                    1,
                    "central meridian",
                    p -> p.centralMeridians().get(id));
        }
        t.text("fitted", "has a disc fit", p -> p.fitted() ? "yes" : "no");
        t.text("marks", "current marks", p -> p.markCount());
        t.text("kit", "kit", p -> p.kit().orElse(null));
        t.text("observer", "observer", p -> p.observer().orElse(null));
        t.text("seeing", "seeing as given", p -> p.seeing()
                .map(PicturesCommand::rating)
                .orElse(null));
        t.text("filter", "filter", p -> p.filter().orElse(null));
        t.text("name", "file name", ArchivedPicture::name);
        t.text(
                "conflict",
                "disagreement of its time's sources",
                p -> p.timeConflicts().isEmpty() ? null : String.join("; ", p.timeConflicts()));
        return t;
    }

    private static String rating(Rating rating) {
        return rating.value() + " " + rating.scale();
    }
}
