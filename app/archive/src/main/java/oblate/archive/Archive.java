/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Pattern;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.image.TimeClaim;
import oblate.sky.PlanetModel;
import org.jdbi.v3.core.Handle;

/**
 * An open archive. Safe for many threads; one transaction per call, so that a crash at any moment leaves every call done or not done.
 *
 * <p>Pictures are filed through {@link Filing}.
 */
public final class Archive implements AutoCloseable {
    private static final Pattern NUMBER = Pattern.compile("[0-9]{1,18}");
    private static final Pattern START_OF_SHA = Pattern.compile("[0-9a-f]{8,64}");

    private final ArchiveFolder folder;
    private final Catalog catalog;
    private final List<PlanetModel> planets;
    private final Clock clock;
    private final PictureRows pictures;
    private final MarkRows marks;
    private final FitRows fits = new FitRows();
    private final GearRows gear = new GearRows();
    private final FeatureRows features = new FeatureRows();
    private final HistoryRows history = new HistoryRows();
    private final SettlementRows settlements = new SettlementRows();
    private final PictureEntering entering = new PictureEntering();
    private final AtomicBoolean written = new AtomicBoolean();
    private final AtomicBoolean closed = new AtomicBoolean();

    private Archive(ArchiveFolder folder, Catalog catalog, List<PlanetModel> planets, Clock clock) {
        this.folder = folder;
        this.catalog = catalog;
        this.planets = List.copyOf(planets);
        this.clock = clock;
        this.pictures = new PictureRows(catalog.dialect());
        this.marks = new MarkRows(catalog.dialect());
    }

    /**
     * Makes a new archive in an empty or not yet existing folder.
     *
     * @param clock for the times in the history
     * @throws ProblemException with {@link ArchiveProblem#FOLDER_NOT_EMPTY} or {@link ArchiveProblem#CANNOT_WRITE}
     */
    public static Archive create(Path folder, List<PlanetModel> planets, Clock clock) {
        ArchiveFolder made = vacant(folder);
        // The catalog first: a folder with an unfinished one can be opened, a folder with other things and no catalog
        // could not.
        Catalog catalog = CatalogOpening.inFolder(made.root(), false, CatalogOpening.PATIENCE, clock);
        made.make();
        return new Archive(made, catalog, planets, clock);
    }

    /**
     * Opens an archive, bringing an older catalog up to date after a backup. In a folder that cannot be written to, it is open for reading only.
     *
     * @throws ProblemException with {@link ArchiveProblem#NOT_AN_ARCHIVE}, {@link ArchiveProblem#NEWER_CATALOG},
     *     {@link ArchiveProblem#BROKEN_CATALOG} or {@link ArchiveProblem#BUSY}
     */
    public static Archive open(Path folder, List<PlanetModel> planets, Clock clock) {
        boolean readOnly = Files.isDirectory(folder)
                && !(Files.isWritable(folder) && isWritableIfThere(folder.resolve(CatalogOpening.FILE_NAME)));
        return open(folder, planets, clock, readOnly, CatalogOpening.PATIENCE);
    }

    private static boolean isWritableIfThere(Path file) {
        return !Files.exists(file) || Files.isWritable(file);
    }

    static Archive open(Path folder, List<PlanetModel> planets, Clock clock, boolean readOnly, Duration patience) {
        ArchiveFolder opened = ArchiveFolder.of(folder);
        if (!Files.isRegularFile(opened.root().resolve(CatalogOpening.FILE_NAME))) {
            throw new ProblemException(ArchiveProblem.NOT_AN_ARCHIVE, folder);
        }
        if (readOnly && hasUnfinishedWork(opened.root())) {
            throw new ProblemException(
                    ArchiveProblem.CANNOT_WRITE,
                    opened.root(),
                    "the folder is read-only and the catalog was not closed; copy the archive to where it can be written");
        }
        return new Archive(opened, CatalogOpening.inFolder(opened.root(), readOnly, patience, clock), planets, clock);
    }

    private static boolean hasUnfinishedWork(Path folder) {
        try {
            Path log = folder.resolve(CatalogOpening.FILE_NAME + "-wal");
            return Files.exists(log) && Files.size(log) > 0;
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_READ, folder, Reason.of(e));
        }
    }

    /**
     * Opens a group's archive: pictures in a folder all of them reach, the catalog in a PostgreSQL database. A database without tables gets them.
     *
     * @param folder where the pictures are; made when it is not there
     * @throws ProblemException with {@link ArchiveProblem#GROUP_UNREACHABLE}, {@link ArchiveProblem#NEWER_CATALOG},
     *     {@link ArchiveProblem#BROKEN_CATALOG} or {@link ArchiveProblem#CANNOT_WRITE}
     */
    public static Archive openGroup(Path folder, GroupCatalog group, List<PlanetModel> planets, Clock clock) {
        ArchiveFolder opened = ArchiveFolder.of(folder);
        Catalog catalog = CatalogOpening.ofGroup(group);
        opened.make();
        return new Archive(opened, catalog, planets, clock);
    }

    private static ArchiveFolder vacant(Path folder) {
        ArchiveFolder made = ArchiveFolder.of(folder);
        if (Files.exists(made.root()) && !(Files.isDirectory(made.root()) && ArchiveFolder.isVacant(made.root()))) {
            throw new ProblemException(ArchiveProblem.FOLDER_NOT_EMPTY, folder);
        }
        ArchiveFolder.makeDurably(made.root());
        return made;
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
        return catalog.read(handle -> pictures.find(handle, search));
    }

    /** One picture by number. */
    public Optional<ArchivedPicture> picture(long id) {
        return catalog.read(handle -> pictures.byId(handle, id));
    }

    /**
     * One picture by what a person calls it: its number, its file name, its original name, its path in the archive, or the start of its SHA-256
     * (8 digits at least).
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE} or {@link ArchiveProblem#AMBIGUOUS_PICTURE}
     */
    public ArchivedPicture pictureCalled(String word) {
        return catalog.read(handle -> called(handle, word));
    }

    private ArchivedPicture called(Handle handle, String word) {
        if (NUMBER.matcher(word).matches()) {
            Optional<ArchivedPicture> byNumber = pictures.byId(handle, Long.parseLong(word));
            if (byNumber.isPresent()) {
                return byNumber.get();
            }
        }
        String lower = word.toLowerCase(Locale.ROOT);
        boolean maybeSha = START_OF_SHA.matcher(lower).matches();
        List<ArchivedPicture> found = pictures.called(handle, maybeSha ? lower : word, maybeSha);
        if (found.isEmpty()) {
            throw new ProblemException(ArchiveProblem.NO_SUCH_PICTURE, word);
        }
        if (found.size() > 1) {
            throw new ProblemException(ArchiveProblem.AMBIGUOUS_PICTURE, word, found.size());
        }
        return found.get(0);
    }

    /** Every statement about a picture's time that was found when it was filed, in the order of belief. */
    public List<TimeClaim> timeClaims(long pictureId) {
        return catalog.read(handle -> new ClaimRows().ofPicture(handle, pictureId));
    }

    /**
     * Keeps a fit as the picture's current one; the one before is superseded.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}
     */
    public StoredFit keepFit(long pictureId, DiscFit fit, String ephemeris, String software) {
        return write(handle -> {
            existing(handle, pictureId);
            return fits.add(handle, new FitRows.NewFit(pictureId, fit, ephemeris, software), clock.instant());
        });
    }

    /**
     * Takes a fit out of use; it stays readable. The newest fit of its picture that is not withdrawn becomes the current one.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_FIT_TO_WITHDRAW}
     */
    public void withdrawFit(long fitId, String reason) {
        write(handle -> {
            StoredFit fit = fits.pictureOf(handle, fitId).map(p -> fits.ofPicture(handle, p)).stream()
                    .flatMap(List::stream)
                    .filter(f -> f.id() == fitId && f.withdrawnReason().isEmpty())
                    .findFirst()
                    .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_FIT_TO_WITHDRAW, fitId));
            fits.withdraw(handle, fit, reason, clock.instant());
            return fitId;
        });
    }

    /**
     * Settles that a picture's time is right though its sources disagree: the sentences about it go, what each source said stays.
     *
     * @param reason why, for the history; not blank
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}
     */
    public void settleTime(long pictureId, String reason) {
        write(handle -> {
            new PictureCorrecting().settleTime(handle, existing(handle, pictureId), reason, clock.instant());
            return pictureId;
        });
    }

    /**
     * Takes {@link #settleTime} back.
     *
     * @param conflicts the sentences that are to stand there again
     * @param reason why, for the history; not blank
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}
     */
    public void reopenTime(long pictureId, List<String> conflicts, String reason) {
        write(handle -> {
            new PictureCorrecting().reopenTime(handle, existing(handle, pictureId), conflicts, reason, clock.instant());
            return pictureId;
        });
    }

    /** The picture's current fit. */
    public Optional<StoredFit> currentFit(long pictureId) {
        return catalog.read(handle -> fits.current(handle, pictureId));
    }

    /** The current fits of all pictures that have one, in no order. */
    public List<FitSummary> fitSummaries() {
        return catalog.read(handle -> new FitSummaryRows().all(handle));
    }

    /**
     * Notes in the history that pictures' results went into a report that was sent.
     *
     * @param where to whom or into which file, a few words
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}
     */
    public void noteReported(List<Long> pictureIds, String where) {
        write(handle -> {
            Instant now = clock.instant();
            pictureIds.forEach(id -> {
                existing(handle, id);
                history.add(handle, now, HistoryRows.REPORTED, "picture " + id, where);
            });
            return pictureIds.size();
        });
    }

    /** Numbers of the pictures whose results went into a report. */
    public Set<Long> reportedPictures() {
        return catalog.read(history::reportedPictures);
    }

    /** All fits of a picture, oldest first. */
    public List<StoredFit> fitHistory(long pictureId) {
        return catalog.read(handle -> fits.ofPicture(handle, pictureId));
    }

    /**
     * Adds a mark.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}, {@link ArchiveProblem#UNDATED_PICTURE},
     *     {@link ArchiveProblem#NO_MERIDIAN}, {@link ArchiveProblem#NO_SUCH_FIT} or {@link ArchiveProblem#NO_SUCH_FEATURE}
     */
    public StoredMark addMark(NewMark mark) {
        return write(handle -> {
            Instant now = clock.instant();
            long id = marks.add(handle, mark, longitudes(handle, mark), Optional.empty(), now);
            history.add(handle, now, "marked", "mark " + id, mark.what() + " on picture " + mark.pictureId());
            return marks.byId(handle, id).orElseThrow();
        });
    }

    /**
     * Replaces a current mark by another on the same picture; the old one stays readable.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_MARK}, or as {@link #addMark}
     */
    public StoredMark supersedeMark(long markId, NewMark mark, String reason) {
        return write(handle -> {
            Instant now = clock.instant();
            StoredMark before = currentMark(handle, markId);
            if (before.mark().pictureId() != mark.pictureId()) {
                throw new ProblemException(ArchiveProblem.NO_SUCH_MARK, markId + " of picture " + mark.pictureId());
            }
            Optional<MarkRows.Replacing> replacing = Optional.of(new MarkRows.Replacing(markId, reason));
            long id = marks.add(handle, mark, longitudes(handle, mark), replacing, now);
            history.add(handle, now, "superseded", "mark " + markId, "by mark " + id + ": " + reason);
            return marks.byId(handle, id).orElseThrow();
        });
    }

    /**
     * Takes a mark out of use; it stays readable.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_MARK}
     */
    public void withdrawMark(long markId, String reason) {
        write(handle -> {
            Instant now = clock.instant();
            currentMark(handle, markId);
            marks.withdraw(handle, markId, reason, now);
            history.add(handle, now, "withdrawn", "mark " + markId, reason);
            return markId;
        });
    }

    private StoredMark currentMark(Handle handle, long markId) {
        return marks.byId(handle, markId)
                .filter(StoredMark::isCurrent)
                .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_MARK, markId));
    }

    /** Longitude in every system of the planet, exact at the picture's time since the systems' meridians are; checks the mark on the way. */
    private Map<String, Double> longitudes(Handle handle, NewMark mark) {
        ArchivedPicture picture = existing(handle, mark.pictureId());
        if (picture.time().isEmpty()) {
            throw new ProblemException(ArchiveProblem.UNDATED_PICTURE, picture.id());
        }
        mark.fitId().ifPresent(fit -> {
            if (fits.ofPicture(handle, picture.id()).stream().noneMatch(f -> f.id() == fit)) {
                throw new ProblemException(ArchiveProblem.NO_SUCH_FIT, fit, picture.id());
            }
        });
        mark.featureId().ifPresent(id -> {
            Optional<Feature> known = features.byId(handle, id)
                    .filter(f -> Optional.of(f.planetId()).equals(picture.planetId()));
            if (known.isEmpty()) {
                throw new ProblemException(ArchiveProblem.NO_SUCH_FEATURE, id, picture.id());
            }
        });
        Map<String, Double> longitudes = new LinkedHashMap<>();
        mark.point().ifPresent(point -> {
            double iauMeridian = iauSystem(picture)
                    .map(picture.centralMeridians()::get)
                    .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_MERIDIAN, picture.id()));
            picture.centralMeridians()
                    .forEach((system, cm) -> longitudes.put(system, Angle.turn(point.lonIauDeg() + cm - iauMeridian)));
        });
        return longitudes;
    }

    private Optional<String> iauSystem(ArchivedPicture picture) {
        return planets.stream()
                .filter(p -> Optional.of(p.id()).equals(picture.planetId()))
                .map(p -> p.globe().iauSystemId())
                .findFirst();
    }

    private ArchivedPicture existing(Handle handle, long pictureId) {
        return pictures.byId(handle, pictureId)
                .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_PICTURE, pictureId));
    }

    /** Marks a search finds, in order of time. */
    public List<StoredMark> marks(MarkSearch search) {
        return catalog.read(handle -> marks.find(handle, search));
    }

    /**
     * Settles by hand which track a mark belongs to when marks without names are joined; earlier words about it stay readable.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_MARK}
     */
    public void settleLink(LinkSettlement settlement) {
        write(handle -> {
            StoredMark mark = marks.byId(handle, settlement.markId())
                    .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_MARK, settlement.markId()));
            Instant now = clock.instant();
            settlements.add(handle, settlement, now);
            history.add(handle, now, "settled", "mark " + mark.id(), settlement.sentence());
            return mark.id();
        });
    }

    /** What was settled by hand about current marks, the newest word about each, in order of the marks' numbers; words taken back are left out. */
    public List<LinkSettlement> linkSettlements() {
        return catalog.read(settlements::current);
    }

    /**
     * Adds a feature; its id in the argument is ignored.
     *
     * @throws ProblemException with {@link ArchiveProblem#FEATURE_EXISTS}
     */
    public Feature addFeature(Feature feature) {
        return write(handle -> features.add(handle, feature, clock.instant()));
    }

    /** All features of a planet, by name. */
    public List<Feature> features(String planetId) {
        return catalog.read(handle -> features.ofPlanet(handle, planetId));
    }

    /** Adds or changes a site. */
    public void keepSite(Site site) {
        write(handle -> {
            gear.keepSite(handle, site, clock.instant());
            return site;
        });
    }

    /** All sites by name. */
    public List<Site> sites() {
        return catalog.read(gear::sites);
    }

    /** Adds or changes a kit. */
    public void keepKit(Kit kit) {
        write(handle -> {
            gear.keepKit(handle, kit, clock.instant());
            return kit;
        });
    }

    /** All kits by name. */
    public List<Kit> kits() {
        return catalog.read(gear::kits);
    }

    /** The newest lines of the history, newest first; all of them for a limit of 0. */
    public List<HistoryEntry> history(int limit) {
        return catalog.read(handle -> history.newest(handle, limit));
    }

    /**
     * Verifies every file against its SHA-256 and every row against the rules.
     *
     * @param repair set aside stray files, put moved ones back, clear leftovers: what can be mended without losing anything
     */
    public CheckReport check(boolean repair, Progress progress) {
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
        return new BackupReading(file).restore(vacant(folder), progress);
    }

    /** Enters a picture whose file is in its place; empty when the same bytes are in the catalog already. */
    Optional<ArchivedPicture> enter(PictureEntry entry) {
        return write(handle -> entering.enter(handle, entry, clock.instant()).flatMap(id -> pictures.byId(handle, id)));
    }

    /** Does several steps in one transaction. */
    <T> T together(java.util.function.Function<Step, T> work) {
        return write(handle -> work.apply(new Step(handle)));
    }

    /** The steps of a correction, all in one transaction. */
    final class Step {
        private final Handle handle;
        private final Instant now = clock.instant();

        private Step(Handle handle) {
            this.handle = handle;
        }

        ArchivedPicture picture(long id) {
            return existing(handle, id);
        }

        Optional<StoredFit> fit(long pictureId) {
            return fits.current(handle, pictureId);
        }

        List<StoredFit> fitsOf(long pictureId) {
            return fits.ofPicture(handle, pictureId);
        }

        List<StoredMark> marksOf(long pictureId) {
            return marks.find(handle, MarkSearch.ofPicture(pictureId));
        }

        void correct(PictureCorrecting.Corrected corrected, String reason) {
            new PictureCorrecting().update(handle, corrected, reason, now);
        }

        void supersede(StoredMark before, NewMark mark, String reason) {
            Optional<MarkRows.Replacing> replacing = Optional.of(new MarkRows.Replacing(before.id(), reason));
            long id = marks.add(handle, mark, longitudes(handle, mark), replacing, now);
            history.add(handle, now, "superseded", "mark " + before.id(), "by mark " + id + ": " + reason);
        }

        void withdraw(StoredMark mark, String reason) {
            marks.withdraw(handle, mark.id(), reason, now);
            history.add(handle, now, "withdrawn", "mark " + mark.id(), reason);
        }

        void withdraw(StoredFit fit, String reason) {
            fits.withdraw(handle, fit, reason, now);
        }
    }

    Optional<ArchivedPicture> pictureWithSha(String sha256) {
        return catalog.read(handle -> pictures.bySha(handle, sha256));
    }

    /** Whether a path in the archive is some picture's. */
    boolean isEntered(String relativePath) {
        return catalog.read(
                handle -> !pictures.called(handle, relativePath, false).isEmpty());
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

    private <T> T write(java.util.function.Function<Handle, T> work) {
        T result = catalog.write(work);
        written.set(true);
        return result;
    }

    /** Closes the catalog; when something was written and there is no copy of it from the last day, makes one in {@code backups/}. */
    @Override
    public void close() {
        if (closed.getAndSet(true)) {
            return;
        }
        try {
            if (written.get() && catalog.dialect() == Dialect.SQLITE) {
                CatalogCopies.in(folder.root()).daily(catalog, clock);
            }
        } finally {
            catalog.close();
        }
    }
}
