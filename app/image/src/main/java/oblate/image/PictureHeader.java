/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.util.List;
import java.util.Optional;

/**
 * What a file says before its pixels are decoded.
 *
 * @param formatId id of the {@link ImageFormat} that read it
 * @param widthPx width as displayed (px)
 * @param heightPx height as displayed (px)
 * @param channels 1 grey, 3 colour (alpha is dropped, palettes are resolved)
 * @param bitsPerSample 1…64
 * @param floating true for floating-point samples
 * @param facts everything it says, in file order
 */
public record PictureHeader(
        String formatId,
        int widthPx,
        int heightPx,
        int channels,
        int bitsPerSample,
        boolean floating,
        List<HeaderFact> facts) {

    /** Copies the list. */
    public PictureHeader {
        facts = List.copyOf(facts);
    }

    /** First fact with a group and key. */
    public Optional<String> fact(String group, String key) {
        return facts.stream()
                .filter(f -> f.group().equals(group) && f.key().equals(key))
                .map(HeaderFact::value)
                .findFirst();
    }
}
