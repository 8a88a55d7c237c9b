/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import oblate.image.CaptureTime;

/**
 * What filing a file would make of it, found without reading its pixels.
 *
 * @param file the file
 * @param refusal why it would be refused, one sentence; empty when nothing speaks against it so far
 * @param time when it was taken; empty when that is not known
 * @param whyNoTime when {@code time} is empty for a picture that can be read: one sentence with the ways to give one
 * @param planetId the planet; empty when not known
 * @param remarks what a person should look at, one sentence each
 */
public record FilingForecast(
        Path file,
        Optional<String> refusal,
        Optional<CaptureTime> time,
        Optional<String> whyNoTime,
        Optional<String> planetId,
        List<String> remarks) {

    /** Copies the list. */
    public FilingForecast {
        remarks = List.copyOf(remarks);
    }

    static FilingForecast refused(Path file, String sentence) {
        return new FilingForecast(
                file, Optional.of(sentence), Optional.empty(), Optional.empty(), Optional.empty(), List.of());
    }
}
