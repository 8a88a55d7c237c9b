/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import oblate.drift.timing.StateSaid;

/** States of moons from a CSV file with the columns picture or time_utc, moon, phenomenon, state, and if known sigma_s, observer, site. */
final class StateRows {
    private final StateReader reader;
    private final List<String> remarks = new ArrayList<>();

    StateRows(StateReader reader) {
        this.reader = reader;
    }

    /**
     * One row.
     *
     * @param place file and row, for sentences
     * @param word what it says
     */
    record Row(String place, StateWord word) {}

    /** All rows; nothing is read in part. */
    List<Row> read(String file, Console console) {
        List<Row> states = new ArrayList<>();
        int assumed = 0;
        for (CsvRows.Row row : CsvRows.read(file, console)) {
            String place = row.file() + ", row " + row.row().getRecordNumber();
            states.add(new Row(
                    place,
                    reader.read(new StateReader.Words(
                            place,
                            row.text("picture"),
                            row.text("time_utc"),
                            row.text("sigma_s"),
                            row.text("observer"),
                            row.text("site"),
                            row.needed("moon"),
                            row.needed("phenomenon"),
                            row.needed("state")))));
            assumed += row.text("picture").isEmpty() && row.text("sigma_s").isEmpty() ? 1 : 0;
        }
        if (assumed > 0) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "%s: %d of %d rows state no sigma_s; %.0f s was taken for their times.",
                    file,
                    assumed,
                    states.size(),
                    StateReader.ASSUMED_SIGMA_S));
        }
        return states;
    }

    /** What was assumed, one sentence each. */
    List<String> remarks() {
        return remarks;
    }

    /** Those of some moons and some span. */
    static List<StateSaid> within(List<Row> states, Set<String> moons, Optional<Instant> from, Optional<Instant> to) {
        return states.stream()
                .map(r -> r.word().said())
                .filter(s -> moons.isEmpty() || moons.contains(s.moon().id()))
                .filter(s -> from.map(f -> !s.shot().midUtc().isBefore(f)).orElse(true))
                .filter(s -> to.map(t -> s.shot().midUtc().isBefore(t)).orElse(true))
                .toList();
    }
}
