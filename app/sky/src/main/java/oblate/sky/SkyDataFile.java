/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A file a person put into the settings folder for the sky.
 *
 * @param file where it is
 * @param kind what its folder is for
 * @param fate what became of it
 * @param why the sentence to tell when it was refused, or why another is used instead; empty for the one in use
 */
public record SkyDataFile(Path file, Kind kind, Fate fate, Optional<String> why) {

    /** What a file is for; each has a folder of its own in the settings. */
    public enum Kind {
        /** Planet positions in the JPL binary layout. */
        EPHEMERIS("ephemeris"),
        /** Leap seconds, in either public format. */
        LEAP_SECONDS("leap-seconds");

        private final String folder;

        Kind(String folder) {
            this.folder = folder;
        }

        /** Name of the folder in the settings. */
        public String folder() {
            return folder;
        }
    }

    /** What became of a file. */
    public enum Fate {
        /** Everything is computed with it. */
        USED,
        /** Another one is newer. */
        SPARE,
        /** It did not stand the checks. */
        REFUSED
    }
}
