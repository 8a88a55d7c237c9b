/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import oblate.workbench.words.Texts;

/** What an edit was, in words. */
final class EditWords {
    private static final Texts TEXTS = Texts.of(EditWords.class);

    private EditWords() {}

    static String of(Edit edit) {
        if (edit instanceof Edit.MarkAdded) {
            return TEXTS.text("edit.what.marking");
        }
        if (edit instanceof Edit.MarkReplaced e) {
            return TEXTS.word("edit.what.mark", e.change());
        }
        if (edit instanceof Edit.MarkWithdrawn) {
            return TEXTS.text("edit.what.mark.withdrawn");
        }
        if (edit instanceof Edit.FitKept e) {
            return TEXTS.word("edit.what.fit", e.origin());
        }
        if (edit instanceof Edit.FitWithdrawn) {
            return TEXTS.text("edit.what.fit.withdrawn");
        }
        if (edit instanceof Edit.StatesSeen e) {
            boolean back = e.changes().stream().allMatch(c -> c.after().isOpen());
            return TEXTS.text(back ? "edit.what.state.back" : "edit.what.state");
        }
        if (edit instanceof Edit.FactsCorrected e) {
            String all = TEXTS.text("edit.what.corrected", e.words());
            return e.weight() == e.of() ? all : TEXTS.text("edit.what.part", all, Integer.toString(e.weight()));
        }
        return TEXTS.text("edit.what.settled");
    }
}
