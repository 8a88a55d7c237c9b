/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Set;
import oblate.base.ProblemException;
import oblate.report.Column;
import oblate.report.ReportFormat;
import oblate.report.ReportTable;
import picocli.CommandLine.Option;

/** Options of every command that prints a table. */
final class OutputOptions {
    /** Where figures are from; repeated in every row of a table for programs, said once to a reader. */
    private static final Set<String> SAID_ONCE = Set.of("ephemeris", "leap_seconds");

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            defaultValue = "text",
            description = "text, csv, json, or another report format that is plugged in (default: ${DEFAULT-VALUE})")
    private String format;

    @Option(names = "--out", paramLabel = "FILE", description = "write the table there instead of to standard output")
    private Path out;

    @Option(
            names = "--columns",
            paramLabel = "NAME",
            split = ",",
            description = "only these columns of the table, in this order, by their names in csv")
    private List<String> columns;

    /** Whether the table is for reading rather than for programs. */
    boolean isText() {
        return format.equals("text");
    }

    /** Whether a format of this name was asked for. */
    boolean is(String id) {
        return format.equals(id);
    }

    /** Writes finished text where the user asked. */
    void writeText(String text, Console console) {
        if (out == null) {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            console.out().write(bytes, 0, bytes.length);
            console.out().flush();
        } else {
            writeText(text, out);
            console.say("Wrote " + out + ".");
        }
    }

    /** Writes finished text to a file, whole or not at all. */
    static void writeText(String text, Path file) {
        replace(file, writer -> writer.write(text));
    }

    /** Writes a table where and how the user asked. */
    void write(ReportTable full, Services services, Console console) {
        ReportFormat writer = services.reportFormats().stream()
                .filter(f -> f.id().equals(format))
                .findFirst()
                .orElseThrow(() -> new UsageException("format \"" + format + "\" is not known; "
                        + Nearest.hint(
                                format,
                                services.reportFormats().stream()
                                        .map(ReportFormat::id)
                                        .toList())));
        ReportTable chosen = columns == null ? full : full.only(known(full));
        ReportTable table = isText() && columns == null ? chosen.saidOnce(SAID_ONCE) : chosen;
        if (out == null) {
            toConsole(writer, table, console);
        } else {
            toFile(writer, table);
            console.say("Wrote " + table.rows().size() + " rows to " + out + ".");
        }
    }

    private List<String> known(ReportTable table) {
        List<String> names = table.columns().stream().map(Column::name).toList();
        List<String> wanted = columns.stream().map(String::strip).distinct().toList();
        for (String name : wanted) {
            if (!names.contains(name)) {
                throw new UsageException("column \"" + name + "\" is not in this table; " + Nearest.hint(name, names));
            }
        }
        return wanted;
    }

    private static void toConsole(ReportFormat writer, ReportTable table, Console console) {
        Writer text = new OutputStreamWriter(console.out(), StandardCharsets.UTF_8);
        try {
            writer.write(table, text);
            text.flush();
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_WRITE, "standard output", e.getMessage());
        }
    }

    private void toFile(ReportFormat writer, ReportTable table) {
        replace(out, text -> writer.write(table, text));
    }

    /** What fills a file. */
    @FunctionalInterface
    private interface Filling {
        void into(Writer text) throws IOException;
    }

    private static void replace(Path file, Filling filling) {
        Path target = file.toAbsolutePath();
        try {
            Path temp = Files.createTempFile(target.getParent(), ".oblate", ".part");
            try (Writer text = Files.newBufferedWriter(temp, StandardCharsets.UTF_8)) {
                filling.into(text);
            }
            Files.move(temp, target, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_WRITE, file, e.getMessage());
        }
    }
}
