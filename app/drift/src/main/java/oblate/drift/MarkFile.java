/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads marks from a table of comma-separated values (RFC 4180, UTF-8).
 *
 * <p>The first line names the columns: {@code time_utc} and {@code lon_deg} must be there, {@code feature}, {@code lat_deg} (planetographic),
 * {@code sigma_deg}, {@code sigma_lat_deg}, {@code kind} and {@code size_deg} may be, others are passed over. Lines before it that start with {@code #} are passed over too. Longitudes of any
 * turn are brought into 0…360. Stateless.
 */
public final class MarkFile {
    /** Standard error (deg) of a longitude that states none. */
    public static final double ASSUMED_SIGMA_DEG = 0.5;

    private static final String COLUMNS = "time_utc,lon_deg and, if known, feature,lat_deg,sigma_deg";
    private static final int MOST_NAMED_ROWS = 10;

    private MarkFile() {}

    /**
     * Reads a file.
     *
     * @param system system of the longitudes, as {@link SystemNames} understands it
     * @throws ProblemException naming the first bad row and the numbers of the others; nothing is read in part
     */
    public static MarkTable read(Path file, PlanetModel planet, String system) {
        RotationSystem known = SystemNames.named(planet, system);
        try (Reader reader = new InputStreamReader(
                Files.newInputStream(file),
                StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT))) {
            return read(reader, file.toString(), planet, known);
        } catch (IOException e) {
            throw new ProblemException(
                    e, DriftProblem.CANNOT_READ, file, e.getClass().getSimpleName());
        }
    }

    /**
     * Reads a stream of characters; does not close it.
     *
     * @param name what to call it in messages
     * @throws ProblemException naming the first bad row and the numbers of the others
     */
    public static MarkTable read(Reader reader, String name, PlanetModel planet, RotationSystem system) {
        try {
            BufferedReader table = new BufferedReader(new GuardedReader(reader));
            skipRemarks(table);
            CSVParser parser = CSVFormat.RFC4180
                    .builder()
                    .setIgnoreEmptyLines(true)
                    .setIgnoreSurroundingSpaces(true)
                    .get()
                    .parse(table);
            return new Reading(name, planet, system).table(parser);
        } catch (UncheckedIOException e) {
            throw unreadable(e.getCause(), name);
        } catch (IOException e) {
            throw unreadable(e, name);
        }
    }

    private static ProblemException unreadable(IOException e, String name) {
        Throwable cause = e;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        String reason =
                cause instanceof CharacterCodingException ? "it has bytes that are no text" : cause.getMessage();
        return new ProblemException(e, DriftProblem.NOT_A_TABLE, name, reason);
    }

    /** Passes over a byte order mark and the remarks before the column names. */
    private static void skipRemarks(BufferedReader table) throws IOException {
        table.mark(1);
        if (table.read() != '\uFEFF') {
            table.reset();
        }
        while (true) {
            table.mark(1);
            if (table.read() != '#') {
                table.reset();
                return;
            }
            table.readLine();
        }
    }

    /** The work on one table. */
    private static final class Reading {
        private final String name;
        private final PlanetModel planet;
        private final RotationSystem system;
        private final List<MarkRow> rows = new ArrayList<>();
        private final List<Integer> badRows = new ArrayList<>();
        private Optional<MarkCells.BadCell> firstBad = Optional.empty();
        private int bad;
        private int assumed;

        Reading(String name, PlanetModel planet, RotationSystem system) {
            this.name = name;
            this.planet = planet;
            this.system = system;
        }

        MarkTable table(CSVParser parser) {
            var records = parser.iterator();
            if (!records.hasNext()) {
                throw new ProblemException(DriftProblem.NO_COLUMN, name, "time_utc", COLUMNS);
            }
            MarkCells cells = MarkCells.of(name, records.next().toList(), COLUMNS);
            int row = 0;
            while (records.hasNext()) {
                row++;
                take(cells, records.next(), row);
            }
            if (firstBad.isPresent()) {
                throw badRow(firstBad.get());
            }
            if (rows.isEmpty()) {
                throw new ProblemException(DriftProblem.NO_MARKS, name);
            }
            List<String> remarks = new ArrayList<>();
            if (assumed > 0) {
                remarks.add(name + ": " + assumed + " of " + rows.size() + " marks state no sigma_deg; "
                        + ASSUMED_SIGMA_DEG + " deg was taken for them");
            }
            return new MarkTable(planet, system, rows, remarks);
        }

        private void take(MarkCells cells, CSVRecord row, int number) {
            try {
                LongitudePoint point = cells.point(row);
                assumed += cells.statesSigma(row) ? 0 : 1;
                rows.add(new MarkRow(number, cells.feature(row), point, cells.kind(row), cells.sizeDeg(row)));
            } catch (MarkCells.BadCell e) {
                bad++;
                if (firstBad.isEmpty()) {
                    firstBad = Optional.of(e);
                }
                if (badRows.size() < MOST_NAMED_ROWS) {
                    badRows.add(number);
                }
            }
        }

        private ProblemException badRow(MarkCells.BadCell cell) {
            String others = bad == 1 ? "" : ", and so " + (bad - 1) + " more: row " + listed();
            return new ProblemException(
                    DriftProblem.BAD_VALUE, name, badRows.get(0), cell.text(), cell.column(), cell.wanted(), others);
        }

        private String listed() {
            String numbers = String.join(
                    ", ", badRows.stream().skip(1).map(String::valueOf).toList());
            return bad > badRows.size() ? numbers + " …" : numbers;
        }
    }
}
