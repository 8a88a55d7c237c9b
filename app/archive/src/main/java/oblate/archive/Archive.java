package oblate.archive;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.sky.PlanetModel;

/**
 * An open archive. Safe for many threads; one transaction per call, so that a crash at any moment leaves every call done or not done.
 *
 * <p>Pictures are filed through {@link Filing}.
 */
public final class Archive implements AutoCloseable {
    private final Path folder;

    private Archive(Path folder) {
        this.folder = folder;
    }

    /**
     * Makes a new archive in an empty or not yet existing folder.
     *
     * @param clock for the times in the history
     * @throws oblate.base.ProblemException with {@link ArchiveProblem#FOLDER_NOT_EMPTY} or {@link ArchiveProblem#CANNOT_WRITE}
     */
    public static Archive create(Path folder, List<PlanetModel> planets, Clock clock) {
        return new Archive(folder);
    }

    /**
     * Opens an archive, bringing an older catalog up to date after a backup.
     *
     * @throws oblate.base.ProblemException with {@link ArchiveProblem#NOT_AN_ARCHIVE}, {@link ArchiveProblem#NEWER_CATALOG},
     *     {@link ArchiveProblem#BROKEN_CATALOG} or {@link ArchiveProblem#BUSY}
     */
    public static Archive open(Path folder, List<PlanetModel> planets, Clock clock) {
        return new Archive(folder);
    }

    /** The archive's folder. */
    public Path folder() {
        return folder;
    }

    /** Where a picture's file is. */
    public Path fileOf(ArchivedPicture picture) {
        throw new UnsupportedOperationException();
    }

    /** Pictures a search finds, in order of time, undated ones last. */
    public List<ArchivedPicture> pictures(PictureSearch search) {
        throw new UnsupportedOperationException();
    }

    /** One picture by number. */
    public Optional<ArchivedPicture> picture(long id) {
        throw new UnsupportedOperationException();
    }

    /**
     * One picture by what a person calls it: its number, its file name, its original name, or the start of its SHA-256 (8 digits at least).
     *
     * @throws oblate.base.ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE} or {@link ArchiveProblem#AMBIGUOUS_PICTURE}
     */
    public ArchivedPicture pictureCalled(String word) {
        throw new UnsupportedOperationException();
    }

    /** Keeps a fit as the picture's current one; the one before is superseded. */
    public StoredFit keepFit(long pictureId, DiscFit fit, String ephemeris, String software) {
        throw new UnsupportedOperationException();
    }

    /** The picture's current fit. */
    public Optional<StoredFit> currentFit(long pictureId) {
        throw new UnsupportedOperationException();
    }

    /** All fits of a picture, oldest first. */
    public List<StoredFit> fitHistory(long pictureId) {
        throw new UnsupportedOperationException();
    }

    /** Adds a mark. */
    public StoredMark addMark(NewMark mark) {
        throw new UnsupportedOperationException();
    }

    /**
     * Replaces a current mark by another; the old one stays readable.
     *
     * @throws oblate.base.ProblemException with {@link ArchiveProblem#NO_SUCH_MARK}
     */
    public StoredMark supersedeMark(long markId, NewMark mark, String reason) {
        throw new UnsupportedOperationException();
    }

    /**
     * Takes a mark out of use; it stays readable.
     *
     * @throws oblate.base.ProblemException with {@link ArchiveProblem#NO_SUCH_MARK}
     */
    public void withdrawMark(long markId, String reason) {
        throw new UnsupportedOperationException();
    }

    /** Marks a search finds, in order of time. */
    public List<StoredMark> marks(MarkSearch search) {
        throw new UnsupportedOperationException();
    }

    /**
     * Adds a feature; its id in the argument is ignored.
     *
     * @throws oblate.base.ProblemException with {@link ArchiveProblem#FEATURE_EXISTS}
     */
    public Feature addFeature(Feature feature) {
        throw new UnsupportedOperationException();
    }

    /** All features of a planet, by name. */
    public List<Feature> features(String planetId) {
        throw new UnsupportedOperationException();
    }

    /** Adds or changes a site. */
    public void keepSite(Site site) {
        throw new UnsupportedOperationException();
    }

    /** All sites by name. */
    public List<Site> sites() {
        throw new UnsupportedOperationException();
    }

    /** Adds or changes a kit. */
    public void keepKit(Kit kit) {
        throw new UnsupportedOperationException();
    }

    /** All kits by name. */
    public List<Kit> kits() {
        throw new UnsupportedOperationException();
    }

    /** The newest lines of the history, newest first. */
    public List<HistoryEntry> history(int limit) {
        throw new UnsupportedOperationException();
    }

    /**
     * Verifies every file against its SHA-256 and every row against the rules.
     *
     * @param repair adopt or set aside stray files, mend what can be mended without losing anything
     */
    public CheckReport check(boolean repair, Progress progress) {
        throw new UnsupportedOperationException();
    }

    @Override
    public void close() {
        throw new UnsupportedOperationException();
    }
}
