/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Calls in a Java source, found by their first words and read up to the closing bracket. Knows strings and brackets, nothing else of the language.
 *
 * @param words what the call begins with, up to its opening bracket
 * @param arguments as written, one for each comma of the call itself
 */
record SourceCalls(String words, List<String> arguments) {
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

    /**
     * All calls in a source.
     *
     * @param opening of the calls sought, without the bracket
     */
    static List<SourceCalls> in(String source, Pattern opening) {
        List<SourceCalls> calls = new ArrayList<>();
        Matcher found = Pattern.compile(
                        "(?<![\\w.])(" + opening.pattern() + ")\\s*\\(|\\.(" + opening.pattern() + ")\\s*\\(")
                .matcher(source);
        int from = 0;
        while (found.find(from)) {
            String words = found.group(1) == null ? found.group(2) : found.group(1);
            calls.add(new SourceCalls(words.replaceAll("\\s", ""), arguments(source, found.end())));
            from = found.end();
        }
        return calls;
    }

    private static List<String> arguments(String source, int from) {
        List<String> all = new ArrayList<>();
        StringBuilder now = new StringBuilder();
        int depth = 0;
        int at = from;
        while (at < source.length()) {
            char c = source.charAt(at);
            if (c == '"' || c == '\'') {
                int end = endOfLiteral(source, at);
                now.append(source, at, end);
                at = end;
                continue;
            }
            if (depth == 0 && (c == ',' || c == ')')) {
                all.add(now.toString().strip());
                now.setLength(0);
                if (c == ')') {
                    break;
                }
            } else {
                depth += "([{".indexOf(c) >= 0 ? 1 : ")]}".indexOf(c) >= 0 ? -1 : 0;
                now.append(c);
            }
            at++;
        }
        return List.copyOf(all);
    }

    private static int endOfLiteral(String source, int from) {
        int at = from + 1;
        while (source.charAt(at) != source.charAt(from)) {
            at += source.charAt(at) == '\\' ? 2 : 1;
        }
        return at + 1;
    }

    /** The string literals in a piece of source, without their quotes. */
    static List<String> literals(String source) {
        return LITERAL.matcher(source)
                .results()
                .map((MatchResult r) -> r.group(1))
                .toList();
    }
}
