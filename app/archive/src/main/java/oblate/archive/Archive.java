/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.image.TimeClaim;
import oblate.sky.PlanetModel;

/**
 * An open archive. Safe for many threads; one transaction per call, so that a crash at any moment leaves every call done or not done.
 *
 * <p>Pictures are filed through {@link Filing}.
 */
public final class Archive implements AutoCloseable {
    private final ArchiveFolder folder;
    private final Catalog catalog;
    private final FirstUse opening;
    private final List<PlanetModel> planets;
    private final Clock clock;
    private final Ledger ledger;
    private final KeptPictures pictures;
    private final KeptFits fits;
    private final KeptMarks marks;
    private final KeptStates seen;
    private final FeatureRows features = new FeatureRows();
    private final GearRows gear = new GearRows();
    private final HistoryRows history = new HistoryRows();
    private final AtomicBoolean closed = new AtomicBoolean();

    /**
     * @param opening what has to be done with the catalog before it is first used
     */
    Archive(ArchiveFolder folder, Catalog catalog, FirstUse opening, List<PlanetModel> planets, Clock clock) {
        this.folder = folder;
        this.catalog = catalog;
        this.opening = opening;
        this.planets = List.copyOf(planets);
        this.clock = clock;
        this.ledger = new Ledger(catalog, opening, clock);
        this.pictures = new KeptPictures(ledger);
        this.fits = new KeptFits(ledger, pictures);
        this.marks = new KeptMarks(ledger, pictures, this.planets);
        this.seen = new KeptStates(ledger, pictures);
    }

    /**
     * Makes a new archive in an empty or not yet existing folder.
     *
     * @param clock for the times in the history
     * @throws ProblemException with {@link ArchiveProblem#FOLDER_NOT_EMPTY} or {@link ArchiveProblem#CANNOT_WRITE}
     */
    public static Archive create(Path folder, List<PlanetModel> planets, Clock clock) {
        return ArchiveOpening.create(folder, planets, clock);
    }

    /**
     * Opens an archive, bringing an older catalog up to date after a backup. In a folder that cannot be written to, it is open for reading only.
     *
     * @throws ProblemException with {@link ArchiveProblem#NOT_AN_ARCHIVE}, {@link ArchiveProblem#NEWER_CATALOG},
     *     {@link ArchiveProblem#BROKEN_CATALOG} or {@link ArchiveProblem#BUSY}
     */
    public static Archive open(Path folder, List<PlanetModel> planets, Clock clock) {
        Archive archive = later(folder, planets, clock);
        archive.ensureOpen();
        return archive;
    }

    /**
     * An archive whose folder has been looked at, but not yet its catalog: that is opened by the first call that needs it, or by {@link #ensureOpen()}.
     * So a window can be made while the catalog is being opened.
     *
     * @throws ProblemException with {@link ArchiveProblem#NOT_AN_ARCHIVE}; what else {@link #open} throws comes with the first call
     */
    public static Archive later(Path folder, List<PlanetModel> planets, Clock clock) {
        return ArchiveOpening.later(folder, planets, clock);
    }

    /**
     * Opens the catalog of an archive made by {@link #later}, unless it is open.
     *
     * @throws ProblemException as {@link #open}
     */
    public void ensureOpen() {
        opening.ensure();
    }

    /**
     * Opens a group's archive: pictures in a folder all of them reach, the catalog in a PostgreSQL database. A database without tables gets them.
     *
     * @param folder where the pictures are; made when it is not there
     * @throws ProblemException with {@link ArchiveProblem#GROUP_UNREACHABLE}, {@link ArchiveProblem#NEWER_CATALOG},
     *     {@link ArchiveProblem#BROKEN_CATALOG} or {@link ArchiveProblem#CANNOT_WRITE}
     */
    public static Archive openGroup(Path folder, GroupCatalog group, List<PlanetModel> planets, Clock clock) {
        return ArchiveOpening.openGroup(folder, group, planets, clock);
    }

    /** The archive's folder. */
    public Path folder() {
        return folder.root();
    }

    /** Whether nothing can be written, because the folder is read-only. */
    public boolean isReadOnly() {
        return catalog.isReadOnly();
    }

    /** Where a picture's file is. */
    public Path fileOf(ArchivedPicture picture) {
        return folder.inside(picture.relativePath())
                .orElseThrow(() -> new ProblemException(
                        ArchiveProblem.BROKEN_CATALOG,
                        catalog.name(),
                        "path of picture " + picture.id() + " leads out of it"));
    }

    /** Pictures a search finds, in order of time, undated ones last. */
    public List<ArchivedPicture> pictures(PictureSearch search) {
        return pictures.find(search);
    }

    /** One picture by number. */
    public Optional<ArchivedPicture> picture(long id) {
        return pictures.byId(id);
    }

    /**
     * One picture by what a person calls it: its number, its file name, its original name, its path in the archive, or the start of its SHA-256
     * (8 digits at least).
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE} or {@link ArchiveProblem#AMBIGUOUS_PICTURE}
     */
    public ArchivedPicture pictureCalled(String word) {
        return pictures.called(word);
    }

    /** Every statement about a picture's time that was found when it was filed, in the order of belief. */
    public List<TimeClaim> timeClaims(long pictureId) {
        return pictures.timeClaims(pictureId);
    }

    /**
     * Keeps a fit as the picture's current one; the one before is superseded.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}
     */
    public StoredFit keepFit(long pictureId, DiscFit fit, String ephemeris, String software) {
        return fits.keep(pictureId, fit, ephemeris, software);
    }

    /**
     * Takes a fit out of use; it stays readable. The newest fit of its picture that is not withdrawn becomes the current one.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_FIT_TO_WITHDRAW}
     */
    public void withdrawFit(long fitId, String reason) {
        fits.withdraw(fitId, reason);
    }

    /**
     * Settles that a picture's time is right though its sources disagree: the sentences about it go, what each source said stays.
     *
     * @param reason why, for the history; not blank
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}
     */
    public void settleTime(long pictureId, String reason) {
        pictures.settleTime(pictureId, reason);
    }

    /**
     * Takes {@link #settleTime} back.
     *
     * @param conflicts the sentences that are to stand there again
     * @param reason why, for the history; not blank
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}
     */
    public void reopenTime(long pictureId, List<String> conflicts, String reason) {
        pictures.reopenTime(pictureId, conflicts, reason);
    }

    /** The picture's current fit. */
    public Optional<StoredFit> currentFit(long pictureId) {
        return fits.current(pictureId);
    }

    /** The current fits of all pictures that have one, in no order. */
    public List<FitSummary> fitSummaries() {
        return fits.summaries();
    }

    /**
     * Notes in the history that pictures' results went into a report that was sent.
     *
     * @param where to whom or into which file, a few words
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}
     */
    public void noteReported(List<Long> pictureIds, String where) {
        pictures.noteReported(pictureIds, where);
    }

    /** Numbers of the pictures whose results went into a report. */
    public Set<Long> reportedPictures() {
        return pictures.reported();
    }

    /** All fits of a picture, oldest first. */
    public List<StoredFit> fitHistory(long pictureId) {
        return fits.ofPicture(pictureId);
    }

    /**
     * Adds a mark.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}, {@link ArchiveProblem#UNDATED_PICTURE},
     *     {@link ArchiveProblem#NO_MERIDIAN}, {@link ArchiveProblem#NO_SUCH_FIT} or {@link ArchiveProblem#NO_SUCH_FEATURE}
     */
    public StoredMark addMark(NewMark mark) {
        return marks.add(mark);
    }

    /**
     * Replaces a current mark by another on the same picture; the old one stays readable.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_MARK}, or as {@link #addMark}
     */
    public StoredMark supersedeMark(long markId, NewMark mark, String reason) {
        return marks.supersede(markId, mark, reason);
    }

    /**
     * Takes a mark out of use; it stays readable.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_MARK}
     */
    public void withdrawMark(long markId, String reason) {
        marks.withdraw(markId, reason);
    }

    /** Marks a search finds, in order of time. */
    public List<StoredMark> marks(MarkSearch search) {
        return marks.find(search);
    }

    /**
     * Settles by hand which track a mark belongs to when marks without names are joined; earlier words about it stay readable.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_MARK}
     */
    public void settleLink(LinkSettlement settlement) {
        marks.settleLink(settlement);
    }

    /** What was settled by hand about current marks, the newest word about each, in order of the marks' numbers; words taken back are left out. */
    public List<LinkSettlement> linkSettlements() {
        return marks.linkSettlements();
    }

    /**
     * Keeps what was seen of moons, all of it or, when one is refused, none. What says the same as the newest word about its thing adds nothing.
     *
     * @return how many said something new
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}, {@link ArchiveProblem#UNDATED_PICTURE}, {@link ArchiveProblem#OTHER_PLANET} or
     *     {@link ArchiveProblem#NO_SUCH_SITE}
     */
    public int saySeen(List<SeenState> states) {
        return seen.say(states);
    }

    /** What was seen of a planet's moons, the newest word about each thing; words taken back are left out. */
    public List<SeenState> seenStates(String planetId) {
        return seen.current(planetId);
    }

    /** All that was ever said of it, oldest first. */
    public List<SeenState> seenStateHistory(String planetId) {
        return seen.all(planetId);
    }

    /**
     * Adds a feature; its id in the argument is ignored.
     *
     * @throws ProblemException with {@link ArchiveProblem#FEATURE_EXISTS}
     */
    public Feature addFeature(Feature feature) {
        return ledger.write((handle, now) -> features.add(handle, feature, now));
    }

    /** All features of a planet, by name. */
    public List<Feature> features(String planetId) {
        return ledger.read(handle -> features.ofPlanet(handle, planetId));
    }

    /** Adds or changes a site. */
    public void keepSite(Site site) {
        ledger.write((handle, now) -> {
            gear.keepSite(handle, site, now);
            return site;
        });
    }

    /** All sites by name. */
    public List<Site> sites() {
        return ledger.read(gear::sites);
    }

    /** Adds or changes a kit. */
    public void keepKit(Kit kit) {
        ledger.write((handle, now) -> {
            gear.keepKit(handle, kit, now);
            return kit;
        });
    }

    /** All kits by name. */
    public List<Kit> kits() {
        return ledger.read(gear::kits);
    }

    /** The newest lines of the history, newest first; all of them for a limit of 0. */
    public List<HistoryEntry> history(int limit) {
        return ledger.read(handle -> history.newest(handle, limit));
    }

    /**
     * Verifies every file against its SHA-256 and every row against the rules.
     *
     * @param repair set aside stray files, put moved ones back, clear leftovers: what can be mended without losing anything
     */
    public CheckReport check(boolean repair, Progress progress) {
        opening.ensure();
        return new ArchiveCheck(this, folder, catalog).run(repair, progress);
    }

    /**
     * Writes the whole archive into one file and reads that back to verify it.
     *
     * @param file new file, usually {@code *.zip}
     * @return what was written
     * @throws ProblemException with {@link ArchiveProblem#FILE_EXISTS}, {@link ArchiveProblem#CANNOT_WRITE},
     *     {@link ArchiveProblem#NOT_FOR_GROUP}, or what is wrong with a picture
     */
    public BackupReport backup(Path file, Progress progress) {
        opening.ensure();
        return new BackupWriting(this, catalog).write(file, progress);
    }

    /**
     * Brings an archive back from a backup, into an empty or new folder.
     *
     * @return what was written; open the folder with {@link #open} then
     * @throws ProblemException with {@link ArchiveProblem#NOT_A_BACKUP}, {@link ArchiveProblem#BROKEN_BACKUP},
     *     {@link ArchiveProblem#FOLDER_NOT_EMPTY} or {@link ArchiveProblem#CANNOT_WRITE}
     */
    public static BackupReport restore(Path file, Path folder, Progress progress) {
        return new BackupReading(file).restore(ArchiveOpening.vacant(folder), progress);
    }

    /** Enters a picture whose file is in its place; empty when the same bytes are in the catalog already. */
    Optional<ArchivedPicture> enter(PictureEntry entry) {
        return pictures.enter(entry);
    }

    /** Does a correction in one transaction. */
    <T> T together(Function<CorrectionStep, T> work) {
        return ledger.write((handle, now) -> work.apply(new CorrectionStep(handle, now, pictures, marks)));
    }

    Optional<ArchivedPicture> pictureWithSha(String sha256) {
        return pictures.bySha(sha256);
    }

    /** Whether a path in the archive is some picture's. */
    boolean isEntered(String relativePath) {
        return pictures.isEntered(relativePath);
    }

    /** See {@link Catalog#requireThere()}. */
    void requireThere() {
        catalog.requireThere();
    }

    ArchiveFolder layout() {
        return folder;
    }

    Clock clock() {
        return clock;
    }

    List<PlanetModel> planets() {
        return planets;
    }

    /** Closes the catalog; when something was written and there is no copy of it from the last day, makes one in {@code backups/}. */
    @Override
    public void close() {
        if (closed.getAndSet(true)) {
            return;
        }
        try {
            if (ledger.isWritten() && catalog.dialect() == Dialect.SQLITE) {
                CatalogCopies.in(folder.root()).daily(catalog, clock);
            }
        } finally {
            catalog.close();
        }
    }
}
