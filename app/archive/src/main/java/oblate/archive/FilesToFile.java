/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Comparator;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import oblate.base.ProblemException;

/**
 * What is to be filed: the files named, and those in the folders named, without hidden ones, text notes, and the archive's own.
 *
 * @param byPath in order of path; with a problem where a folder cannot be searched
 */
record FilesToFile(Map<Path, Optional<ProblemException>> byPath) {

    static FilesToFile of(Iterable<Path> named, Path archive) {
        Map<Path, Optional<ProblemException>> found = new TreeMap<>(Comparator.comparing(Path::toString));
        for (Path path : named) {
            if (Files.isDirectory(path)) {
                search(behindLink(path), archive, found);
            } else {
                found.put(path, Optional.empty());
            }
        }
        return new FilesToFile(found);
    }

    /** Links met on the way are not followed, but one that was named is meant. */
    private static Path behindLink(Path folder) {
        try {
            return Files.isSymbolicLink(folder) ? folder.toRealPath() : folder;
        } catch (IOException e) {
            return folder;
        }
    }

    private static void search(Path folder, Path archive, Map<Path, Optional<ProblemException>> found) {
        boolean insideArchive = folder.toAbsolutePath().normalize().startsWith(archive);
        try {
            Files.walkFileTree(folder, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult preVisitDirectory(Path directory, BasicFileAttributes attributes) {
                    boolean isArchive = directory.toAbsolutePath().normalize().equals(archive);
                    boolean skipped = !directory.equals(folder) && isHidden(directory) || isArchive && !insideArchive;
                    return skipped ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                    if (!isHidden(file) && !isNote(file) && Files.isRegularFile(file)) {
                        found.put(file, Optional.empty());
                    }
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFileFailed(Path file, IOException e) {
                    found.put(
                            file, Optional.of(new ProblemException(e, ArchiveProblem.CANNOT_READ, file, Reason.of(e))));
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            found.put(folder, Optional.of(new ProblemException(e, ArchiveProblem.CANNOT_READ, folder, Reason.of(e))));
        }
    }

    private static boolean isHidden(Path path) {
        return path.getFileName() != null && path.getFileName().toString().startsWith(".");
    }

    private static boolean isNote(Path path) {
        return path.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".txt");
    }
}
