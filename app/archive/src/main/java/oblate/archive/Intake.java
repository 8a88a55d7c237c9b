/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;
import oblate.base.ProblemException;

/**
 * Brings a file's bytes into the archive: copied under a name in {@code incoming/}, written to the disk, compared, and only then given its
 * place in one step. Killed at any moment it leaves at most a leftover in {@code incoming/} or a whole file in its place.
 *
 * @param folder the archive's folder
 */
record Intake(ArchiveFolder folder) {
    private static final String PART = ".part";

    /** Copies a file into {@code incoming/}; the copy has the digest, or nothing is left. */
    Path copyIn(Path original, Hashing.Digest digest) {
        Path part = folder.incoming().resolve(UUID.randomUUID() + PART);
        try {
            Hashing.Digest copied = copy(original, part, digest.bytes());
            if (!copied.equals(digest)) {
                throw new ProblemException(ArchiveProblem.CHANGED_MEANWHILE, original);
            }
            if (!Hashing.of(part).equals(digest)) {
                throw new ProblemException(ArchiveProblem.COPY_DIFFERS, original);
            }
            return part;
        } catch (IOException e) {
            discard(part);
            throw new ProblemException(e, ArchiveProblem.CANNOT_COPY, original, folder.root(), Reason.of(e));
        } catch (ProblemException e) {
            discard(part);
            throw e;
        }
    }

    private static Hashing.Digest copy(Path original, Path part, long mostBytes) throws IOException {
        try (InputStream in = open(original);
                FileChannel channel = FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                OutputStream out = Channels.newOutputStream(channel)) {
            // A file that grows meanwhile is noticed by its digest; one byte more than before is enough for that.
            Hashing.Digest copied = Hashing.copy(new Limited(in, mostBytes + 1), out, Long.MAX_VALUE);
            channel.force(true);
            return copied;
        }
    }

    private static InputStream open(Path original) {
        try {
            return Files.newInputStream(original);
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_READ, original, Reason.of(e));
        }
    }

    /**
     * Gives a copy its place in a folder of pictures, under its name or, where that is taken by other bytes, under a numbered one. A file with the
     * same bytes that no row speaks of, left by an interrupted filing, is taken as it is.
     *
     * @param part the copy
     * @param digest its digest
     * @param into folder
     * @param safeName wished name
     * @param isEntered whether a path in the archive is in the catalog
     * @return the place
     */
    Path place(Path part, Hashing.Digest digest, Path into, String safeName, Predicate<String> isEntered) {
        ArchiveFolder.makeDurably(into);
        try {
            Set<String> taken = names(into);
            for (int number = 1; ; number++) {
                Path target = into.resolve(number == 1 ? safeName : FileNames.numbered(safeName, number));
                String name = target.getFileName().toString();
                if (!taken.contains(folded(name))) {
                    Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
                    ArchiveFolder.flush(into);
                    ArchiveFolder.flush(folder.incoming());
                    return target;
                }
                if (isSame(target, digest) && !isEntered.test(folder.relative(target))) {
                    discard(part);
                    return target;
                }
            }
        } catch (IOException e) {
            discard(part);
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, into, Reason.of(e));
        }
    }

    /** Puts a copy where the catalog has it; what stands there instead is set aside. */
    void putBack(Path part, Path target) {
        ArchiveFolder.makeDurably(target.getParent());
        try {
            if (Files.exists(target)) {
                setAside(target);
            }
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
            ArchiveFolder.flush(target.getParent());
        } catch (IOException e) {
            discard(part);
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, target, Reason.of(e));
        }
    }

    /** Moves a file of the archive into {@code strays/}, under its own path there or a numbered one. */
    Path setAside(Path file) {
        Path wished = folder.strays().resolve(folder.relative(file));
        ArchiveFolder.makeDurably(wished.getParent());
        try {
            String name = wished.getFileName().toString();
            Set<String> taken = names(wished.getParent());
            Path target = wished;
            for (int number = 2; taken.contains(folded(target.getFileName().toString())); number++) {
                target = wished.resolveSibling(FileNames.numbered(name, number));
            }
            Files.move(file, target, StandardCopyOption.ATOMIC_MOVE);
            ArchiveFolder.flush(target.getParent());
            return target;
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, wished, Reason.of(e));
        }
    }

    /** Leftovers of interrupted filings. */
    Set<Path> leftovers() {
        Set<Path> found = new HashSet<>();
        if (!Files.isDirectory(folder.incoming())) {
            return found;
        }
        try (Stream<Path> files = Files.list(folder.incoming())) {
            files.filter(p -> p.getFileName().toString().endsWith(PART)).forEach(found::add);
            return found;
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_READ, folder.incoming(), Reason.of(e));
        }
    }

    /** Deletes a copy that is not wanted; one that cannot be deleted now goes at the next filing. */
    static void discard(Path part) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException e) {
            // It is a leftover then, and told by the check.
            return;
        }
    }

    /** Has a file's bytes written to the disk. */
    static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    private static boolean isSame(Path file, Hashing.Digest digest) throws IOException {
        return Files.isRegularFile(file)
                && Files.size(file) == digest.bytes()
                && Hashing.of(file).equals(digest);
    }

    private static Set<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            Set<String> names = new HashSet<>();
            files.forEach(p -> names.add(folded(p.getFileName().toString())));
            return names;
        }
    }

    /** Names that some systems take for the same. */
    private static String folded(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    /** The first bytes of a stream. */
    private static final class Limited extends InputStream {
        private final InputStream in;
        private long left;

        Limited(InputStream in, long most) {
            this.in = in;
            this.left = most;
        }

        @Override
        public int read() throws IOException {
            if (left == 0) {
                return -1;
            }
            left--;
            return in.read();
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            if (left == 0) {
                return -1;
            }
            int n = in.read(buffer, offset, (int) Math.min(length, left));
            left -= Math.max(n, 0);
            return n;
        }
    }
}
