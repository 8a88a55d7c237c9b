/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import oblate.base.ProblemKind;

/** What can be wrong with a series of longitudes. */
public enum DriftProblem implements ProblemKind {
    TOO_FEW("feature {0}: has {1} usable marks, a drift needs at least 2 at different times; measure more pictures"),
    ONE_TIME("feature {0}: all marks are of one time, {1}; measure pictures of other nights"),
    UNKNOWN_SYSTEM("system \"{0}\": {1} has no such system (it has {2}); choose one of these"),
    NO_COLUMN("{0}: has no column \"{1}\"; the first line must name the columns: {2}"),
    BAD_VALUE("{0}, row {1}: \"{2}\" in column {3} is no {4}; correct it{5}"),
    NO_MARKS("{0}: has no rows below the column names; put one mark on each line"),
    TWICE("{0}: has the column \"{1}\" twice; take one of them out"),
    NOT_A_TABLE("{0}: is no table of comma-separated values in UTF-8 ({1}); save it as such"),
    NO_REASON("{0}, row {1}: settles a mark without a reason; write why in column reason"),
    NO_SUCH_ROW("{0}, row {1}: \"{2}\" is no row of the marks; correct it"),
    SETTLED_TWICE("{0}, row {1}: settles mark {2} a second time; leave one of them"),
    TOO_MANY_TO_LINK(
            "{0} marks are too many to be linked at once (at most {1}); split them where the planet was near the Sun"),
    CANNOT_READ("{0}: cannot be read ({1}); check the name and the permissions");

    private final String template;

    DriftProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
