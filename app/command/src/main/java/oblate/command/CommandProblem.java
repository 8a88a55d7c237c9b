/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import oblate.base.ProblemKind;

/** What can be wrong with what a command was given. */
public enum CommandProblem implements ProblemKind {
    CANNOT_WRITE("{0}: cannot be written ({1}); choose another place"),
    CANNOT_READ("{0}: cannot be read ({1}); check the path"),
    BAD_CSV("{0}, row {1}: {2}; correct it"),
    BAD_STATE("{0}: {1}; correct it"),
    NO_PLANET("{0}: which planet is in it is not said; add --planet NAME"),
    NO_TIME("{0}: {1}"),
    NO_FIT("{0}: has no disc fit; run: oblate fit"),
    NOT_FITTED("{0}: {1}"),
    OFF_DISC(
            "{0}: the point {1}, {2} is not on the disc, or too near its edge to be measured; choose a point nearer the middle");

    private final String template;

    CommandProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
