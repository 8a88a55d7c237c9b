/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import static oblate.drift.Sets.JUPITER;
import static oblate.drift.Sets.URANUS;
import static oblate.drift.Sets.system;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.OptionalDouble;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MarkFileTest {

    private static MarkTable read(String text) {
        return MarkFile.read(new StringReader(text), "marks.csv", JUPITER, system(JUPITER, "2"));
    }

    private static ProblemException refusal(String text) {
        return catchThrowableOfType(ProblemException.class, () -> read(text));
    }

    @Test
    void namedMarksBecomeOneSeriesEach() {
        MarkTable table = read("feature,time_utc,lon_deg,lat_deg,sigma_deg\r\n"
                + "B,2024-12-07T20:58:00Z,361.5,-22.5,0.4\r\n"
                + "A,2024-12-08T20:58:00.5Z,-1,,\r\n"
                + "B,2024-12-09T22:58:00+02:00,5,-22.0,0.6\r\n");
        assertThat(table.series()).extracting(LongitudeSeries::feature).containsExactly("A", "B");
        LongitudePoint first = table.series().get(1).points().get(0);
        assertThat(first.lonDeg()).isCloseTo(1.5, within(1e-12));
        assertThat(first.latGraphicDeg()).isEqualTo(OptionalDouble.of(-22.5));
        assertThat(table.series().get(0).points().get(0).lonDeg()).isEqualTo(359);
        assertThat(table.series().get(0).points().get(0).sigmaDeg()).isEqualTo(0.5);
        assertThat(table.series().get(1).points().get(1).time()).isEqualTo(Instant.parse("2024-12-09T20:58:00Z"));
        assertThat(table.remarks()).containsExactly("marks.csv: 1 of 3 marks state no sigma_deg; 0.5 deg was taken for them");
        assertThat(table.rows()).extracting(MarkRow::row).containsExactly(1, 2, 3);
    }

    @Test
    void fileWithoutNamesIsOneSeries() {
        MarkTable table = read("time_utc,lon_deg\n2024-12-07T20:58:00Z,1\n2024-12-08T20:58:00Z,2\n");
        assertThat(table.series()).singleElement().satisfies(s -> {
            assertThat(s.feature()).isEmpty();
            assertThat(s.points()).hasSize(2);
        });
        assertThat(table.unnamed()).hasSize(2);
    }

    @Test
    void unnamedMarksAmongNamedOnesStayApart() {
        MarkTable table = read("feature,time_utc,lon_deg\nA,2024-12-07T20:58:00Z,1\n,2024-12-08T20:58:00Z,2\n");
        assertThat(table.series()).extracting(LongitudeSeries::feature).containsExactly("A");
        assertThat(table.unnamed()).extracting(MarkRow::row).containsExactly(2);
    }

    @Test
    void remarksByteOrderMarkOtherColumnsAndCaseDoNotMatter() {
        MarkTable table = read("\uFEFF# made by hand\n# System II\nNote, Lon_Deg ,TIME_UTC,feature\n\"a, b\",12.5,2024-12-07T20:58:00Z,\"#1 \"\"white\"\"\"\n\n");
        assertThat(table.rows()).singleElement().satisfies(row -> {
            assertThat(row.feature()).isEqualTo("#1 \"white\"");
            assertThat(row.point().lonDeg()).isEqualTo(12.5);
        });
    }

    @ParameterizedTest
    @CsvSource({
        "lon_deg, NaN", "lon_deg, Infinity", "lon_deg, 0x1p3", "lon_deg, 12d", "lon_deg, 1e300", "lon_deg, twelve", "lon_deg, ''",
        "lat_deg, 90.01", "lat_deg, -91", "lat_deg, NaN", "sigma_deg, 0", "sigma_deg, -0.5", "sigma_deg, 1e999", "sigma_deg, NaN",
        "time_utc, 2024-12-07", "time_utc, 2024-12-07T20:58:00", "time_utc, 2024-02-30T20:58:00Z", "time_utc, +999999999-01-01T00:00:00Z", "time_utc, ''"
    })
    void badCellIsRefusedWithRowAndColumn(String column, String text) {
        String good = "2024-12-07T20:58:00Z,10,5,0.5\n";
        String bad = (column.equals("time_utc") ? text : "2024-12-08T20:58:00Z") + ","
                + (column.equals("lon_deg") ? text : "10") + ","
                + (column.equals("lat_deg") ? text : "5") + ","
                + (column.equals("sigma_deg") ? text : "0.5") + "\n";
        ProblemException e = refusal("time_utc,lon_deg,lat_deg,sigma_deg\n" + good + bad + good);
        assertThat(e.kind()).isEqualTo(DriftProblem.BAD_VALUE);
        assertThat(e.parts().subList(0, 4)).containsExactly("marks.csv", 2, text, column);
    }

    @Test
    void allBadRowsAreNumbered() {
        StringBuilder text = new StringBuilder("time_utc,lon_deg\n");
        for (int i = 1; i <= 30; i++) {
            text.append("2024-12-07T20:58:00Z,").append(i % 2 == 0 ? "x" : "1").append('\n');
        }
        assertThat(refusal(text.toString()))
                .hasMessage("marks.csv, row 2: \"x\" in column lon_deg is no longitude in degrees; correct it, and so 14 more: row 4, 6, 8, 10, 12, 14, 16, 18, 20 …");
    }

    @Test
    void shortRowsAreRefusedNotMisread() {
        assertThat(refusal("time_utc,lon_deg\n2024-12-07T20:58:00Z\n").kind()).isEqualTo(DriftProblem.BAD_VALUE);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "lon_deg,lat_deg\n1,2\n", "time_utc;lon_deg\n2024-12-07T20:58:00Z;1\n"})
    void missingColumnIsNamed(String text) {
        assertThat(refusal(text).kind()).isEqualTo(DriftProblem.NO_COLUMN);
    }

    @Test
    void headerAloneAndDoubledColumnAreRefused() {
        assertThat(refusal("time_utc,lon_deg\n").kind()).isEqualTo(DriftProblem.NO_MARKS);
        assertThat(refusal("time_utc,lon_deg,LON_DEG\n2024-12-07T20:58:00Z,1,2\n").kind()).isEqualTo(DriftProblem.TWICE);
    }

    @Test
    void openQuoteDoesNotFillTheMemory() {
        Reader endless = new Reader() {
            private long sent;

            @Override
            public int read(char[] buffer, int offset, int length) {
                String head = "time_utc,lon_deg\n\"";
                for (int i = 0; i < length; i++) {
                    buffer[offset + i] = sent < head.length() ? head.charAt((int) sent) : sent % 80 == 0 ? '\n' : 'x';
                    sent++;
                }
                return length;
            }

            @Override
            public void close() {}
        };
        ProblemException e = catchThrowableOfType(
                ProblemException.class, () -> MarkFile.read(endless, "endless.csv", JUPITER, system(JUPITER, "2")));
        assertThat(e.kind()).isEqualTo(DriftProblem.NOT_A_TABLE);
        assertThat(e).hasMessageContaining("is a quote left open?");
    }

    @Test
    void bytesThatAreNoTextAreRefused(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("marks.csv");
        Files.write(file, new byte[] {'t', 'i', 'm', 'e', (byte) 0xFF, (byte) 0xFE, 0, 1, '\n'});
        ProblemException e = catchThrowableOfType(ProblemException.class, () -> MarkFile.read(file, JUPITER, "2"));
        assertThat(e.kind()).isEqualTo(DriftProblem.NOT_A_TABLE);
    }

    @Test
    void strayTextAfterAQuoteIsRefused() {
        assertThat(refusal("time_utc,lon_deg\n\"2024-12-07T20:58:00Z\"x,1\n").kind()).isEqualTo(DriftProblem.NOT_A_TABLE);
    }

    @Test
    void missingFileIsNamed(@TempDir Path folder) {
        ProblemException e = catchThrowableOfType(
                ProblemException.class, () -> MarkFile.read(folder.resolve("none.csv"), JUPITER, "2"));
        assertThat(e.kind()).isEqualTo(DriftProblem.CANNOT_READ);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2", "II", "ii", "System II", "system 2", " sys2 "})
    void systemsAreKnownByTheirNames(String word) {
        assertThat(SystemNames.named(JUPITER, word)).isEqualTo(system(JUPITER, "2"));
    }

    @Test
    void unknownSystemIsRefusedWithTheList() {
        ProblemException e = catchThrowableOfType(ProblemException.class, () -> SystemNames.named(JUPITER, "4"));
        assertThat(e.kind()).isEqualTo(DriftProblem.UNKNOWN_SYSTEM);
        assertThat(e).hasMessageContaining("1 (System I), 2 (System II), 3 (System III)");
        assertThat(SystemNames.named(JUPITER, "iau")).isEqualTo(system(JUPITER, "3"));
        assertThat(SystemNames.named(URANUS, "IAU")).isEqualTo(system(URANUS, "iau"));
    }

    @Test
    void hundredThousandRowsAreRead(@TempDir Path folder) throws IOException {
        StringBuilder text = new StringBuilder("feature,time_utc,lon_deg,lat_deg,sigma_deg\n");
        Instant start = Instant.parse("2024-01-01T00:00:00Z");
        for (int i = 0; i < 100_000; i++) {
            text.append("F").append(i % 50).append(',').append(start.plusSeconds(i * 60L)).append(',').append(i % 360).append(",1.5,0.5\n");
        }
        Path file = folder.resolve("many.csv");
        Files.writeString(file, text, StandardCharsets.UTF_8);
        MarkTable table = MarkFile.read(file, JUPITER, "II");
        assertThat(table.series()).hasSize(50).allMatch(s -> s.points().size() == 2000);
    }
}
