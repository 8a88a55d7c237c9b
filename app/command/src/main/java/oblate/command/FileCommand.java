/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.FilingFacts;
import oblate.archive.FilingOutcome;
import oblate.archive.FilingOutcome.AlreadyThere;
import oblate.archive.FilingOutcome.Filed;
import oblate.archive.FilingOutcome.Refused;
import oblate.image.CaptureTime;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate file PATH… --archive DIR}. */
@Command(
        name = "file",
        mixinStandardHelpOptions = true,
        description = {
            "Files pictures into an archive: unaltered, under their night, with their exact time.",
            "The archive is made when the folder is new or empty."
        },
        footer = {
            "",
            "Times are looked for in this order: --time, FITS, Exif, the file's name (ISO 8601), a text note beside it.",
            "Example:  oblate file tonight/ --archive season --planet jupiter --seeing 7 --seeing-scale Pickering"
        })
final class FileCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PATH", arity = "1..*", description = "picture files, or folders of them")
    private List<Path> paths;

    @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Mixin
    private PictureOptions picture;

    @Mixin
    private ObservationOptions observation;

    @Option(names = "--undated", description = "file pictures without a time as undated instead of refusing them")
    private boolean undated;

    @Mixin
    private OutputOptions output;

    FileCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        try (Archive open = services.openOrMakeArchive(archive, console)) {
            ConsoleProgress progress = new ConsoleProgress(console, "Filing");
            List<FilingOutcome> outcomes = services.filing(open).file(paths, facts(), progress);
            progress.finish();
            return tell(outcomes);
        }
    }

    private FilingFacts facts() {
        return new FilingFacts(
                picture.planet().map(p -> services.planet(p).id()),
                observation.site(),
                observation.observer(),
                observation.kit(),
                observation.filter(),
                observation.seeing(),
                observation.transparency(),
                observation.notes(),
                picture.timeWish(),
                undated);
    }

    private int tell(List<FilingOutcome> outcomes) {
        int filed = 0;
        int known = 0;
        int refused = 0;
        List<FilingOutcome> shown = new ArrayList<>();
        for (FilingOutcome outcome : outcomes) {
            if (outcome instanceof Refused refusal) {
                console.say(refusal.sentence());
                refused++;
            } else if (outcome instanceof Filed done) {
                done.remarks().forEach(r -> console.say(done.picture().originalName() + ": " + r));
                filed++;
                shown.add(outcome);
            } else {
                known++;
                shown.add(outcome);
            }
        }
        if (!shown.isEmpty()) {
            output.write(table().rows(shown), services, console);
        }
        console.say(filed + " filed, " + known + " already there, " + refused + " refused.");
        return refused == 0 ? 0 : 1;
    }

    private static TableOf<FilingOutcome> table() {
        TableOf<FilingOutcome> t = new TableOf<>("Filed");
        t.text("picture", "number in the archive", o -> picture(o).id());
        t.text("file", "file that was handed in", o -> o.file().getFileName().toString());
        t.text("state", "filed now, or already there", o -> o instanceof Filed ? "filed" : "already there");
        t.text("planet", "planet", o -> picture(o).planetId().orElse(null));
        t.text(
                "mid_time_utc",
                "middle of the capture",
                o -> picture(o).time().map(time -> time.midUtc().toString()).orElse("undated"));
        t.number("time_sigma_s", "s", 1, "standard uncertainty of the time", o -> picture(o)
                .time()
                .map(CaptureTime::uncertaintyS)
                .orElse(null));
        t.text(
                "time_source",
                "where the time is from",
                o -> picture(o).time().map(CaptureTime::place).orElse(null));
        t.text("path", "where it is in the archive", o -> picture(o).relativePath());
        return t;
    }

    private static oblate.archive.ArchivedPicture picture(FilingOutcome outcome) {
        return outcome instanceof Filed filed ? filed.picture() : ((AlreadyThere) outcome).picture();
    }
}
