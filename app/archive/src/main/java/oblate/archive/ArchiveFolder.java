/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.stream.Stream;
import oblate.base.ProblemException;

/**
 * The layout of an archive's folder, and the few things done to it that must survive a loss of power.
 *
 * @param root the archive's folder, absolute
 */
record ArchiveFolder(Path root) {
    static final String PICTURES = "pictures";
    static final String BACKUPS = "backups";
    static final String INCOMING = "incoming";
    static final String STRAYS = "strays";

    static ArchiveFolder of(Path folder) {
        return new ArchiveFolder(folder.toAbsolutePath().normalize());
    }

    Path pictures() {
        return root.resolve(PICTURES);
    }

    Path backups() {
        return root.resolve(BACKUPS);
    }

    Path incoming() {
        return root.resolve(INCOMING);
    }

    Path strays() {
        return root.resolve(STRAYS);
    }

    /** A file of the archive by its path in the catalog, or empty when that path leads out of the archive or is none. */
    Optional<Path> inside(String relativePath) {
        try {
            Path file = root.resolve(relativePath.replace(
                            '/', root.getFileSystem().getSeparator().charAt(0)))
                    .normalize();
            return file.startsWith(root) && !file.equals(root) ? Optional.of(file) : Optional.empty();
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    /** Path of a file below the root, with forward slashes. */
    String relative(Path file) {
        return root.relativize(file).toString().replace('\\', '/');
    }

    /** Makes the folders of a new archive. */
    void make() {
        makeDurably(pictures());
        makeDurably(backups());
        makeDurably(incoming());
    }

    /** Makes a folder and those above it, and has each new one written to the disk. */
    static void makeDurably(Path folder) {
        Deque<Path> missing = new ArrayDeque<>();
        for (Path p = folder; p != null && !Files.isDirectory(p); p = p.getParent()) {
            missing.push(p);
        }
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, folder, Reason.of(e));
        }
        for (Path made : missing) {
            if (made.getParent() != null) {
                flush(made.getParent());
            }
        }
    }

    /** Has a folder's list of names written to the disk, where the system can do that. */
    static void flush(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // Some systems cannot open a folder; they write its names by themselves.
            return;
        }
    }

    /** Whether nothing but hidden files is in a folder. */
    static boolean isVacant(Path folder) {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.allMatch(p -> p.getFileName().toString().startsWith("."));
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, folder, Reason.of(e));
        }
    }
}
