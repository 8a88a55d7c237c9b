/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import oblate.base.ProblemException;
import oblate.base.Progress;

/**
 * Writes an archive into one file, reads that back, and only then gives it its name.
 *
 * @param archive the archive
 * @param catalog its catalog
 */
record BackupWriting(Archive archive, Catalog catalog) {

    BackupReport write(Path file, Progress progress) {
        if (catalog.dialect() != Dialect.SQLITE) {
            throw new ProblemException(ArchiveProblem.NOT_FOR_GROUP, catalog.name());
        }
        Path target = file.toAbsolutePath().normalize();
        if (Files.exists(target)) {
            throw new ProblemException(ArchiveProblem.FILE_EXISTS, file);
        }
        Path part = target.resolveSibling("." + target.getFileName() + ".part");
        Path copy = target.resolveSibling("." + target.getFileName() + ".catalog");
        try {
            // The catalog is copied first: every picture in the copy has its file by then, since files come before
            // rows.
            CatalogCopies.copy(catalog, copy);
            List<BackupFile.Item> items = fill(part, copy, progress);
            Intake.force(part);
            BackupReport report = new BackupReading(part).verify(items);
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
            ArchiveFolder.flush(target.getParent());
            return new BackupReport(target, report.pictures(), report.bytes());
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, file, Reason.of(e));
        } finally {
            Intake.discard(part);
            Intake.discard(copy);
        }
    }

    private List<BackupFile.Item> fill(Path part, Path catalogCopy, Progress progress) throws IOException {
        List<ArchivedPicture> pictures = pictures(catalogCopy);
        List<BackupFile.Item> items = new ArrayList<>();
        try (OutputStream bytes = new BufferedOutputStream(
                        Files.newOutputStream(part, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING));
                ZipOutputStream zip = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            zip.setLevel(Deflater.BEST_SPEED);
            items.add(add(zip, BackupFile.CATALOG, catalogCopy));
            int done = 0;
            for (ArchivedPicture picture : pictures) {
                if (progress.isCancelled()) {
                    throw new ProblemException(ArchiveProblem.CANCELLED, part.getFileName());
                }
                BackupFile.Item item = add(zip, picture.relativePath(), archive.fileOf(picture));
                if (!item.digest().sha256().equals(picture.sha256())) {
                    throw new ProblemException(
                            ArchiveProblem.CANNOT_READ,
                            picture.relativePath(),
                            "it has other bytes than when it was filed; run: oblate check");
                }
                items.add(item);
                progress.report(++done, pictures.size(), picture.name());
            }
            zip.putNextEntry(new ZipEntry(BackupFile.LIST));
            for (BackupFile.Item item : items) {
                zip.write(item.line().getBytes(StandardCharsets.UTF_8));
            }
            zip.closeEntry();
        }
        return items;
    }

    /** The pictures of the copy: another program may have filed more since. */
    private static List<ArchivedPicture> pictures(Path catalogCopy) {
        try (Catalog copied = Catalog.sqlite(new SqliteFile(catalogCopy, true, CatalogOpening.PATIENCE))) {
            return copied.read(handle -> new PictureRows(Dialect.SQLITE).find(handle, PictureSearch.all()));
        }
    }

    private static BackupFile.Item add(ZipOutputStream zip, String path, Path file) throws IOException {
        zip.putNextEntry(new ZipEntry(path));
        try (InputStream in = open(path, file)) {
            Hashing.Digest digest = Hashing.copy(in, zip, Long.MAX_VALUE);
            zip.closeEntry();
            return new BackupFile.Item(path, digest);
        }
    }

    private static InputStream open(String path, Path file) {
        try {
            return Files.newInputStream(file);
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_READ, path, Reason.of(e) + "; run: oblate check");
        }
    }
}
