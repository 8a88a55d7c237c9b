/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.archive.FilingOutcome.AlreadyThere;
import oblate.archive.FilingOutcome.Filed;
import oblate.archive.FilingOutcome.Refused;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.image.CaptureTime;
import oblate.image.CaptureTimes;
import oblate.image.PictureHeader;
import oblate.image.PictureReader;
import oblate.image.TimeFinding;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/**
 * Takes picture files into an archive: reads, finds the time, copies unaltered under the night, verifies, and enters it in the catalog.
 *
 * <p>Idempotent: the same bytes are one picture however often and under whatever name they come. Killed at any moment it leaves no half picture:
 * filing the same again finishes what was begun.
 */
public final class Filing {
    private static final Duration CLOCKS_DIFFER = Duration.ofDays(1);

    private final Archive archive;
    private final PictureReader reader;
    private final CaptureTimes times;
    private final Sky sky;
    private final PictureSky atMid;
    private final List<PlanetModel> planets;
    private final Intake intake;

    /**
     * @param archive where to
     * @param reader reads the files
     * @param times finds their times
     * @param sky computes the central meridians
     * @param planets known planets
     */
    public Filing(Archive archive, PictureReader reader, CaptureTimes times, Sky sky, List<PlanetModel> planets) {
        this.archive = archive;
        this.reader = reader;
        this.times = times;
        this.sky = sky;
        this.atMid = new PictureSky(sky);
        this.planets = List.copyOf(planets);
        this.intake = new Intake(archive.layout());
    }

    /**
     * Files files and folders (searched through; hidden files, text notes and the archive itself left alone), one after the other; one bad file
     * costs only itself.
     *
     * @param progress told per file; cancelling stops between files
     * @return one outcome per file, in order of path
     * @throws ProblemException for what concerns all of them: {@link ArchiveProblem#NO_SUCH_SITE}, {@link ArchiveProblem#NO_SUCH_PLANET},
     *     {@link ArchiveProblem#FILING_BUSY}, {@link ArchiveProblem#CANNOT_WRITE}, {@link ArchiveProblem#ARCHIVE_GONE}
     */
    public List<FilingOutcome> file(List<Path> paths, FilingFacts facts, Progress progress) {
        if (archive.isReadOnly()) {
            throw new ProblemException(ArchiveProblem.CANNOT_WRITE, archive.folder(), "the folder is read-only");
        }
        archive.requireThere();
        facts.planetId().ifPresent(word -> PlanetWord.named(word, planets));
        Optional<Site> site = facts.site().map(this::site);
        Map<Path, Optional<ProblemException>> files =
                FilesToFile.of(paths, archive.folder()).byPath();
        List<FilingOutcome> outcomes = new ArrayList<>(files.size());
        try (FilingLock lock = FilingLock.take(archive.layout())) {
            intake.leftovers().forEach(Intake::discard);
            for (Map.Entry<Path, Optional<ProblemException>> file : files.entrySet()) {
                if (progress.isCancelled()) {
                    break;
                }
                progress.report(
                        outcomes.size(), files.size(), "filing " + file.getKey().getFileName());
                outcomes.add(file.getValue()
                        .<FilingOutcome>map(problem -> new Refused(file.getKey(), problem.getMessage()))
                        .orElseGet(() -> one(file.getKey(), facts, site)));
            }
        }
        progress.report(outcomes.size(), files.size(), "filed");
        return List.copyOf(outcomes);
    }

    /**
     * What {@link #file} would make of the same files, without reading their pixels and without writing anything.
     *
     * @param progress told per file; cancelling stops between files
     * @return one forecast per file, in order of path
     * @throws ProblemException {@link ArchiveProblem#NO_SUCH_PLANET}
     */
    public List<FilingForecast> foresee(List<Path> paths, FilingFacts facts, Progress progress) {
        Map<Path, Optional<ProblemException>> files =
                FilesToFile.of(paths, archive.folder()).byPath();
        List<FilingForecast> forecasts = new ArrayList<>(files.size());
        for (Map.Entry<Path, Optional<ProblemException>> file : files.entrySet()) {
            if (progress.isCancelled()) {
                break;
            }
            progress.report(
                    forecasts.size(),
                    files.size(),
                    "looking at " + file.getKey().getFileName());
            forecasts.add(file.getValue()
                    .map(problem -> FilingForecast.refused(file.getKey(), problem.getMessage()))
                    .orElseGet(() -> forecast(file.getKey(), facts)));
        }
        return List.copyOf(forecasts);
    }

    private FilingForecast forecast(Path file, FilingFacts facts) {
        try {
            PictureHeader header = reader.header(file);
            TimeFinding finding = times.find(file, header, facts.time());
            finding.time().ifPresent(t -> atMid.refuseOutsideEphemeris(file, t.midUtc()));
            PlanetWord word = PlanetWord.of(facts.planetId(), file, header, planets);
            List<String> remarks = new ArrayList<>(finding.disagreements());
            finding.time().ifPresent(t -> remarks.addAll(t.notes()));
            if (word.planet().isPresent()) {
                remarks.addAll(word.remarks());
            }
            return new FilingForecast(
                    file,
                    Optional.empty(),
                    finding.time(),
                    finding.whyNone(),
                    word.planet().map(PlanetModel::id),
                    remarks);
        } catch (ProblemException e) {
            return FilingForecast.refused(file, e.getMessage());
        }
    }

    private Site site(String name) {
        return archive.sites().stream()
                .filter(s -> s.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_SITE, name));
    }

    private FilingOutcome one(Path file, FilingFacts facts, Optional<Site> site) {
        try {
            PictureHeader header = reader.header(file);
            Hashing.Digest digest = digest(file);
            Optional<ArchivedPicture> there = archive.pictureWithSha(digest.sha256());
            if (there.isPresent()) {
                return alreadyThere(file, digest, there.get());
            }
            reader.decode(file);
            TimeFinding finding = times.find(file, header, facts.time());
            if (finding.time().isEmpty() && !facts.undatedAllowed()) {
                return new Refused(file, finding.whyNone().orElse(file + ": its capture time is not known"));
            }
            finding.time().ifPresent(t -> atMid.refuseOutsideEphemeris(file, t.midUtc()));
            return enter(new Candidate(file, header, digest, finding, facts.completedFrom(header), site));
        } catch (ProblemException e) {
            return new Refused(file, e.getMessage());
        }
    }

    private FilingOutcome enter(Candidate c) {
        List<String> remarks = new ArrayList<>(c.finding().disagreements());
        Optional<CaptureTime> time = c.finding().time();
        time.ifPresent(t -> remarks.addAll(t.notes()));
        time.filter(t -> t.midUtc().isAfter(archive.clock().instant().plus(CLOCKS_DIFFER)))
                .ifPresent(t ->
                        remarks.add("Its time " + t.midUtc() + " lies in the future; look at the clock it came from."));
        if (time.isEmpty()) {
            remarks.add("It has no time and was filed as undated.");
        }
        PlanetWord word = PlanetWord.of(c.facts().planetId(), c.file(), c.header(), planets);
        remarks.addAll(word.remarks());
        Optional<LocalDate> night = time.map(t -> Evening.of(t.midUtc(), c.site()));
        Map<String, Double> meridians = word.planet()
                .flatMap(p -> time.map(t -> PictureSky.meridians(sky.disc(p, t.midUtc()))))
                .orElse(Map.of());
        String name = c.file().getFileName().toString();
        Path part = intake.copyIn(c.file(), c.digest());
        Path placed = intake.place(part, c.digest(), folderOf(night), FileNames.safe(name), archive::isEntered);
        PictureEntry entry = new PictureEntry(
                c.digest().sha256(),
                c.digest().bytes(),
                archive.layout().relative(placed),
                name,
                c.header(),
                word.planet().map(PlanetModel::id),
                time,
                night,
                meridians,
                c.finding().claims(),
                c.finding().disagreements(),
                c.facts());
        Optional<ArchivedPicture> entered = archive.enter(entry);
        if (entered.isEmpty()) {
            // Another program of the group was quicker with the same bytes.
            intake.setAside(placed);
            return new AlreadyThere(
                    c.file(), archive.pictureWithSha(c.digest().sha256()).orElseThrow());
        }
        return new Filed(c.file(), entered.get(), List.copyOf(remarks));
    }

    private FilingOutcome alreadyThere(Path file, Hashing.Digest digest, ArchivedPicture there) {
        Path kept = archive.fileOf(there);
        try {
            if (!Files.exists(kept) || Files.size(kept) != digest.bytes()) {
                intake.putBack(intake.copyIn(file, digest), kept);
            }
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_READ, kept, Reason.of(e));
        }
        return new AlreadyThere(file, there);
    }

    private Path folderOf(Optional<LocalDate> night) {
        Path pictures = archive.layout().pictures();
        return night.map(date ->
                        pictures.resolve(date.toString().substring(0, 4)).resolve(date.toString()))
                .orElseGet(() -> pictures.resolve("undated"));
    }

    private static Hashing.Digest digest(Path file) {
        try {
            return Hashing.of(file);
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_READ, file, Reason.of(e));
        }
    }

    /** A picture that has been read and may be filed. */
    private record Candidate(
            Path file,
            PictureHeader header,
            Hashing.Digest digest,
            TimeFinding finding,
            FilingFacts facts,
            Optional<Site> site) {}
}
