package oblate.archive;

import oblate.base.ProblemKind;

/** What can be wrong with an archive or what is asked of it. */
public enum ArchiveProblem implements ProblemKind {
    NOT_AN_ARCHIVE("{0}: is no archive (there is no catalog.db in it); name an archive's folder, or make one with: oblate file … --archive DIR --new"),
    FOLDER_NOT_EMPTY("{0}: is a folder with other things in it; name an empty or a new folder for a new archive"),
    NEWER_CATALOG("{0}: its catalog has version {1}, this program knows up to {2}; use a newer Oblate"),
    BROKEN_CATALOG("{0}: the catalog cannot be read ({1}); restore the newest file in backups/ or run: oblate check --repair"),
    BUSY("{0}: the catalog is in use by another program ({1}); close that one or try again"),
    NO_SUCH_PICTURE("{0}: there is no such picture in the archive; list them with: oblate pictures"),
    AMBIGUOUS_PICTURE("{0}: means {1} pictures in the archive; give the number instead"),
    NO_SUCH_MARK("mark {0}: there is no such current mark; list them with: oblate marks"),
    NO_SUCH_SITE("site \"{0}\": the archive has no such site; add it with: oblate site add"),
    FEATURE_EXISTS("feature \"{0}\": the planet already has one of this name; use that or choose another name"),
    CANNOT_WRITE("{0}: cannot be written ({1}); check free space and permissions");

    private final String template;

    ArchiveProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
