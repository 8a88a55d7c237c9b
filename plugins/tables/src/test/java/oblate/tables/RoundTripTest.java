/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import oblate.base.ProblemException;
import oblate.report.Column;
import oblate.report.ReportFormat;
import oblate.report.ReportTable;
import oblate.report.ValueKind;
import org.junit.jupiter.api.Test;

class RoundTripTest {
    private static final Map<Column, ValueKind> COLUMNS = new LinkedHashMap<>();

    static {
        COLUMNS.put(new Column("feature", "Feature", "", "meta.id", "name", -1), ValueKind.TEXT);
        COLUMNS.put(new Column("lon_deg", "Lon", "deg", "pos.bodyrc.lon", "longitude, System II", 3), ValueKind.NUMBER);
        COLUMNS.put(new Column("raw", "Raw", "", "", "unrounded", -1), ValueKind.NUMBER);
        COLUMNS.put(new Column("marks", "Marks", "", "meta.number", "count", 0), ValueKind.INTEGER);
        COLUMNS.put(new Column("mid_time_utc", "Time", "", "time.epoch", "middle", -1), ValueKind.TIME);
        COLUMNS.put(new Column("mirrored", "Mirrored", "", "", "mirror image", -1), ValueKind.BOOLEAN);
        COLUMNS.put(new Column("note", "Note", "", "", "words", -1), ValueKind.TEXT);
    }

    static String written(ReportFormat format, ReportTable table) {
        StringWriter out = new StringWriter();
        try {
            format.write(table, out);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return out.toString();
    }

    static ReportTable table(List<List<Object>> rows) {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("planet", "Jupiter");
        facts.put("note", "\"quoted\", ünicode\n\u0007");
        return new ReportTable("A table", facts, List.copyOf(COLUMNS.keySet()), rows);
    }

    @Property(tries = 300, seed = "51")
    void csvComesBack(@ForAll("rows") List<List<Object>> rows) {
        ReportTable table = table(rows);
        ReportTable read = new CsvReader().read(new StringReader(written(new CsvFormat(), table)), "x.csv", COLUMNS);
        assertThat(read.columns()).isEqualTo(table.columns());
        assertThat(read.rows()).isEqualTo(table.rows());
    }

    @Property(tries = 300, seed = "52")
    void jsonComesBackWhole(@ForAll("rows") List<List<Object>> rows) {
        ReportTable table = table(rows);
        assertThat(new JsonReader().read(new StringReader(written(new JsonFormat(), table)), "x.json")).isEqualTo(table);
    }

    @Property(tries = 200, seed = "53")
    void textFitsThePageAndHasNoControlCharacters(@ForAll("rows") List<List<Object>> rows) {
        // Numbers are never cut, so a page cannot hold one of a hundred digits: those are left out here.
        List<List<Object>> tame = new ArrayList<>();
        for (List<Object> row : rows) {
            List<Object> copy = new ArrayList<>(row);
            copy.replaceAll(v -> v instanceof Double d && (Math.abs(d) > 1e9 || Math.abs(d) < 1e-9) ? null : v);
            tame.add(copy);
        }
        String text = written(new TextFormat(80), table(tame));
        assertThat(text.codePoints().filter(c -> Character.isISOControl(c) && c != '\n').count()).isZero();
        text.lines().forEach(line -> assertThat(TextWidth.of(line)).isLessThanOrEqualTo(80));
    }

    @Test
    void formulasAreDisarmedAndComeBack() {
        List<List<Object>> rows = new ArrayList<>();
        for (String text : List.of("=1+1", "+a", "-b", "@c", "'=d", "''-e", "'plain", "\tx")) {
            rows.add(java.util.Arrays.asList(text, -1.5, null, -3L, null, null, null));
        }
        String csv = written(new CsvFormat(), table(rows));
        assertThat(csv.lines().skip(1)).allMatch(line -> !line.matches("^\"?[=+@\\t-].*")).allMatch(line -> line.contains(",-1.500,,-3,"));
        assertThat(new CsvReader().read(new StringReader(csv), "x.csv", COLUMNS).rows()).isEqualTo(table(rows).rows());
    }

    @Test
    void csvIsRfc4180() {
        List<List<Object>> rows = new ArrayList<>();
        rows.add(java.util.Arrays.asList("a \"b\", c", 1.23456, null, 7L, Instant.parse("2024-12-07T20:58:00Z"), true, "two\nlines"));
        assertThat(written(new CsvFormat(), table(rows)))
                .isEqualTo("feature,lon_deg,raw,marks,mid_time_utc,mirrored,note\r\n"
                        + "\"a \"\"b\"\", c\",1.235,,7,2024-12-07T20:58:00Z,yes,\"two\nlines\"\r\n");
    }

    @Test
    void badTablesAreRefusedInOneSentence() {
        assertThat(refusal("")).isEqualTo(TablesProblem.NOT_A_TABLE);
        assertThat(refusal("feature\r\nx\r\n")).isEqualTo(TablesProblem.NO_COLUMN);
        assertThat(refusal("feature,lon_deg,raw,marks,mid_time_utc,mirrored,note\r\na,x,,,,,\r\n")).isEqualTo(TablesProblem.BAD_VALUE);
        assertThat(refusal("feature,lon_deg,raw,marks,mid_time_utc,mirrored,note\r\na,1\r\n")).isEqualTo(TablesProblem.NOT_A_TABLE);
        for (String text : List.of("", "[]", "{\"rows\":[{\"a\":1}]}", "{\"columns\":[{\"name\":\"a\",\"decimals\":\"x\"}]}", "{\"title\":", "nonsense")) {
            assertThat(catchThrowableOfType(ProblemException.class, () -> new JsonReader().read(new StringReader(text), "x.json")))
                    .as(text)
                    .isNotNull();
        }
    }

    private static Object refusal(String csv) {
        return catchThrowableOfType(
                        ProblemException.class, () -> new CsvReader().read(new StringReader(csv), "x.csv", COLUMNS))
                .kind();
    }

    @Provide
    Arbitrary<List<List<Object>>> rows() {
        Arbitrary<String> text = Arbitraries.strings().all().ofMaxLength(40).filter(RoundTripTest::isWellFormed);
        Arbitrary<Object> words = Arbitraries.oneOf(text, Arbitraries.of("=x", "'-y", "", " ", "a,b", "\"", "\r\n", "木星")).injectNull(0.1).map(x -> x);
        Arbitrary<Object> numbers = Arbitraries.doubles().injectNull(0.1).map(x -> x);
        Arbitrary<Object> small = Arbitraries.doubles().between(-400, 400).ofScale(9).injectNull(0.1).map(x -> x);
        Arbitrary<Object> whole = Arbitraries.longs().injectNull(0.1).map(x -> x);
        Arbitrary<Object> times = Arbitraries.longs().between(-10_000_000_000L, 20_000_000_000L)
                .map(s -> Instant.ofEpochSecond(s, (s & 7) * 1_000_000)).injectNull(0.1).map(x -> x);
        Arbitrary<Object> flags = Arbitraries.of(true, false).injectNull(0.1).map(x -> x);
        Arbitrary<List<Object>> row = Combinators.combine(words, small, numbers, whole, times, flags, words)
                .as((a, b, c, d, e, f, g) -> java.util.Arrays.asList(a, b, c, d, e, f, g));
        return row.list().ofMaxSize(12);
    }

    /** Half surrogates are no text and cannot be written in UTF-8. */
    private static boolean isWellFormed(String text) {
        return text.codePoints().noneMatch(c -> c >= 0xD800 && c <= 0xDFFF);
    }
}
