package oblate.sample;

import oblate.base.ProblemKind;

/** What can go wrong while making or reading a sample season. */
public enum SampleProblem implements ProblemKind {
    CANNOT_WRITE("{0}: cannot be written ({1}); choose a folder you may write to with some 40 MB free"),
    FOLDER_NOT_EMPTY("{0}: is not empty, and a sample season needs a folder of its own; name a new or empty one"),
    CANNOT_READ("{0}: cannot be read as part of a sample season ({1}); write the season again"),
    CANCELLED("{0}: the sample season was stopped after {1} of {2} pictures and what was written has been removed; start it again when you like");

    private final String template;

    SampleProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
