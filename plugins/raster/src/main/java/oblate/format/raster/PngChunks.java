/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import com.drew.lang.ByteArrayReader;
import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.InflaterInputStream;

/** Walks the chunks of a PNG file: size, sample layout and facts, without inflating pixels. For one thread and one file. */
final class PngChunks {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    private static final int LONGEST_FACT_CHUNK = 4_000_000;
    private static final int LONGEST_TEXT = 1_000_000;

    private final FactList facts = new FactList();
    private int widthPx;
    private int heightPx;
    private int bitDepth;
    private int colourType = -1;
    private boolean greyPalette;
    private boolean palette;
    private Orientation orientation = Orientation.AS_STORED;

    private PngChunks() {}

    static boolean signed(byte[] firstBytes) {
        return firstBytes.length >= 8 && Arrays.equals(firstBytes, 0, 8, SIGNATURE, 0, 8);
    }

    /**
     * Reads the whole run of chunks.
     *
     * @param in the file from its first byte
     * @param checkPixels whether the check sums of the pixel chunks are computed too, which reads the whole file
     * @throws IOException with one plain sentence part when the file is no good PNG
     */
    static PngChunks read(InputStream in, boolean checkPixels) throws IOException {
        DataInputStream data = new DataInputStream(in);
        byte[] signature = data.readNBytes(8);
        if (!signed(signature)) {
            throw new IOException("it lacks the PNG signature");
        }
        PngChunks chunks = new PngChunks();
        boolean pixels = false;
        while (true) {
            int length;
            byte[] name = new byte[4];
            try {
                length = data.readInt();
                data.readFully(name);
            } catch (EOFException e) {
                throw new IOException("it is cut short: the closing chunk IEND is missing", e);
            }
            String type = new String(name, StandardCharsets.US_ASCII);
            if (length < 0 || !type.matches("[A-Za-z]{4}")) {
                throw new IOException("what follows is no PNG chunk");
            }
            if (chunks.colourType < 0 && !type.equals("IHDR")) {
                throw new IOException("it does not begin with the chunk IHDR");
            }
            if (type.equals("IEND")) {
                skip(data, length + 4L);
                break;
            }
            pixels |= type.equals("IDAT");
            chunks.chunk(data, name, type, length, checkPixels);
        }
        if (!pixels) {
            throw new IOException("it has no pixel chunk IDAT");
        }
        if (chunks.colourType == 3 && !chunks.palette) {
            throw new IOException("it has no palette");
        }
        return chunks;
    }

    private void chunk(DataInputStream data, byte[] name, String type, int length, boolean checkPixels)
            throws IOException {
        boolean critical = Character.isUpperCase(type.charAt(0));
        boolean wanted = type.equals("IHDR")
                || type.equals("PLTE")
                || (!critical && length <= LONGEST_FACT_CHUNK && type.matches("eXIf|tEXt|zTXt|iTXt|tIME|pHYs"));
        if (!wanted && !(checkPixels && type.equals("IDAT"))) {
            skip(data, length + 4L);
            return;
        }
        if (critical && length > LONGEST_FACT_CHUNK && !type.equals("IDAT")) {
            throw new IOException("its chunk " + type + " is " + length + " bytes long");
        }
        CRC32 sum = new CRC32();
        sum.update(name);
        byte[] body = new byte[wanted ? length : Math.min(length, 65_536)];
        try {
            for (int left = length; left > 0; left -= body.length) {
                int part = Math.min(left, body.length);
                data.readFully(body, 0, part);
                sum.update(body, 0, part);
            }
            boolean right = data.readInt() == (int) sum.getValue();
            if (!right && critical) {
                throw new IOException("the check sum of its chunk " + type + " is wrong");
            }
            if (right && wanted) {
                take(type, body);
            }
        } catch (EOFException e) {
            throw new IOException("it is cut short in the chunk " + type, e);
        }
    }

    private static void skip(InputStream in, long bytes) throws IOException {
        try {
            in.skipNBytes(bytes);
        } catch (EOFException e) {
            throw new IOException("it is cut short", e);
        }
    }

    private void take(String type, byte[] body) throws IOException {
        switch (type) {
            case "IHDR" -> imageHeader(body);
            case "PLTE" -> {
                palette = true;
                greyPalette = true;
                for (int i = 0; i + 2 < body.length; i += 3) {
                    greyPalette &= body[i] == body[i + 1] && body[i] == body[i + 2];
                }
            }
            case "eXIf" -> orientation = ExifFacts.add(new ByteArrayReader(body), facts);
            case "tIME" -> {
                if (body.length == 7) {
                    int year = ((body[0] & 0xff) << 8) | (body[1] & 0xff);
                    facts.add(
                            "PNG",
                            "tIME",
                            String.format(
                                    java.util.Locale.ROOT,
                                    "%04d-%02d-%02dT%02d:%02d:%02dZ",
                                    year,
                                    body[2],
                                    body[3],
                                    body[4],
                                    body[5],
                                    body[6]));
                }
            }
            case "tEXt", "zTXt", "iTXt" -> text(type, body);
            default -> {
                // resolution and the like say nothing that is kept
            }
        }
    }

    private void imageHeader(byte[] body) throws IOException {
        if (body.length != 13 || colourType >= 0) {
            throw new IOException("its chunk IHDR is malformed");
        }
        DataInputStream header = new DataInputStream(new ByteArrayInputStream(body));
        widthPx = header.readInt();
        heightPx = header.readInt();
        bitDepth = header.readUnsignedByte();
        int type = header.readUnsignedByte();
        if (widthPx < 1 || heightPx < 1) {
            throw new IOException("it claims " + widthPx + " × " + heightPx + " pixels");
        }
        String layout = type + "/" + bitDepth;
        if (!layout.matches("0/(1|2|4|8|16)|3/(1|2|4|8)|[246]/(8|16)")
                || body[10] != 0
                || body[11] != 0
                || (body[12] & 0xfe) != 0) {
            throw new IOException("its colour type " + type + " with " + bitDepth + " bits does not exist in PNG");
        }
        colourType = type;
    }

    /** Keyword and text in the three forms PNG has; compressed text is inflated up to a bound. */
    private void text(String type, byte[] body) {
        int end = indexOfZero(body, 0);
        if (end < 1 || end > 79) {
            return;
        }
        String keyword = new String(body, 0, end, StandardCharsets.ISO_8859_1);
        int start = end + 1;
        boolean packed = type.equals("zTXt");
        Charset charset = type.equals("iTXt") ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1;
        if (packed) {
            start++;
        } else if (type.equals("iTXt")) {
            packed = start < body.length && body[start] == 1;
            int language = indexOfZero(body, start + 2);
            int translated = language < 0 ? -1 : indexOfZero(body, language + 1);
            if (translated < 0) {
                return;
            }
            start = translated + 1;
        }
        if (start > body.length) {
            return;
        }
        byte[] text = packed ? inflate(body, start) : Arrays.copyOfRange(body, start, body.length);
        if (keyword.equals("XML:com.adobe.xmp")) {
            XmpFacts.add(text, facts);
        } else if (text.length > 0) {
            facts.add("PNG", keyword, new String(text, charset));
        }
    }

    private static byte[] inflate(byte[] body, int start) {
        try (InflaterInputStream in =
                new InflaterInputStream(new ByteArrayInputStream(body, start, body.length - start))) {
            return in.readNBytes(LONGEST_TEXT);
        } catch (IOException e) {
            return new byte[0]; // a text that cannot be inflated is no fact
        }
    }

    private static int indexOfZero(byte[] bytes, int from) {
        for (int i = Math.max(0, from); i < bytes.length; i++) {
            if (bytes[i] == 0) {
                return i;
            }
        }
        return -1;
    }

    int widthPx() {
        return widthPx;
    }

    int heightPx() {
        return heightPx;
    }

    int bitDepth() {
        return colourType == 3 ? 8 : bitDepth;
    }

    int channels() {
        boolean grey = colourType == 0 || colourType == 4 || (colourType == 3 && greyPalette);
        return grey ? 1 : 3;
    }

    Orientation orientation() {
        return orientation;
    }

    FactList facts() {
        return facts;
    }
}
