package oblate.drift;

import oblate.base.ProblemKind;

/** What can be wrong with a series of longitudes. */
public enum DriftProblem implements ProblemKind {
    TOO_FEW("feature \"{0}\": has {1} usable marks, a drift needs at least 2 at different times; measure more pictures"),
    ONE_TIME("feature \"{0}\": all marks are of one time, {1}; measure pictures of other nights"),
    UNKNOWN_SYSTEM("system \"{0}\": {1} has no such system (it has {2}); choose one of these"),
    NO_COLUMN("{0}: has no column \"{1}\"; the first line must name the columns: {2}"),
    BAD_VALUE("{0}, row {1}: \"{2}\" in column {3} is no {4}; correct it");

    private final String template;

    DriftProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
