/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.archive.ArchivedPicture;
import oblate.archive.FitSummary;
import oblate.disc.Trust;
import org.junit.jupiter.api.Test;

class TodoListTest {
    private static final Optional<LocalDate> NIGHT = Optional.of(LocalDate.of(2031, 3, 24));

    private static FitSummary fit(long id, Trust trust, double offsetS, double sigmaS) {
        return new FitSummary(
                id,
                id,
                trust,
                0,
                false,
                trust == Trust.TRUSTED ? List.of() : List.of("The edge is clipped."),
                OptionalDouble.of(offsetS),
                OptionalDouble.of(sigmaS));
    }

    private static List<Todo> of(List<ArchivedPicture> pictures, FitSummary... fits) {
        return TodoList.of(
                        pictures,
                        id -> List.of(fits).stream()
                                .filter(f -> f.pictureId() == id)
                                .findFirst(),
                        List.of(),
                        id -> List.of())
                .todos();
    }

    @Test
    void theGravestComesFirstAndWhatIsMissingIsGatheredByNight() {
        List<Todo> todos = of(
                List.of(
                        WallTest.picture(1, NIGHT, true, 0, List.of()),
                        WallTest.picture(2, NIGHT, true, 0, List.of("file name and note differ by 3600 s.")),
                        WallTest.picture(3, Optional.empty(), false, 0, List.of())),
                fit(1, Trust.DOUBTFUL, 0, 10));
        assertThat(todos)
                .extracting(Todo::kind)
                .containsExactly(
                        Todo.Kind.TIME_CONFLICT,
                        Todo.Kind.UNDATED,
                        Todo.Kind.DOUBTFUL_FIT,
                        Todo.Kind.NO_OBSERVER,
                        Todo.Kind.NO_OBSERVER);
        assertThat(todos.get(2).sentence()).contains("The edge is clipped.");
        assertThat(todos.get(4).pictures()).containsExactly(1L, 2L);
    }

    @Test
    void aClockIsWrongOnlyWhenTheMoonsAreSure() {
        List<ArchivedPicture> pictures = List.of(
                WallTest.picture(1, NIGHT, true, 0, List.of()),
                WallTest.picture(2, NIGHT, true, 0, List.of()),
                WallTest.picture(3, NIGHT, true, 0, List.of()));
        List<Todo> todos = of(
                pictures, fit(1, Trust.TRUSTED, 63, 12), fit(2, Trust.TRUSTED, 63, 20), fit(3, Trust.TRUSTED, -18, 2));
        assertThat(todos)
                .filteredOn(t -> t.kind() == Todo.Kind.CLOCK)
                .extracting(Todo::first)
                .containsExactly(1L);
        assertThat(todos.get(0).sentence()).contains("63 ± 12 s");
    }

    @Test
    void anEmptyListSaysSo() {
        assertThat(new TodoList(List.of(), java.util.Map.of()).summary()).startsWith("Nothing to do");
        assertThat(new TodoList(
                                of(List.of(WallTest.picture(1, Optional.empty(), false, 0, List.of()))),
                                java.util.Map.of())
                        .summary())
                .isEqualTo("1 picture without a time, 1 night without an observer");
    }
}
