/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.io.IOException;
import java.nio.file.Path;
import oblate.base.Plugin;

/** Extension point: a kind of file maps are written to. Its id is the file name's ending. Stateless and safe for many threads. */
public interface MapFormat extends Plugin {

    /** Whether its readers expect planetocentric latitudes where the user does not say. */
    boolean prefersCentric();

    /**
     * Writes a map.
     *
     * @param file a new file, in a folder that exists
     * @throws IOException when it cannot be written
     */
    void write(PlanetMap map, Path file) throws IOException;
}
