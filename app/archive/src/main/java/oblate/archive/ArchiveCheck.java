/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import oblate.base.ProblemException;
import oblate.base.Progress;

/** One verification of an archive: every file against its row, every row against the rules. Used once, by one thread. */
final class ArchiveCheck {
    private final Archive archive;
    private final ArchiveFolder folder;
    private final Intake intake;
    private final CatalogCheck rows;
    private final List<String> faults = new ArrayList<>();
    private final List<String> repaired = new ArrayList<>();
    private long bytes;

    ArchiveCheck(Archive archive, ArchiveFolder folder, Catalog catalog) {
        this.archive = archive;
        this.folder = folder;
        this.intake = new Intake(folder);
        this.rows = new CatalogCheck(catalog);
    }

    CheckReport run(boolean repair, Progress progress) {
        if (!repair) {
            return look(false, progress);
        }
        if (archive.isReadOnly()) {
            throw new ProblemException(ArchiveProblem.CANNOT_WRITE, archive.folder(), "the folder is read-only");
        }
        try (FilingLock lock = FilingLock.take(folder)) {
            assert lock != null;
            return look(true, progress);
        }
    }

    private CheckReport look(boolean repair, Progress progress) {
        faults.addAll(rows.faults());
        List<ArchivedPicture> pictures = archive.pictures(PictureSearch.all());
        Map<String, List<Path>> strays = strays(pictures);
        int done = 0;
        for (ArchivedPicture picture : pictures) {
            if (progress.isCancelled()) {
                faults.add(
                        "The check was stopped after " + done + " of " + pictures.size() + " pictures; run it again.");
                return new CheckReport(done, bytes, faults, repaired);
            }
            checkFile(picture, strays, repair);
            progress.report(++done, pictures.size(), picture.name());
        }
        strays.values().stream().flatMap(List::stream).sorted().forEach(stray -> tellStray(stray, repair));
        intake.leftovers().stream().sorted().forEach(part -> tellLeftover(part, repair));
        return new CheckReport(pictures.size(), bytes, faults, repaired);
    }

    private void checkFile(ArchivedPicture picture, Map<String, List<Path>> strays, boolean repair) {
        Optional<Path> place = folder.inside(picture.relativePath());
        if (place.isEmpty()) {
            faults.add("picture " + picture.id() + ": its path " + picture.relativePath()
                    + " leads out of the archive; restore the catalog from backups/");
            return;
        }
        Path file = place.get();
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            missing(picture, file, strays, repair, "is missing");
            return;
        }
        try {
            Hashing.Digest digest = Hashing.of(file);
            bytes += digest.bytes();
            if (!digest.sha256().equals(picture.sha256())) {
                missing(picture, file, strays, repair, "has other bytes than when it was filed");
            }
        } catch (IOException e) {
            faults.add(
                    picture.relativePath() + ": cannot be read (" + Reason.of(e) + "); check the disk and permissions");
        }
    }

    private void missing(
            ArchivedPicture picture, Path file, Map<String, List<Path>> strays, boolean repair, String what) {
        List<Path> same = strays.getOrDefault(picture.sha256(), List.of());
        if (same.isEmpty()) {
            faults.add(picture.relativePath() + ": " + what + "; put the original back there (SHA-256 "
                    + picture.sha256() + ") from a backup");
            return;
        }
        Path found = same.get(0);
        if (repair) {
            intake.putBack(found, file);
            same.remove(0);
            repaired.add(picture.relativePath() + ": " + what + "; put back from " + folder.relative(found));
        } else {
            faults.add(picture.relativePath() + ": " + what + ", but its bytes are in " + folder.relative(found)
                    + "; run: oblate check --repair");
        }
    }

    private void tellStray(Path stray, boolean repair) {
        if (repair) {
            Path aside = intake.setAside(stray);
            repaired.add(folder.relative(stray) + ": no row speaks of it; set aside as " + folder.relative(aside)
                    + ", file it again from there if it belongs to the archive");
        } else {
            faults.add(
                    folder.relative(stray)
                            + ": no row speaks of it; file the same picture again, or set it aside with: oblate check --repair");
        }
    }

    private void tellLeftover(Path part, boolean repair) {
        if (repair) {
            Intake.discard(part);
            repaired.add(folder.relative(part) + ": leftover of an interrupted filing; deleted");
        } else {
            faults.add(
                    folder.relative(part)
                            + ": leftover of an interrupted filing; it goes at the next filing, or with: oblate check --repair");
        }
    }

    /** Files below {@code pictures/} that no row speaks of, by digest. Links are not followed. */
    private Map<String, List<Path>> strays(List<ArchivedPicture> pictures) {
        Set<String> known = new HashSet<>();
        pictures.forEach(p -> known.add(p.relativePath()));
        Map<String, List<Path>> strays = new HashMap<>();
        if (!Files.isDirectory(folder.pictures())) {
            return strays;
        }
        try (Stream<Path> files = Files.walk(folder.pictures())) {
            for (Path file : files.filter(f -> !Files.isDirectory(f, LinkOption.NOFOLLOW_LINKS))
                    .toList()) {
                if (!known.contains(folder.relative(file))) {
                    strays.computeIfAbsent(digestOrPath(file), digest -> new ArrayList<>())
                            .add(file);
                }
            }
            return strays;
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_READ, folder.pictures(), Reason.of(e));
        } catch (UncheckedIOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_READ, folder.pictures(), Reason.of(e.getCause()));
        }
    }

    private static String digestOrPath(Path file) {
        try {
            return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                    ? Hashing.of(file).sha256()
                    : file.toString();
        } catch (IOException e) {
            return file.toString(); // it is told as a stray all the same
        }
    }
}
