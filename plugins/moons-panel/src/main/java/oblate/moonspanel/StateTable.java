/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.ListSelectionModel;
import oblate.workbench.look.Palette;
import oblate.workbench.words.Texts;

/** Pictures about an event, one a row, with the state seen in each; those of which nothing is said are dimmed. */
final class StateTable extends RowTable<StateLine> {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(StateTable.class);

    StateTable(Supplier<Palette> palette) {
        super(palette, columns(), new Layout("moons.states.rows", 3, 120, 24, -1), TEXTS.text("states.pictures.name"));
        setSelectionMode(ListSelectionModel.MULTIPLE_INTERVAL_SELECTION);
    }

    private static List<Column<StateLine>> columns() {
        return List.of(
                Column.figure(TEXTS.text("states.column.time"), StateLine::clock),
                Column.words(TEXTS.text("states.column.state"), StateLine::state),
                Column.words(TEXTS.text("states.column.when"), StateLine::when),
                Column.words(
                        TEXTS.text("states.column.picture"), l -> l.picture().originalName()),
                Column.words(TEXTS.text("states.column.by"), StateLine::by));
    }

    @Override
    boolean isDimmed(StateLine line) {
        return line.said().isEmpty();
    }

    @Override
    Optional<String> tip(StateLine line) {
        return Optional.of(line.picture().originalName());
    }

    /** All chosen rows. */
    List<StateLine> allChosen() {
        return Arrays.stream(getSelectedRows()).mapToObj(shown()::get).toList();
    }
}
