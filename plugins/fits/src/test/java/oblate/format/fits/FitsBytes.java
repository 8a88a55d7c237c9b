/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** FITS files put together by hand, card by card and byte by byte, by the text of the standard. */
final class FitsBytes {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    /** Adds a header; each card is written as given, up to 80 characters. */
    FitsBytes header(String... cards) {
        StringBuilder text = new StringBuilder();
        for (String card : cards) {
            text.append(String.format(Locale.ROOT, "%-80s", card));
        }
        text.append(String.format(Locale.ROOT, "%-80s", "END"));
        while (text.length() % 2880 != 0) {
            text.append(' ');
        }
        out.writeBytes(text.toString().getBytes(StandardCharsets.US_ASCII));
        return this;
    }

    /** Adds data and pads them. */
    FitsBytes data(byte[] bytes) {
        out.writeBytes(bytes);
        out.writeBytes(new byte[(2880 - bytes.length % 2880) % 2880]);
        return this;
    }

    static String card(String key, Object value) {
        if (value instanceof String text) {
            return String.format(Locale.ROOT, "%-8s= '%-8s'", key, text);
        }
        String plain = value instanceof Boolean yes ? (yes ? "T" : "F") : String.valueOf(value);
        return String.format(Locale.ROOT, "%-8s= %20s", key, plain);
    }

    /** The mandatory cards of a primary image, and more. */
    FitsBytes image(int bitpix, int[] axes, String... more) {
        String[] cards = new String[3 + axes.length + more.length];
        cards[0] = card("SIMPLE", true);
        cards[1] = card("BITPIX", bitpix);
        cards[2] = card("NAXIS", axes.length);
        for (int i = 0; i < axes.length; i++) {
            cards[3 + i] = card("NAXIS" + (i + 1), axes[i]);
        }
        System.arraycopy(more, 0, cards, 3 + axes.length, more.length);
        return header(cards);
    }

    byte[] bytes() {
        return out.toByteArray();
    }

    Path write(Path folder, String name) throws IOException {
        return Files.write(folder.resolve(name), bytes());
    }
}
