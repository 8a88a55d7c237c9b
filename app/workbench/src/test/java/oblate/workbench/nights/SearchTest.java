/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import oblate.archive.ArchivedPicture;
import oblate.workbench.pictures.PictureState;
import org.junit.jupiter.api.Test;

class SearchTest {
    private static final PictureQuery.Lookup LOOKUP = lookup(10);
    private static final ArchivedPicture MARCH =
            WallTest.picture(1, Optional.of(LocalDate.of(2031, 3, 24)), true, 0, List.of());
    private static final ArchivedPicture APRIL =
            WallTest.picture(2, Optional.of(LocalDate.of(2031, 4, 2)), false, 0, List.of());
    private static final ArchivedPicture UNDATED = WallTest.picture(3, Optional.empty(), false, 0, List.of());
    private static final List<ArchivedPicture> ALL = List.of(MARCH, APRIL, UNDATED);

    private static PictureQuery.Lookup lookup(double meridianDeg) {
        return new PictureQuery.Lookup(
                p -> Optional.of(meridianDeg), PictureState::of, id -> id.equals("jupiter") ? "Jupiter" : id);
    }

    private static List<ArchivedPicture> found(String typed) {
        return PictureQuery.of(typed, LOOKUP).among(ALL);
    }

    @Test
    void partsAreKeysWithValuesQuotedOnesAndWords() {
        List<SearchToken> tokens = SearchToken.all("  red kit:\"long tube\" -state:new foo:bar ");
        assertThat(tokens).extracting(SearchToken::value).containsExactly("red", "long tube", "new", "foo:bar");
        assertThat(tokens).extracting(SearchToken::not).containsExactly(false, false, true, false);
        assertThat(tokens.get(1).key()).contains(SearchKey.KIT);
        assertThat(tokens.get(3).key()).isEmpty();
    }

    @Test
    void nightsAreFoundByDateMonthYearAndRange() {
        assertThat(found("night:2031-03-24")).containsExactly(MARCH);
        assertThat(found("night:2031-03")).containsExactly(MARCH);
        assertThat(found("night:2031")).containsExactly(MARCH, APRIL);
        assertThat(found("night:2031-03-25..2031-04")).containsExactly(APRIL);
        assertThat(found("-night:2031-03")).containsExactly(APRIL, UNDATED);
    }

    @Test
    void otherKeysMeetPartsOfTheirFactWhateverTheCase() {
        assertThat(found("kit:\"Long T\" planet:JUP site:gard state:fitted")).containsExactly(MARCH);
        assertThat(found("state:look")).containsExactly(UNDATED);
        assertThat(found("observer:anyone")).isEmpty();
        assertThat(found("kit:")).isEqualTo(ALL);
    }

    @Test
    void whatIsNotUnderstoodIsSaidAndAsksForNothing() {
        PictureQuery query = PictureQuery.of("night:yesterday state:new", LOOKUP);
        assertThat(query.problem()).hasValueSatisfying(s -> assertThat(s).contains("night:yesterday"));
        assertThat(query.among(ALL)).containsExactly(APRIL);
    }

    @Test
    void whenNothingIsFoundTheConditionToDropIsNamed() {
        PictureQuery query = PictureQuery.of("night:2031 state:measured", LOOKUP);
        assertThat(query.among(ALL)).isEmpty();
        assertThat(query.wayOut(ALL)).isEqualTo("Without state:measured there are 2. ");
    }

    @Property(tries = 300)
    void aRangeOfMeridiansRunsEastwardFromItsStartAlsoAcrossZero(
            @ForAll @IntRange(min = 0, max = 359) int from,
            @ForAll @IntRange(min = 1, max = 359) int span,
            @ForAll @DoubleRange(min = 0, max = 359.9) double meridianDeg) {
        int to = (from + span) % 360;
        boolean inside =
                from <= to ? meridianDeg >= from && meridianDeg <= to : meridianDeg >= from || meridianDeg <= to;
        PictureQuery query = PictureQuery.of("cm:" + from + ".." + to, lookup(meridianDeg));
        assertThat(query.among(List.of(MARCH)).isEmpty()).isNotEqualTo(inside);
    }

    @Test
    void completionComesFromWhatTheArchiveHolds() {
        Completions completions = Completions.of(ALL, LOOKUP);
        assertThat(completions.at("ki", 2))
                .extracting(Completions.Completion::text)
                .first()
                .isEqualTo("kit:");
        assertThat(completions.at("kit:lo", 6))
                .extracting(Completions.Completion::text)
                .containsExactly("kit:\"long tube\"");
        assertThat(completions.at("long", 4))
                .extracting(Completions.Completion::text)
                .contains("kit:\"long tube\"");
        assertThat(completions.at("night:", 6))
                .extracting(Completions.Completion::text)
                .containsExactly("night:2031-04-02", "night:2031-03-24");
        assertThat(completions.at("kit:zebra", 9)).isEmpty();
    }

    @Test
    void aCompletionStandsForThePartAtTheCaretOnly() {
        Completions completions = Completions.of(ALL, LOOKUP);
        String typed = "red -kit:lo state:new";
        int caret = "red -kit:lo".length();
        Completions.Completion way = completions.at(typed, caret).get(0);
        assertThat(Completions.taken(typed, caret, way)).isEqualTo("red -kit:\"long tube\" state:new");
        assertThat(Completions.taken("", 0, new Completions.Completion("kit:", "", true)))
                .isEqualTo("kit:");
    }
}
