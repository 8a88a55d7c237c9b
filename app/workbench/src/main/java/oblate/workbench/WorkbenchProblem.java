/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import oblate.base.ProblemKind;

/** What can be wrong with opening or using the window. */
public enum WorkbenchProblem implements ProblemKind {
    NO_SCREEN(
            "The window: there is no screen to open it on; use the command line (oblate help), or run it where a display is set"),
    NOT_SAVED("{0}: could not be written ({1}); choose another place"),
    JOURNAL_NOT_KEPT(
            "What was done is kept, but its undo only until the window is closed: the list of edits could not be written ({1}); free some space. File: {0}");

    private final String template;

    WorkbenchProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
