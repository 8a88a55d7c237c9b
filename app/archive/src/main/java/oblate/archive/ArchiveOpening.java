/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;

/** Makes and opens archives, and looks first whether the folder is fit for that. */
final class ArchiveOpening {
    private ArchiveOpening() {}

    static Archive create(Path folder, List<PlanetModel> planets, Clock clock) {
        ArchiveFolder made = vacant(folder);
        // The catalog first: a folder with an unfinished one can be opened, a folder with other things and no catalog
        // could not.
        Catalog catalog = CatalogOpening.inFolder(made.root(), false, CatalogOpening.PATIENCE, clock);
        made.make();
        return new Archive(made, catalog, planets, clock);
    }

    static Archive open(Path folder, List<PlanetModel> planets, Clock clock) {
        boolean readOnly = Files.isDirectory(folder)
                && !(Files.isWritable(folder) && isWritableIfThere(folder.resolve(CatalogOpening.FILE_NAME)));
        return open(folder, planets, clock, readOnly, CatalogOpening.PATIENCE);
    }

    private static boolean isWritableIfThere(Path file) {
        return !Files.exists(file) || Files.isWritable(file);
    }

    static Archive open(Path folder, List<PlanetModel> planets, Clock clock, boolean readOnly, Duration patience) {
        ArchiveFolder opened = ArchiveFolder.of(folder);
        if (!Files.isRegularFile(opened.root().resolve(CatalogOpening.FILE_NAME))) {
            throw new ProblemException(ArchiveProblem.NOT_AN_ARCHIVE, folder);
        }
        if (readOnly && hasUnfinishedWork(opened.root())) {
            throw new ProblemException(
                    ArchiveProblem.CANNOT_WRITE,
                    opened.root(),
                    "the folder is read-only and the catalog was not closed; copy the archive to where it can be written");
        }
        return new Archive(opened, CatalogOpening.inFolder(opened.root(), readOnly, patience, clock), planets, clock);
    }

    private static boolean hasUnfinishedWork(Path folder) {
        try {
            Path log = folder.resolve(CatalogOpening.FILE_NAME + "-wal");
            return Files.exists(log) && Files.size(log) > 0;
        } catch (IOException e) {
            throw new ProblemException(e, ArchiveProblem.CANNOT_READ, folder, Reason.of(e));
        }
    }

    static Archive openGroup(Path folder, GroupCatalog group, List<PlanetModel> planets, Clock clock) {
        ArchiveFolder opened = ArchiveFolder.of(folder);
        Catalog catalog = CatalogOpening.ofGroup(group);
        opened.make();
        return new Archive(opened, catalog, planets, clock);
    }

    /**
     * A folder for a new archive, made when it is not there.
     *
     * @throws ProblemException with {@link ArchiveProblem#FOLDER_NOT_EMPTY} or {@link ArchiveProblem#CANNOT_WRITE}
     */
    static ArchiveFolder vacant(Path folder) {
        ArchiveFolder made = ArchiveFolder.of(folder);
        if (Files.exists(made.root()) && !(Files.isDirectory(made.root()) && ArchiveFolder.isVacant(made.root()))) {
            throw new ProblemException(ArchiveProblem.FOLDER_NOT_EMPTY, folder);
        }
        ArchiveFolder.makeDurably(made.root());
        return made;
    }
}
