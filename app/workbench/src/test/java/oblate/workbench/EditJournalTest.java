/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import oblate.archive.PictureFacts;
import oblate.archive.Rating;
import oblate.archive.SeenState;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The journal comes back from its file as it was, and a broken file costs only the journal. */
class EditJournalTest {
    private static Path folder;

    @BeforeContainer
    static void makeFolder() throws IOException {
        folder = Files.createTempDirectory("journal");
    }

    @AfterContainer
    static void removeFolder() throws IOException {
        try (var all = Files.walk(folder)) {
            all.sorted(java.util.Comparator.reverseOrder()).forEach(EditJournalTest::delete);
        }
    }

    private static void delete(Path path) {
        try {
            Files.delete(path);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Arbitrary<Long> ids() {
        return Arbitraries.longs().between(1, 60);
    }

    private static Arbitrary<Optional<String>> words() {
        return Arbitraries.strings().ofMaxLength(12).optional();
    }

    private static Arbitrary<PictureFacts> facts() {
        Arbitrary<PictureFacts.Taken> taken = Combinators.combine(
                        Arbitraries.longs().between(0, 2_500_000_000L),
                        Arbitraries.doubles().between(0, 300),
                        Arbitraries.doubles().between(0.01, 99),
                        Arbitraries.of(true, false))
                .as((s, length, sigma, known) -> new PictureFacts.Taken(
                        Instant.ofEpochSecond(s, 123_456_789),
                        known ? OptionalDouble.of(length) : OptionalDouble.empty(),
                        sigma));
        Arbitrary<Rating> rating = Combinators.combine(
                        Arbitraries.strings().ofMaxLength(4),
                        Arbitraries.strings().ofMaxLength(9))
                .as(Rating::new);
        return Combinators.combine(words(), taken.optional(), words(), words(), words(), rating.optional(), words())
                .as((planet, time, site, observer, filter, seeing, notes) -> new PictureFacts(
                        planet, time, site, observer, Optional.empty(), filter, seeing, Optional.empty(), notes));
    }

    private static Arbitrary<List<String>> sentences() {
        return Arbitraries.strings().ofMaxLength(20).list().ofMaxSize(3);
    }

    private static Arbitrary<Edit.FactsChange> changes() {
        return Combinators.combine(ids(), facts(), facts(), sentences()).as(Edit.FactsChange::new);
    }

    private static Arbitrary<Edit.Disagreement> disagreements() {
        return Combinators.combine(ids(), sentences()).as(Edit.Disagreement::new);
    }

    private static Arbitrary<SeenState> states() {
        return Combinators.combine(
                        ids(),
                        Arbitraries.of("io", "europa"),
                        Arbitraries.of("transit", "shadow_transit", "occultation", "eclipse"),
                        Arbitraries.of("clear", "on_limb", "on_disc", "gone", "seen", "not_seen", SeenState.OPEN),
                        Arbitraries.strings().ofMaxLength(9))
                .as((picture, moon, phenomenon, state, by) ->
                        SeenState.in(picture, "jupiter", moon, phenomenon, state, by));
    }

    private static Arbitrary<Edit> edits() {
        return Arbitraries.oneOf(
                Combinators.combine(ids(), ids()).as(Edit.MarkAdded::new),
                Combinators.combine(ids(), ids(), ids(), Arbitraries.of(Edit.Change.class))
                        .as(Edit.MarkReplaced::new),
                Combinators.combine(ids(), ids()).as(Edit.MarkWithdrawn::new),
                Combinators.combine(ids(), ids().optional(), ids(), Arbitraries.of(Edit.Origin.class))
                        .as(Edit.FitKept::new),
                Combinators.combine(ids(), ids()).as(Edit.FitWithdrawn::new),
                Combinators.combine(
                                changes().list().ofMinSize(1).ofMaxSize(4),
                                Arbitraries.strings().ofMaxLength(9),
                                Arbitraries.integers().between(0, 3))
                        .as((changes, words, undone) ->
                                new Edit.FactsCorrected(changes, words, changes.size() + undone)),
                Combinators.combine(
                                disagreements().list().ofMinSize(1).ofMaxSize(4),
                                Arbitraries.strings().ofMaxLength(9))
                        .as(Edit.TimesSettled::new),
                Combinators.combine(states().optional(), states())
                        .as(Edit.StateChange::new)
                        .list()
                        .ofMinSize(1)
                        .ofMaxSize(4)
                        .map(Edit.StatesSeen::new));
    }

    @Provide
    Arbitrary<EditJournal> journals() {
        return Combinators.combine(
                        edits().list().ofMaxSize(30),
                        edits().list().ofMaxSize(5),
                        Arbitraries.maps(ids(), ids()).ofMaxSize(20),
                        Arbitraries.maps(ids(), ids()).ofMaxSize(20))
                .as(EditJournal::new);
    }

    @Property(tries = 120)
    void whatIsWrittenIsRead(@ForAll("journals") EditJournal journal) {
        JournalFile file = new JournalFile(folder, Path.of("some archive"));
        file.write(journal);
        JournalFile.Found found = new JournalFile(folder, Path.of("some archive")).read();
        assertThat(found.remark()).isEmpty();
        assertThat(found.journal()).isEqualTo(journal);
    }

    @Property(tries = 120)
    void everyRowIsFollowedToAnEnd(@ForAll("journals") EditJournal journal) {
        for (Edit edit : journal.done()) {
            if (edit instanceof Edit.MarkAdded added) {
                EditJournal moved = journal.withMark(added.markId(), 99);
                assertThat(moved.mark(added.markId())).isEqualTo(99);
                assertThat(moved.withMark(added.markId(), 100).mark(added.markId()))
                        .isEqualTo(100);
            }
        }
    }

    @Test
    void theOldestEditsAreForgottenBeyondTheLimit() {
        EditJournal journal = EditJournal.empty();
        for (int i = 1; i <= EditJournal.MOST + 20; i++) {
            journal = journal.with(new Edit.MarkAdded(1, i));
        }
        assertThat(journal.done()).hasSize(EditJournal.MOST);
        assertThat(journal.done().get(0)).isEqualTo(new Edit.MarkAdded(1, 21));
    }

    @Test
    void largeEditsCrowdOutOldOnesButTheNewestStays() {
        Edit large = new Edit.TimesSettled(
                java.util.stream.LongStream.range(0, 3000)
                        .mapToObj(i -> new Edit.Disagreement(i, List.of()))
                        .toList(),
                "looked at");
        EditJournal two =
                EditJournal.empty().with(new Edit.MarkAdded(1, 1)).with(large).with(large);
        assertThat(two.done()).containsExactly(large);
        Edit huge = new Edit.TimesSettled(
                java.util.stream.LongStream.range(0, 6000)
                        .mapToObj(i -> new Edit.Disagreement(i, List.of()))
                        .toList(),
                "looked at");
        assertThat(two.with(huge).done()).containsExactly(huge);
    }

    @Test
    void aNewEditForgetsWhatWasUndone() {
        EditJournal journal = EditJournal.empty()
                .with(new Edit.MarkAdded(1, 1))
                .with(new Edit.MarkAdded(1, 2))
                .back(true);
        assertThat(journal.undone()).containsExactly(new Edit.MarkAdded(1, 2));
        assertThat(journal.with(new Edit.MarkAdded(1, 3)).undone()).isEmpty();
        assertThat(journal.forth(true).done()).hasSize(2);
    }

    @Test
    void aBrokenFileIsSetAsideWithASentence(@TempDir Path settings) throws IOException {
        JournalFile file = new JournalFile(settings, Path.of("archive"));
        file.write(EditJournal.empty().with(new Edit.MarkAdded(1, 1)));
        byte[] whole = Files.readAllBytes(file.file());
        List<byte[]> broken = List.of(
                java.util.Arrays.copyOf(whole, whole.length / 2),
                "no journal".getBytes(java.nio.charset.StandardCharsets.UTF_8),
                "{\"version\":9}".getBytes(java.nio.charset.StandardCharsets.UTF_8),
                "{\"version\":1,\"done\":[{\"edit\":\"magic\",\"picture\":\"1\"}]}"
                        .getBytes(java.nio.charset.StandardCharsets.UTF_8),
                new byte[65_000_000]);
        for (byte[] bytes : broken) {
            Files.write(file.file(), bytes);
            JournalFile.Found found = file.read();
            assertThat(found.journal()).isEqualTo(EditJournal.empty());
            assertThat(found.remark().orElseThrow()).contains("set aside").contains(".broken");
            assertThat(file.file()).doesNotExist();
            assertThat(file.file().resolveSibling(file.file().getFileName() + ".broken"))
                    .hasBinaryContent(bytes);
        }
    }

    @Test
    void aJournalThatCannotBeWrittenIsAProblemWithARemedy(@TempDir Path settings) throws IOException {
        Files.writeString(settings.resolve("edits"), "a file where the folder should be");
        JournalFile file = new JournalFile(settings, Path.of("archive"));
        assertThatThrownBy(() -> file.write(EditJournal.empty()))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("list of edits");
    }

    @Test
    void chainsThatTurnBackOnThemselvesAreCut() {
        EditJournal journal =
                new EditJournal(List.of(new Edit.MarkAdded(1, 1)), List.of(), Map.of(1L, 2L, 2L, 1L), Map.of());
        assertThat(journal.mark(1)).isIn(1L, 2L);
    }
}
