/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;
import java.util.List;

/** What became of one file handed to {@link Filing}. */
public sealed interface FilingOutcome {

    /** The file that was handed in. */
    Path file();

    /**
     * Filed now.
     *
     * @param file the file
     * @param picture its entry
     * @param remarks what a person should look at: time conflicts, an assumed zone, an unknown planet; one sentence each
     */
    record Filed(Path file, ArchivedPicture picture, List<String> remarks) implements FilingOutcome {}

    /**
     * The same bytes are in the archive already; nothing was changed.
     *
     * @param file the file
     * @param picture the entry that holds them
     */
    record AlreadyThere(Path file, ArchivedPicture picture) implements FilingOutcome {}

    /**
     * Not filed; the file is untouched and nothing of it is in the archive.
     *
     * @param file the file
     * @param sentence which file, what is wrong, what to do
     */
    record Refused(Path file, String sentence) implements FilingOutcome {}
}
