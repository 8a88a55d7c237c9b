/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.base.ProblemException;
import oblate.drift.Linked;
import oblate.drift.MarkTable;
import oblate.drift.RateWindow;
import oblate.drift.SettleFile;
import oblate.drift.SettledMarks;
import oblate.drift.Settlement;
import oblate.drift.TrackLinker;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Joins marks without names into tracks and tells which mark went where. */
final class DriftLinking {
    private final Optional<RateWindow> window;
    private final Optional<Path> settlements;
    private final Optional<Path> assignments;
    private final Console console;

    DriftLinking(Optional<RateWindow> window, Optional<Path> settlements, Optional<Path> assignments, Console console) {
        this.window = window;
        this.settlements = settlements;
        this.assignments = assignments;
        this.console = console;
    }

    /** The marks with the names of their tracks; those of no track are left out. */
    MarkTable linked(MarkTable table) {
        Linked linked = linker().link(table.toLink(), table.planet(), table.system());
        if (settlements.isPresent()) {
            linked = linked.settled(SettleFile.read(settlements.get(), table));
        }
        tell(table, linked);
        return table.named(linked);
    }

    /** The same for the marks of an archive, where what is settled by hand is kept. */
    MarkTable linked(Archive archive, PlanetModel planet, RotationSystem system) {
        SettledMarks marks = new SettledMarks(archive, linker());
        SettledMarks.Result result = marks.link(planet, system);
        if (settlements.isPresent() && !result.table().rows().isEmpty()) {
            List<Settlement> settled = SettleFile.read(settlements.get(), result.table());
            marks.keep(settled, result);
            console.say(settled.size() + (settled.size() == 1 ? " link" : " links")
                    + " settled by hand; the archive keeps them for later runs.");
            result = marks.link(planet, system);
        }
        if (!result.table().rows().isEmpty()) {
            tell(result.table(), result.linked());
        }
        return result.table().named(result.linked());
    }

    private TrackLinker linker() {
        return window.map(TrackLinker::new).orElseGet(TrackLinker::new);
    }

    private void tell(MarkTable table, Linked linked) {
        long free = linked.links().stream().filter(l -> l.track().isEmpty()).count();
        long doubtful = linked.links().stream().filter(Linked.Link::doubtful).count();
        console.say(String.format(
                Locale.ROOT,
                "%d marks: %d tracks, %d marks in none, %d links doubtful%s.",
                table.rows().size(),
                linked.tracks().size(),
                free,
                doubtful,
                assignments.isPresent() ? "" : " (--assignments FILE lists them)"));
        if (assignments.isPresent()) {
            write(linked, table, assignments.get());
        }
    }

    private static void write(Linked linked, MarkTable table, Path file) {
        try (Writer text = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
                CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord("row", "track", "doubtful", "reason");
            for (int i = 0; i < linked.links().size(); i++) {
                Linked.Link link = linked.links().get(i);
                printer.printRecord(
                        table.rows().get(i).row(), link.track(), link.doubtful() ? "yes" : "no", link.reason());
            }
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_WRITE, file, e.getMessage());
        }
    }
}
