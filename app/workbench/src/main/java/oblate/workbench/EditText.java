/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Edits as named words, for the journal's file. */
final class EditText {
    private EditText() {}

    static Map<String, String> write(Edit edit) {
        Map<String, String> parts = new LinkedHashMap<>();
        if (edit instanceof Edit.MarkAdded e) {
            parts.put("edit", "mark added");
            parts.put("mark", Long.toString(e.markId()));
        } else if (edit instanceof Edit.MarkReplaced e) {
            parts.put("edit", e.change() == Edit.Change.NAMED ? "mark named" : "mark moved");
            parts.put("before", Long.toString(e.oldId()));
            parts.put("mark", Long.toString(e.newId()));
        } else if (edit instanceof Edit.MarkWithdrawn e) {
            parts.put("edit", "mark withdrawn");
            parts.put("mark", Long.toString(e.markId()));
        } else if (edit instanceof Edit.FitKept e) {
            parts.put("edit", e.byHand() ? "outline by hand" : "fit");
            e.before().ifPresent(b -> parts.put("before", Long.toString(b)));
            parts.put("fit", Long.toString(e.fitId()));
        } else if (edit instanceof Edit.FactsCorrected e) {
            parts.put("edit", "facts corrected");
            FactsText.write("was ", e.before(), parts);
            FactsText.write("now ", e.after(), parts);
        }
        parts.put("picture", Long.toString(edit.pictureId()));
        return parts;
    }

    /**
     * @throws IllegalArgumentException when this is no edit
     */
    static Edit read(Map<String, String> parts) {
        long picture = number(parts, "picture");
        String kind = parts.getOrDefault("edit", "");
        return switch (kind) {
            case "mark added" -> new Edit.MarkAdded(picture, number(parts, "mark"));
            case "mark named" ->
                new Edit.MarkReplaced(picture, number(parts, "before"), number(parts, "mark"), Edit.Change.NAMED);
            case "mark moved" ->
                new Edit.MarkReplaced(picture, number(parts, "before"), number(parts, "mark"), Edit.Change.MOVED);
            case "mark withdrawn" -> new Edit.MarkWithdrawn(picture, number(parts, "mark"));
            case "fit", "outline by hand" ->
                new Edit.FitKept(
                        picture,
                        parts.containsKey("before") ? Optional.of(number(parts, "before")) : Optional.empty(),
                        number(parts, "fit"),
                        kind.equals("outline by hand"));
            case "facts corrected" ->
                new Edit.FactsCorrected(picture, FactsText.read("was ", parts), FactsText.read("now ", parts));
            default -> throw new IllegalArgumentException("an edit of the kind \"" + kind + "\"");
        };
    }

    private static long number(Map<String, String> parts, String name) {
        return Long.parseLong(parts.getOrDefault(name, ""));
    }
}
