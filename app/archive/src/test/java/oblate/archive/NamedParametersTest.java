/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.ColonPrefixSqlParser;
import org.jdbi.v3.core.statement.ParsedSql;
import org.jdbi.v3.core.statement.SqlParser;
import org.junit.jupiter.api.Test;

/** Named parameters are found where they are, and where the library's own parser finds them. */
class NamedParametersTest {
    private static final Pattern TEXT_BLOCK = Pattern.compile("\"\"\"\n(.*?)\"\"\"", Pattern.DOTALL);
    private final Jdbi jdbi = Jdbi.create("jdbc:sqlite::memory:");

    @Test
    void aNameIsReplacedAndKept() {
        ParsedSql parsed = parsed("select * from picture where id = :id and night >= :first_night2");
        assertThat(parsed.getSql()).isEqualTo("select * from picture where id = ? and night >= ?");
        assertThat(parsed.getParameters().getParameterNames()).containsExactly("id", "first_night2");
    }

    @Test
    void aNameMayComeTwiceAndStandAtTheEnd() {
        ParsedSql parsed = parsed("select :a,:a||:b");
        assertThat(parsed.getSql()).isEqualTo("select ?,?||?");
        assertThat(parsed.getParameters().getParameterNames()).containsExactly("a", "a", "b");
    }

    @Test
    void literalsQuotedNamesCommentsAndCastsAreLeftAlone() {
        String sql = "select 'a :b ''c :d''', \"e:f\", g::text -- :h 'i\n from j";
        assertThat(parsed(sql).getSql()).isEqualTo(sql);
        assertThat(parsed(sql).getParameters().getParameterNames()).isEmpty();
        assertThat(parsed("select 'a' || :b -- c :d").getSql()).isEqualTo("select 'a' || ? -- c :d");
        assertThat(parsed("select :").getSql()).isEqualTo("select :");
        assertThat(parsed("select 'never closed :a").getSql()).isEqualTo("select 'never closed :a");
    }

    @Test
    void everyStatementOfTheArchiveIsReadAsTheLibraryReadsIt() throws IOException {
        List<String> statements = statements();
        assertThat(statements).as("statements looked at").hasSizeGreaterThan(30);
        for (String sql : statements) {
            ParsedSql theirs = parsed(new ColonPrefixSqlParser(), sql);
            assertThat(parsed(sql).getSql()).isEqualTo(theirs.getSql());
            assertThat(parsed(sql).getParameters().getParameterNames())
                    .isEqualTo(theirs.getParameters().getParameterNames());
        }
    }

    private static List<String> statements() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("src/main/java/oblate/archive"))) {
            return files.filter(f -> f.toString().endsWith(".java"))
                    .flatMap(NamedParametersTest::blocks)
                    .filter(text -> text.contains("select") || text.contains("insert") || text.contains("update"))
                    .toList();
        }
    }

    private static Stream<String> blocks(Path file) {
        try {
            return TEXT_BLOCK
                    .matcher(Files.readString(file))
                    .results()
                    .map((MatchResult r) -> r.group(1))
                    .toList()
                    .stream();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private ParsedSql parsed(String sql) {
        return parsed(new NamedParameters(), sql);
    }

    private ParsedSql parsed(SqlParser parser, String sql) {
        return jdbi.withHandle(
                handle -> parser.parse(sql, handle.createQuery("select 1").getContext()));
    }
}
