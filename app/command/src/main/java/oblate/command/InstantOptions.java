/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import oblate.base.ProblemException;
import picocli.CommandLine.Option;

/** Instants a command is asked about. */
final class InstantOptions {

    @Option(
            names = "--at",
            paramLabel = "TIME",
            arity = "1..*",
            description = "instants, ISO 8601 with Z, e.g. 2024-12-07T20:00:00Z")
    private List<String> times = new ArrayList<>();

    @Option(
            names = "--times",
            paramLabel = "FILE",
            description = "a file with one instant per line; - for standard input")
    private String timesFile;

    /** The instants as written; they are parsed one by one, so that a bad one costs only itself. */
    List<String> texts(Console console) {
        List<String> wanted = new ArrayList<>(times);
        if (timesFile != null) {
            wanted.addAll(read(console));
        }
        if (wanted.isEmpty()) {
            throw new UsageException("no instant is given; add --at TIME or --times FILE");
        }
        return wanted;
    }

    private List<String> read(Console console) {
        try (BufferedReader lines = timesFile.equals("-")
                ? new BufferedReader(new InputStreamReader(console.in(), StandardCharsets.UTF_8))
                : Files.newBufferedReader(Path.of(timesFile), StandardCharsets.UTF_8)) {
            return lines.lines().map(String::strip).filter(l -> !l.isEmpty()).toList();
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_READ, timesFile, e.getMessage());
        }
    }
}
