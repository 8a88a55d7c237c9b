/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import oblate.base.ProblemKind;

/** What can be wrong with what is said about a moon. */
public enum TimingProblem implements ProblemKind {
    NO_SUCH_MOON("{0}: \"{1}\" is no moon of {2} that is followed here (known: {3}); correct it"),
    NO_SUCH_PHENOMENON(
            "{0}: \"{1}\" is no phenomenon (known: transit, shadow_transit, occultation, eclipse); correct it"),
    NO_SUCH_STATE("{0}: \"{1}\" is no state of {2} (known: {3}); correct it"),
    NO_TIME("{0}: has neither a picture nor a time_utc; give one of them"),
    UNDATED("{0}: picture {1} has no time; file it again with --time");

    private final String template;

    TimingProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
