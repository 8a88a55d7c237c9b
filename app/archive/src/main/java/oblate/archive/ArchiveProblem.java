/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import oblate.base.ProblemKind;

/** What can be wrong with an archive or what is asked of it. */
public enum ArchiveProblem implements ProblemKind {
    NOT_AN_ARCHIVE(
            "{0}: is no archive (there is no catalog.db in it); name an archive's folder, or an empty one for oblate file to make one in"),
    FOLDER_NOT_EMPTY("{0}: is a folder with other things in it; name an empty or a new folder for a new archive"),
    NEWER_CATALOG("{0}: its catalog has version {1}, this program knows up to {2}; use a newer Oblate"),
    BROKEN_CATALOG(
            "{0}: the catalog cannot be read ({1}); set it aside with its -wal file, put the newest file of backups/ in its place, and run: oblate check --repair"),
    BUSY("{0}: the catalog is in use by another program ({1}); close that one or try again"),
    FILING_BUSY("{0}: another program is filing into this archive; wait until it is done or close it"),
    GROUP_UNREACHABLE(
            "{0}: the group's catalog cannot be opened ({1}); check the network, the address, name and password"),
    NOT_FOR_GROUP(
            "{0}: is a group's catalog, which this does not cover; use the database's own backup and copy the pictures' folder"),
    NO_SUCH_PICTURE("{0}: there is no such picture in the archive; list them with: oblate pictures"),
    AMBIGUOUS_PICTURE("{0}: means {1} pictures in the archive; give the number instead"),
    UNDATED_PICTURE(
            "picture {0}: has no time, and what is measured or seen on it needs one; file it again with --time"),
    OTHER_PLANET(
            "picture {0}: is of {1}, not of {2}; name the right picture, or correct its planet with: oblate correct"),
    NO_MERIDIAN("picture {0}: has no central meridian, since its planet is not known; file it again with --planet"),
    NO_SUCH_MARK("mark {0}: there is no such current mark; list them with: oblate marks"),
    NO_SUCH_FIT("fit {0}: picture {1} has no such disc fit; fit it first with: oblate fit"),
    NO_FIT_TO_WITHDRAW("fit {0}: there is no such disc fit in use; list a picture's fits with: oblate history"),
    NO_SUCH_FEATURE("feature {0}: the planet of picture {1} has no such feature; add it first"),
    NO_SUCH_SITE("site \"{0}\": the archive has no such site; add it with: oblate site add"),
    NO_SUCH_PLANET("planet \"{0}\": no planet of this name is known; known are {1}"),
    FEATURE_EXISTS("feature \"{0}\": the planet already has one of this name; use that or choose another name"),
    ARCHIVE_GONE("{0}: the archive is no longer there; put its folder or disk back, or open it where it is now"),
    CANNOT_COPY("{0}: could not be copied into {1} ({2}); free some space or check permissions, then file it again"),
    CANNOT_WRITE("{0}: cannot be written ({1}); check free space and permissions"),
    AGAINST_RULES("{0}: does not take this ({1}); correct the values"),
    CANNOT_READ("{0}: cannot be read ({1}); check the path and permissions"),
    FILE_EXISTS("{0}: is there already and is not overwritten; choose another name"),
    CHANGED_MEANWHILE("{0}: changed while it was being read; file it again when the other program is done with it"),
    COPY_DIFFERS(
            "{0}: the copy in the archive does not have the same bytes as the original; check the disk and file it again"),
    OUTSIDE_EPHEMERIS(
            "{0}: its time {1} lies outside what planet positions are known for ({2} to {3}); correct it with --time"),
    NOT_A_BACKUP("{0}: is no backup of an archive ({1}); name a file made with: oblate backup"),
    BROKEN_BACKUP("{0}: the backup is damaged at {1} ({2}); use another copy of it"),
    CANCELLED("{0}: stopped as asked; nothing was left half-done");

    private final String template;

    ArchiveProblem(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
