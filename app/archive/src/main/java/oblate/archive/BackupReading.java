/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import oblate.base.ProblemException;
import oblate.base.Progress;

/**
 * Reads a backup's file back, trusting nothing in it: sizes are checked while unpacking, paths stay in the archive, digests must agree.
 *
 * @param file the backup
 */
record BackupReading(Path file) {
    private static final int MOST_FILES = 10_000_000;

    /** Compares a backup with what was meant to go into it. */
    BackupReport verify(List<BackupFile.Item> meant) {
        try (ZipFile zip = open()) {
            List<BackupFile.Item> items = items(zip);
            if (!items.equals(meant)) {
                throw new ProblemException(
                        ArchiveProblem.BROKEN_BACKUP, file, BackupFile.LIST, "other files than were written");
            }
            long bytes = 0;
            for (BackupFile.Item item : items) {
                bytes += unpack(zip, item, OutputStream.nullOutputStream());
            }
            return new BackupReport(file, items.size() - 1, bytes);
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.BROKEN_BACKUP, file, "its end", Reason.of(e));
        }
    }

    /** Unpacks into an empty folder. The catalog comes last: until it is there the folder is no archive, so a crash cannot leave half a one. */
    BackupReport restore(ArchiveFolder into, Progress progress) {
        try (ZipFile zip = open()) {
            List<BackupFile.Item> items = items(zip);
            into.make();
            long bytes = 0;
            int done = 0;
            for (BackupFile.Item item : catalogLast(items)) {
                if (progress.isCancelled()) {
                    throw new ProblemException(ArchiveProblem.CANCELLED, into.root());
                }
                bytes += unpackTo(zip, item, place(into, item));
                progress.report(++done, items.size(), item.path());
            }
            return new BackupReport(into.root(), items.size() - 1, bytes);
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, into.root(), Reason.of(e));
        }
    }

    private static List<BackupFile.Item> catalogLast(List<BackupFile.Item> items) {
        List<BackupFile.Item> ordered = new ArrayList<>(items);
        ordered.sort((a, b) ->
                Boolean.compare(a.path().equals(BackupFile.CATALOG), b.path().equals(BackupFile.CATALOG)));
        return ordered;
    }

    private Path place(ArchiveFolder into, BackupFile.Item item) {
        boolean fits = item.path().equals(BackupFile.CATALOG) || item.path().startsWith(ArchiveFolder.PICTURES + "/");
        Optional<Path> place = into.inside(item.path());
        if (!fits
                || place.isEmpty()
                || !(item.path().equals(BackupFile.CATALOG) || place.get().startsWith(into.pictures()))) {
            throw new ProblemException(
                    ArchiveProblem.BROKEN_BACKUP, file, item.path(), "the path leads out of the archive");
        }
        return place.get();
    }

    private ZipFile open() {
        try {
            return new ZipFile(file.toFile(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.NOT_A_BACKUP, file, Reason.of(e));
        }
    }

    private List<BackupFile.Item> items(ZipFile zip) throws IOException {
        ZipEntry list = zip.getEntry(BackupFile.LIST);
        if (list == null) {
            throw new ProblemException(ArchiveProblem.NOT_A_BACKUP, file, "it has no " + BackupFile.LIST);
        }
        List<BackupFile.Item> items = new ArrayList<>();
        Set<String> paths = new HashSet<>();
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(zip.getInputStream(list), StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                BackupFile.Item item = BackupFile.Item.of(line);
                if (item == null || !paths.add(item.path()) || items.size() >= MOST_FILES) {
                    throw new ProblemException(
                            ArchiveProblem.BROKEN_BACKUP,
                            file,
                            BackupFile.LIST,
                            "line " + (items.size() + 1) + " cannot be read");
                }
                items.add(item);
            }
        }
        if (!paths.contains(BackupFile.CATALOG)) {
            throw new ProblemException(ArchiveProblem.NOT_A_BACKUP, file, "it has no " + BackupFile.CATALOG);
        }
        return items;
    }

    /** Unpacks under another name first: what has its own name is whole. */
    private long unpackTo(ZipFile zip, BackupFile.Item item, Path place) throws IOException {
        ArchiveFolder.makeDurably(place.getParent());
        Path part = place.resolveSibling(place.getFileName() + ".part");
        try {
            long bytes;
            try (FileChannel channel = FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                    OutputStream out = Channels.newOutputStream(channel)) {
                bytes = unpack(zip, item, out);
                channel.force(true);
            }
            Files.move(part, place, StandardCopyOption.ATOMIC_MOVE);
            return bytes;
        } finally {
            Intake.discard(part);
        }
    }

    private long unpack(ZipFile zip, BackupFile.Item item, OutputStream out) {
        ZipEntry entry = zip.getEntry(item.path());
        if (entry == null) {
            throw new ProblemException(ArchiveProblem.BROKEN_BACKUP, file, item.path(), "it is listed but not there");
        }
        try (InputStream in = zip.getInputStream(entry)) {
            Hashing.Digest digest = Hashing.copy(in, out, item.digest().bytes());
            if (!digest.equals(item.digest())) {
                throw new ProblemException(ArchiveProblem.BROKEN_BACKUP, file, item.path(), "its SHA-256 is another");
            }
            return digest.bytes();
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.BROKEN_BACKUP, file, item.path(), Reason.of(e));
        }
    }
}
