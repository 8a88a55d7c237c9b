/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import org.jdbi.v3.core.statement.ParsedSql;
import org.jdbi.v3.core.statement.SqlParser;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * Finds the named parameters of a statement, {@code :name}. Literals, quoted names, comments to the end of the line and casts ({@code ::}) are left
 * alone; block comments and positional parameters do not occur in the archive's statements and are not known here.
 *
 * <p>The library's own parser knows more, but making its grammar ready takes longer than opening a catalog.
 */
final class NamedParameters implements SqlParser {
    @Override
    public ParsedSql parse(String sql, StatementContext ctx) {
        ParsedSql.Builder parsed = ParsedSql.builder();
        int copied = 0;
        int at = 0;
        while (at < sql.length()) {
            int end = skipped(sql, at);
            if (end > at) {
                at = end;
            } else if (sql.charAt(at) == ':' && at + 1 < sql.length() && isFirst(sql.charAt(at + 1))) {
                int after = at + 1;
                while (after < sql.length() && isInside(sql.charAt(after))) {
                    after++;
                }
                parsed.append(sql.substring(copied, at)).appendNamedParameter(sql.substring(at + 1, after));
                at = after;
                copied = after;
            } else {
                at++;
            }
        }
        return parsed.append(sql.substring(copied)).build();
    }

    @Override
    public String nameParameter(String rawName, StatementContext ctx) {
        return ":" + rawName;
    }

    /** End of what is not looked into, when such a thing begins here; else the same place. */
    private static int skipped(String sql, int at) {
        return switch (sql.charAt(at)) {
            case '\'' -> after(sql, "'", at + 1);
            case '"' -> after(sql, "\"", at + 1);
            case '-' -> sql.startsWith("--", at) ? after(sql, "\n", at) : at;
            case ':' -> sql.startsWith("::", at) ? at + 2 : at;
            default -> at;
        };
    }

    private static int after(String sql, String ending, int from) {
        int end = sql.indexOf(ending, from);
        return end < 0 ? sql.length() : end + 1;
    }

    private static boolean isFirst(char c) {
        return Character.isLetter(c) || c == '_';
    }

    private static boolean isInside(char c) {
        return isFirst(c) || Character.isDigit(c);
    }
}
