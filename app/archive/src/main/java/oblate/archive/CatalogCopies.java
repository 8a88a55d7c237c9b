/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import oblate.base.ProblemException;

/**
 * Copies of the catalog in the archive's {@code backups} folder: one before each change of its tables, and one a day when something was
 * written. A few of each kind are kept.
 *
 * @param folder where they are
 */
record CatalogCopies(Path folder) {
    static final int KEPT = 7;

    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final Duration DAILY = Duration.ofHours(20);
    private static final String DAILY_PREFIX = "catalog-day-";
    private static final String MIGRATION_PREFIX = "catalog-before-";

    static CatalogCopies in(Path archive) {
        return new CatalogCopies(archive.resolve(ArchiveFolder.BACKUPS));
    }

    /** Copies a catalog that is about to be brought up to date. */
    Path beforeMigration(Catalog catalog, int version, Clock clock) {
        String name = String.format(
                Locale.ROOT, "%sversion-%03d-%s.db", MIGRATION_PREFIX, version + 1, STAMP.format(clock.instant()));
        Path made = copy(catalog, folder.resolve(name));
        forgetOld(MIGRATION_PREFIX);
        return made;
    }

    /** Copies the catalog unless there is a copy younger than a day. */
    void daily(Catalog catalog, Clock clock) {
        Instant now = clock.instant();
        boolean recent = named(DAILY_PREFIX).stream().anyMatch(p -> isYoung(p, now));
        if (!recent) {
            copy(catalog, folder.resolve(DAILY_PREFIX + STAMP.format(now) + ".db"));
            forgetOld(DAILY_PREFIX);
        }
    }

    /** Writes a copy that a crash cannot leave half-written under its name. */
    static Path copy(Catalog catalog, Path to) {
        Path part = to.resolveSibling(to.getFileName() + ".part");
        try {
            ArchiveFolder.makeDurably(to.getParent());
            Files.deleteIfExists(part);
            catalog.outsideTransaction(handle -> handle.createUpdate("vacuum into :file")
                    .bind("file", part.toAbsolutePath().toString())
                    .execute());
            Intake.force(part);
            Files.move(part, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            ArchiveFolder.flush(to.getParent());
            return to;
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, to, Reason.of(e));
        }
    }

    private static boolean isYoung(Path copy, Instant now) {
        String name = copy.getFileName().toString();
        String stamp = name.substring(DAILY_PREFIX.length(), name.length() - ".db".length());
        try {
            Instant made = STAMP.parse(stamp, Instant::from);
            return Duration.between(made, now).abs().compareTo(DAILY) < 0;
        } catch (java.time.DateTimeException e) {
            return false;
        }
    }

    private void forgetOld(String prefix) {
        List<Path> copies = named(prefix);
        for (Path old : copies.subList(0, Math.max(0, copies.size() - KEPT))) {
            try {
                Files.delete(old);
            } catch (IOException e) {
                throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, old, Reason.of(e));
            }
        }
    }

    private List<Path> named(String prefix) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(p -> p.getFileName().toString().startsWith(prefix)
                            && p.getFileName().toString().endsWith(".db"))
                    .sorted(Comparator.comparing(p -> p.getFileName().toString()))
                    .toList();
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, folder, Reason.of(e));
        }
    }
}
