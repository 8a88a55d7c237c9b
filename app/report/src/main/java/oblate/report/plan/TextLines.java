/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.plan;

/** Lines of plain text, no wider than a screen. */
final class TextLines {
    private static final int WIDTH = 96;
    private static final char HARD_SPACE = '\u00a0';
    private static final String HEAD = "  %-10s %s%n";
    private final StringBuilder out = new StringBuilder();

    /** Words that are not parted at a line's end. */
    static String together(String words) {
        return words.replace(' ', HARD_SPACE);
    }

    void blank() {
        out.append(System.lineSeparator());
    }

    /** A name and what is said of it. */
    void item(String name, String said) {
        out.append(PlanWords.of(HEAD, name, said));
    }

    void line(String template, Object... parts) {
        out.append(PlanWords.of(template, parts).stripTrailing()).append(System.lineSeparator());
    }

    /** Words within the width, lines that go on set in as far as the first. */
    void wrapped(String lead, String said) {
        StringBuilder line = new StringBuilder(lead);
        String in = " ".repeat(lead.length());
        boolean fresh = true;
        for (String word : said.split(" ", -1)) {
            if (!fresh && line.length() + 1 + word.length() > WIDTH) {
                out.append(line.toString().replace(HARD_SPACE, ' ').stripTrailing())
                        .append(System.lineSeparator());
                line = new StringBuilder(in);
                fresh = true;
            }
            line.append(fresh ? "" : " ").append(word);
            fresh = false;
        }
        out.append(line.toString().replace(HARD_SPACE, ' ').stripTrailing()).append(System.lineSeparator());
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
