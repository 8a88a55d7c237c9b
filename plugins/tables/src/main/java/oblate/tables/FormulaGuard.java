/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import java.util.regex.Pattern;

/** Keeps spreadsheets from running a text as a formula, reversibly: an apostrophe more in front of one, apostrophes already there counted in. */
final class FormulaGuard {
    private static final Pattern RISKY = Pattern.compile("'*[=+\\-@\\t\\r\\n].*", Pattern.DOTALL);

    private FormulaGuard() {}

    static String put(String text) {
        return RISKY.matcher(text).matches() ? "'" + text : text;
    }

    static String take(String text) {
        return text.startsWith("'") && RISKY.matcher(text).matches() ? text.substring(1) : text;
    }
}
