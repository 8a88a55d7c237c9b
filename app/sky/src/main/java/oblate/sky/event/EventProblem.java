/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import oblate.base.ProblemKind;

/** What can be wrong with a search for events, each as one sentence. */
public enum EventProblem implements ProblemKind {
    /** Ends before it begins. */
    REVERSED("the span from {0} to {1} ends before it begins; give the earlier time first"),
    /** Longer than anyone can mean. */
    TOO_LONG("the span from {0} to {1} is longer than {2} years; choose a shorter one"),
    /** Reaches outside the dates for which the moons' places are known. */
    OUTSIDE_SPAN(
            "{0}: events from {1} to {2} cannot be told, its moons are followed from {3} to {4} only; stay in that span"),
    /** No such moon. */
    NO_SUCH_MOON("{0} has no moon \"{1}\" here; known: {2}");

    private final String template;

    EventProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
