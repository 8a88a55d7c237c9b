/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import oblate.base.ProblemException;

/** Lets one filing at a time work in an archive, among all programs; the system lets go of it when a program dies. */
final class FilingLock implements AutoCloseable {
    private static final int TRIES = 50;
    private static final long PAUSE_MS = 100;

    private final FileChannel channel;

    private FilingLock(FileChannel channel) {
        this.channel = channel;
    }

    static FilingLock take(ArchiveFolder folder) {
        return take(folder, TRIES);
    }

    static FilingLock take(ArchiveFolder folder, int tries) {
        ArchiveFolder.makeDurably(folder.incoming());
        Path file = folder.incoming().resolve("lock");
        try {
            FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            for (int i = 0; i < tries; i++) {
                if (isLocked(channel)) {
                    return new FilingLock(channel);
                }
                Thread.sleep(PAUSE_MS);
            }
            channel.close();
            throw new ProblemException(ArchiveProblem.FILING_BUSY, folder.root());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new ProblemException(e, ArchiveProblem.FILING_BUSY, folder.root());
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_WRITE, file, Reason.of(e));
        }
    }

    private static boolean isLocked(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException e) {
            return false; // held by this program
        }
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
