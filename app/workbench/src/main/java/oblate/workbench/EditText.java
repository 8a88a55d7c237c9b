/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import oblate.archive.SeenState;

/**
 * Edits as named words, for the journal's file. Of an edit of several pictures each picture's words begin with its number in the list and a blank.
 */
final class EditText {
    private static final Map<Edit.Origin, String> ORIGINS = Map.of(
            Edit.Origin.FITTED, "fit", Edit.Origin.BY_HAND, "outline by hand", Edit.Origin.ACCEPTED, "fit accepted");

    private EditText() {}

    static Map<String, String> write(Edit edit) {
        Map<String, String> parts = new LinkedHashMap<>();
        if (edit instanceof Edit.MarkAdded e) {
            mark(parts, "mark added", e.pictureId(), e.markId());
        } else if (edit instanceof Edit.MarkReplaced e) {
            mark(parts, "mark " + e.change().name().toLowerCase(Locale.ROOT), e.pictureId(), e.newId());
            parts.put("before", Long.toString(e.oldId()));
        } else if (edit instanceof Edit.MarkWithdrawn e) {
            mark(parts, "mark withdrawn", e.pictureId(), e.markId());
        } else if (edit instanceof Edit.FitKept e) {
            parts.put("edit", ORIGINS.get(e.origin()));
            parts.put("picture", Long.toString(e.pictureId()));
            parts.put("fit", Long.toString(e.fitId()));
            e.before().ifPresent(b -> parts.put("before", Long.toString(b)));
        } else if (edit instanceof Edit.FitWithdrawn e) {
            parts.put("edit", "fit withdrawn");
            parts.put("picture", Long.toString(e.pictureId()));
            parts.put("fit", Long.toString(e.fitId()));
        } else if (edit instanceof Edit.FactsCorrected e) {
            parts.put("edit", "facts corrected");
            parts.put("words", e.words());
            if (e.of() != e.weight()) {
                parts.put("of", Integer.toString(e.of()));
            }
            for (int i = 0; i < e.changes().size(); i++) {
                Edit.FactsChange change = e.changes().get(i);
                parts.put(i + " picture", Long.toString(change.pictureId()));
                FactsText.write(i + " was ", change.before(), parts);
                FactsText.write(i + " now ", change.after(), parts);
                sentences(parts, i, change.conflicts());
            }
        } else if (edit instanceof Edit.TimesSettled e) {
            parts.put("edit", "times settled");
            parts.put("words", e.reason());
            for (int i = 0; i < e.settled().size(); i++) {
                parts.put(i + " picture", Long.toString(e.settled().get(i).pictureId()));
                sentences(parts, i, e.settled().get(i).conflicts());
            }
        } else if (edit instanceof Edit.StatesSeen e) {
            parts.put("edit", "states seen");
            for (int i = 0; i < e.changes().size(); i++) {
                Edit.StateChange change = e.changes().get(i);
                state(parts, i + " now ", change.after());
                int at = i;
                change.before().ifPresent(b -> state(parts, at + " was ", b));
            }
        }
        return parts;
    }

    private static void state(Map<String, String> parts, String lead, SeenState state) {
        parts.put(lead + "picture", Long.toString(state.pictureId().orElseThrow()));
        parts.put(lead + "planet", state.planetId());
        parts.put(lead + "moon", state.moonId());
        parts.put(lead + "phenomenon", state.phenomenon());
        parts.put(lead + "state", state.state());
        parts.put(lead + "by", state.seenBy());
    }

    private static SeenState state(Map<String, String> parts, String lead) {
        return SeenState.in(
                number(parts, lead + "picture"),
                parts.getOrDefault(lead + "planet", ""),
                parts.getOrDefault(lead + "moon", ""),
                parts.getOrDefault(lead + "phenomenon", ""),
                parts.getOrDefault(lead + "state", ""),
                parts.getOrDefault(lead + "by", ""));
    }

    private static void mark(Map<String, String> parts, String kind, long picture, long mark) {
        parts.put("edit", kind);
        parts.put("picture", Long.toString(picture));
        parts.put("mark", Long.toString(mark));
    }

    private static void sentences(Map<String, String> parts, int picture, List<String> sentences) {
        for (int i = 0; i < sentences.size(); i++) {
            parts.put(picture + " conflict " + i, sentences.get(i));
        }
    }

    /**
     * @throws IllegalArgumentException when this is no edit
     */
    static Edit read(Map<String, String> parts) {
        String kind = parts.getOrDefault("edit", "");
        return switch (kind) {
            case "mark added" -> new Edit.MarkAdded(number(parts, "picture"), number(parts, "mark"));
            case "mark named" -> replaced(parts, Edit.Change.NAMED);
            case "mark moved" -> replaced(parts, Edit.Change.MOVED);
            case "mark withdrawn" -> new Edit.MarkWithdrawn(number(parts, "picture"), number(parts, "mark"));
            case "fit" -> fit(parts, Edit.Origin.FITTED);
            case "outline by hand" -> fit(parts, Edit.Origin.BY_HAND);
            case "fit accepted" -> fit(parts, Edit.Origin.ACCEPTED);
            case "fit withdrawn" -> new Edit.FitWithdrawn(number(parts, "picture"), number(parts, "fit"));
            case "facts corrected" -> {
                List<Edit.FactsChange> changes = new ArrayList<>();
                for (int i = 0; parts.containsKey(i + " picture"); i++) {
                    changes.add(new Edit.FactsChange(
                            number(parts, i + " picture"),
                            FactsText.read(i + " was ", parts),
                            FactsText.read(i + " now ", parts),
                            sentences(parts, i)));
                }
                String words = parts.getOrDefault("words", "");
                yield parts.containsKey("of")
                        ? new Edit.FactsCorrected(changes, words, (int) number(parts, "of"))
                        : new Edit.FactsCorrected(changes, words);
            }
            case "times settled" -> {
                List<Edit.Disagreement> settled = new ArrayList<>();
                for (int i = 0; parts.containsKey(i + " picture"); i++) {
                    settled.add(new Edit.Disagreement(number(parts, i + " picture"), sentences(parts, i)));
                }
                yield new Edit.TimesSettled(settled, parts.getOrDefault("words", ""));
            }
            case "states seen" -> {
                List<Edit.StateChange> changes = new ArrayList<>();
                for (int i = 0; parts.containsKey(i + " now picture"); i++) {
                    Optional<SeenState> before = parts.containsKey(i + " was picture")
                            ? Optional.of(state(parts, i + " was "))
                            : Optional.empty();
                    changes.add(new Edit.StateChange(before, state(parts, i + " now ")));
                }
                yield new Edit.StatesSeen(changes);
            }
            default -> throw new IllegalArgumentException("an edit of the kind \"" + kind + "\"");
        };
    }

    private static Edit replaced(Map<String, String> parts, Edit.Change change) {
        return new Edit.MarkReplaced(number(parts, "picture"), number(parts, "before"), number(parts, "mark"), change);
    }

    private static Edit fit(Map<String, String> parts, Edit.Origin origin) {
        Optional<Long> before = parts.containsKey("before") ? Optional.of(number(parts, "before")) : Optional.empty();
        return new Edit.FitKept(number(parts, "picture"), before, number(parts, "fit"), origin);
    }

    private static List<String> sentences(Map<String, String> parts, int picture) {
        List<String> sentences = new ArrayList<>();
        while (parts.containsKey(picture + " conflict " + sentences.size())) {
            sentences.add(parts.get(picture + " conflict " + sentences.size()));
        }
        return sentences;
    }

    private static long number(Map<String, String> parts, String name) {
        return Long.parseLong(parts.getOrDefault(name, ""));
    }
}
