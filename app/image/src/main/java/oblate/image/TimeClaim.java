/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One statement about when a picture was taken, as its source makes it.
 *
 * @param source kind of source
 * @param place where exactly, e.g. "DATE-AVG", "DateTimeOriginal", "file name", "note.txt line 2"
 * @param originalText the text as it stands there
 * @param stated the clock reading
 * @param offset its zone; empty when the source gives none (it is then never taken for UTC in silence)
 * @param meaning start, middle or end, or unstated
 * @param exposureS length of the capture as the same source gives it (s)
 * @param precisionS half the last digit given (s): 0.5 for whole seconds, 3 for tenths of a minute
 */
public record TimeClaim(
        TimeSource source,
        String place,
        String originalText,
        LocalDateTime stated,
        Optional<ZoneOffset> offset,
        TimeMeaning meaning,
        OptionalDouble exposureS,
        double precisionS) {}
