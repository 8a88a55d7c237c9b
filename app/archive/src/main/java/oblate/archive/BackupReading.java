/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
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
    private static final int MOST_LIST_BYTES = 1 << 27;

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

    /**
     * Unpacks into an empty folder. The catalog comes last: until it is there the folder is no archive, so a crash cannot leave half a one. When
     * it fails or is stopped, what was unpacked goes again.
     */
    BackupReport restore(ArchiveFolder into, Progress progress) {
        List<Path> begun = new ArrayList<>();
        try (ZipFile zip = open()) {
            List<BackupFile.Item> items = items(zip);
            items.forEach(item -> place(into, item));
            into.make();
            Path part = into.incoming().resolve("restored.part");
            long bytes = 0;
            for (BackupFile.Item item : catalogLast(items)) {
                if (progress.isCancelled()) {
                    throw new ProblemException(ArchiveProblem.CANCELLED, into.root());
                }
                Path place = place(into, item);
                begun.add(place);
                bytes += unpackTo(zip, item, part, place);
                progress.report(begun.size(), items.size(), item.path());
            }
            ArchiveFolder.flush(into.root());
            return new BackupReport(into.root(), items.size() - 1, bytes);
        } catch (IOException e) {
            takeBack(into, begun);
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, into.root(), Reason.of(e));
        } catch (ProblemException e) {
            takeBack(into, begun);
            throw e;
        }
    }

    /** Deletes the files begun and the folders made for them. */
    private static void takeBack(ArchiveFolder into, List<Path> begun) {
        begun.forEach(Intake::discard);
        List.of(into.pictures(), into.backups(), into.incoming()).forEach(BackupReading::discardEmpty);
    }

    private static void discardEmpty(Path folder) {
        if (!Files.isDirectory(folder)) {
            return;
        }
        try (Stream<Path> entries = Files.walk(folder)) {
            // What lies deeper comes first; a folder that is not empty stays.
            entries.sorted(Comparator.reverseOrder()).filter(Files::isDirectory).forEach(Intake::discard);
        } catch (IOException | UncheckedIOException e) {
            return; // empty folders do no harm
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

    private List<BackupFile.Item> items(ZipFile zip) {
        ZipEntry list = zip.getEntry(BackupFile.LIST);
        if (list == null) {
            throw new ProblemException(ArchiveProblem.NOT_A_BACKUP, file, "it has no " + BackupFile.LIST);
        }
        List<BackupFile.Item> items = new ArrayList<>();
        Set<String> paths = new HashSet<>();
        for (String line : text(zip, list).lines().toList()) {
            BackupFile.Item item = BackupFile.Item.of(line);
            if (item == null || !paths.add(item.path())) {
                throw new ProblemException(
                        ArchiveProblem.BROKEN_BACKUP,
                        file,
                        BackupFile.LIST,
                        "line " + (items.size() + 1) + " cannot be read");
            }
            items.add(item);
        }
        if (!paths.contains(BackupFile.CATALOG)) {
            throw new ProblemException(ArchiveProblem.NOT_A_BACKUP, file, "it has no " + BackupFile.CATALOG);
        }
        return items;
    }

    private String text(ZipFile zip, ZipEntry list) {
        try (InputStream in = zip.getInputStream(list)) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            Hashing.copy(in, bytes, MOST_LIST_BYTES);
            return bytes.toString(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.BROKEN_BACKUP, file, BackupFile.LIST, Reason.of(e));
        }
    }

    /** Unpacks under another name first: what has its own name is whole. */
    private long unpackTo(ZipFile zip, BackupFile.Item item, Path part, Path place) throws IOException {
        ArchiveFolder.makeDurably(place.getParent());
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
