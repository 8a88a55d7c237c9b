/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import oblate.base.ProblemKind;

/** What can be wrong with a table that is read back. */
public enum TablesProblem implements ProblemKind {
    NOT_A_TABLE("{0}: is no table as this program writes it ({1}); write it again"),
    NO_COLUMN("{0}: has no column \"{1}\"; write the table again with this version"),
    BAD_VALUE("{0}, row {1}: \"{2}\" in column {3} is no {4}; correct it");

    private final String template;

    TablesProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
