/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import oblate.base.ProblemException;
import org.apache.commons.csv.CSVRecord;

/** Which column of a table of marks holds what, and how its cells are read. */
final class MarkCells {
    private static final int LONGEST_NUMBER = 40;
    private static final int LONGEST_QUOTE = 40;
    private static final Instant EARLIEST = Instant.parse("1600-01-01T00:00:00Z");
    private static final Instant LATEST = Instant.parse("2600-01-01T00:00:00Z");
    private static final double LARGEST_LON_DEG = 1e6;
    private static final double LARGEST_SIGMA_DEG = 360;

    private final Map<String, Integer> places;

    private MarkCells(Map<String, Integer> places) {
        this.places = places;
    }

    static MarkCells of(String name, List<String> header, String wanted) {
        Map<String, Integer> places = new HashMap<>();
        for (int i = 0; i < header.size(); i++) {
            String column = header.get(i).strip().toLowerCase(Locale.ROOT);
            if (!column.isEmpty() && places.putIfAbsent(column, i) != null) {
                throw new ProblemException(DriftProblem.TWICE, name, column);
            }
        }
        for (String needed : List.of("time_utc", "lon_deg")) {
            if (!places.containsKey(needed)) {
                throw new ProblemException(DriftProblem.NO_COLUMN, name, needed, wanted);
            }
        }
        return new MarkCells(places);
    }

    String feature(CSVRecord row) {
        return cell(row, "feature");
    }

    String kind(CSVRecord row) {
        return cell(row, "kind").toLowerCase(Locale.ROOT);
    }

    OptionalDouble sizeDeg(CSVRecord row) throws BadCell {
        return number(row, "size_deg", Double.MIN_NORMAL, 360, "size above 0 degrees");
    }

    boolean statesSigma(CSVRecord row) {
        return !cell(row, "sigma_deg").isEmpty();
    }

    LongitudePoint point(CSVRecord row) throws BadCell {
        Instant time = time(row);
        double lon = number(row, "lon_deg", -LARGEST_LON_DEG, LARGEST_LON_DEG, "longitude in degrees")
                .orElseThrow(() -> new BadCell("", "lon_deg", "longitude in degrees"));
        OptionalDouble lat = number(row, "lat_deg", -90, 90, "latitude from -90 to 90 degrees");
        OptionalDouble sigma = sigma(row, "sigma_deg");
        OptionalDouble sigmaLat = sigma(row, "sigma_lat_deg");
        double turn = lon % 360;
        return new LongitudePoint(
                time,
                turn < 0 ? (turn + 360) % 360 : turn,
                sigma.orElse(MarkFile.ASSUMED_SIGMA_DEG),
                lat,
                lat.isPresent() ? sigmaLat : OptionalDouble.empty());
    }

    private Instant time(CSVRecord row) throws BadCell {
        String text = cell(row, "time_utc");
        try {
            Instant time = OffsetDateTime.parse(text).toInstant();
            if (!time.isBefore(EARLIEST) && time.isBefore(LATEST)) {
                return time;
            }
        } catch (DateTimeException e) {
            throw badTime(text, e);
        }
        throw badTime(text, null);
    }

    private static BadCell badTime(String text, Throwable cause) {
        BadCell bad = new BadCell(text, "time_utc", "UTC time such as 2024-12-07T20:58:00Z");
        bad.initCause(cause);
        return bad;
    }

    private OptionalDouble sigma(CSVRecord row, String column) throws BadCell {
        return number(row, column, Double.MIN_NORMAL, LARGEST_SIGMA_DEG, "standard error above 0 degrees");
    }

    private OptionalDouble number(CSVRecord row, String column, double low, double high, String wanted) throws BadCell {
        String text = cell(row, column);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        // Only plain decimal numbers: Double.parseDouble alone would take "1d", "NaN" and hexadecimal.
        if (text.length() <= LONGEST_NUMBER && text.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?")) {
            double value = Double.parseDouble(text);
            if (value >= low && value <= high) {
                return OptionalDouble.of(value);
            }
        }
        throw new BadCell(text, column, wanted);
    }

    private String cell(CSVRecord row, String column) {
        Integer place = places.get(column);
        return place == null || place >= row.size() ? "" : row.get(place).strip();
    }

    /** A cell that is not what its column wants. */
    static final class BadCell extends Exception {
        private static final long serialVersionUID = 1L;

        private final String text;
        private final String column;
        private final String wanted;

        BadCell(String text, String column, String wanted) {
            super(column);
            this.text = text.length() > LONGEST_QUOTE ? text.substring(0, LONGEST_QUOTE) + "…" : text;
            this.column = column;
            this.wanted = wanted;
        }

        String text() {
            return text;
        }

        String column() {
            return column;
        }

        String wanted() {
            return wanted;
        }
    }
}
