package oblate.archive;

import java.nio.file.Path;
import java.util.List;
import oblate.base.Progress;
import oblate.image.CaptureTimes;
import oblate.image.PictureReader;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/**
 * Takes picture files into an archive: reads, finds the time, copies unaltered under the night, verifies, and enters it in the catalog.
 *
 * <p>Idempotent: the same bytes are one picture however often and under whatever name they come. Killed at any moment it leaves no half picture.
 */
public final class Filing {
    private final Archive archive;

    /**
     * @param archive where to
     * @param reader reads the files
     * @param times finds their times
     * @param sky computes the central meridians
     * @param planets known planets
     */
    public Filing(Archive archive, PictureReader reader, CaptureTimes times, Sky sky, List<PlanetModel> planets) {
        this.archive = archive;
    }

    /**
     * Files files and folders (searched through, hidden files left alone), one after the other; one bad file costs only itself.
     *
     * @param progress told per file; cancelling stops between files
     * @return one outcome per file, in order of path
     */
    public List<FilingOutcome> file(List<Path> paths, FilingFacts facts, Progress progress) {
        throw new UnsupportedOperationException(archive + "");
    }
}
