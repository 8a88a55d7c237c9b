/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.disc.FitHints;
import oblate.sky.ApparentDisc;

/**
 * A picture to be worked on, from a file or an archive.
 *
 * @param name what to call it in tables
 * @param file where its bytes are
 * @param disc what the sky says is in it
 * @param timeSigmaS standard error of its time (s)
 * @param hints what is known for the fit
 * @param archived its entry when it comes from an archive
 */
record Subject(
        String name,
        Path file,
        ApparentDisc disc,
        double timeSigmaS,
        FitHints hints,
        Optional<ArchivedPicture> archived) {}
