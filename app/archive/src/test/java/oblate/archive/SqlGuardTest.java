/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** No statement is put together from strings: every one is a constant text, and values come in as parameters. */
class SqlGuardTest {
    private static final Path SOURCES = Path.of("src/main/java/oblate/archive");

    private static final Pattern LITERAL =
            Pattern.compile("\"\"\".*?\"\"\"|\"(?:[^\"\\\\\\n]|\\\\.)*\"", Pattern.DOTALL);
    private static final Pattern STATEMENT = Pattern.compile(
            "^[\\s(\"]*(select|insert\\s+into|update|delete\\s+from|with|create|drop|alter|pragma|vacuum)\\s",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern GLUED = Pattern.compile("^\\s*(\\+|\\.formatted\\b|\\.concat\\b|\\.replace)");
    private static final Pattern FORMATTED = Pattern.compile("(\\+|String\\.format\\([^\"]{0,40})\\s*$");
    private static final Pattern CALL = Pattern.compile(
            "\\.(?:createQuery|createUpdate|createScript|prepareBatch|createCall|execute|select)\\(\\s*([^\\s,)]+)");
    private static final Pattern CONSTANT = Pattern.compile(
            "\".*|[A-Z][A-Z_]+|sql|rule\\.sql\\(|condition\\.sql\\(SELECT|dialect\\.[a-zA-Z]+\\(", Pattern.DOTALL);

    @Test
    void noStatementIsGlued() throws IOException {
        List<String> bad = new ArrayList<>();
        int statements = 0;
        for (Path file : sources()) {
            String source = Files.readString(file);
            statements += statements(source);
            glued(source).forEach(text -> bad.add(file.getFileName() + ": " + text));
        }
        assertThat(bad).isEmpty();
        assertThat(statements).as("statements looked at").isGreaterThan(40);
    }

    @Test
    void everyStatementRunIsAConstant() throws IOException {
        List<String> bad = new ArrayList<>();
        int calls = 0;
        for (Path file : sources()) {
            Matcher call = CALL.matcher(Files.readString(file));
            while (call.find()) {
                calls++;
                if (!CONSTANT.matcher(call.group(1)).matches()) {
                    bad.add(file.getFileName() + ": " + call.group());
                }
            }
        }
        assertThat(bad).isEmpty();
        assertThat(calls).as("calls looked at").isGreaterThan(40);
    }

    @Test
    void theGuardSeesWhatItShouldSee() {
        assertThat(glued("q(\"select * from picture where id = \" + id)")).hasSize(1);
        assertThat(glued("q(\"\"\"\n  select 1\n  \"\"\" + tail)")).hasSize(1);
        assertThat(glued("q(head + \"delete from mark\")")).hasSize(1);
        assertThat(glued("String.format(\"update %s set x = 1\", table)")).hasSize(1);
        assertThat(glued("\"insert into %s values (1)\".formatted(table)")).hasSize(1);
        assertThat(glued("q(\"select 1 from picture where id = :id\").bind(\"id\", a + b)"))
                .isEmpty();
        assertThat(glued("say(\"selected \" + n)")).isEmpty();
    }

    private static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            return files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
        }
    }

    private static int statements(String source) {
        return (int) LITERAL.matcher(source)
                .results()
                .filter(r -> STATEMENT.matcher(r.group()).find())
                .count();
    }

    private static List<String> glued(String source) {
        List<String> found = new ArrayList<>();
        Matcher literal = LITERAL.matcher(source);
        while (literal.find()) {
            if (!STATEMENT.matcher(literal.group()).find()) {
                continue;
            }
            boolean after = GLUED.matcher(source.substring(literal.end())).find();
            boolean before = FORMATTED
                    .matcher(source.substring(Math.max(0, literal.start() - 60), literal.start()))
                    .find();
            if (after || before) {
                found.add(literal.group());
            }
        }
        return found;
    }
}
