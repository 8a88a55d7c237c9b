/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;

/** A FITS file read from front to back in blocks, unpacked on the way where gzip is round it. For one thread. */
final class FitsFile implements AutoCloseable {
    private static final int BLOCK = 2880;
    private static final int CARD = 80;
    private static final int MOST_HEADER_BYTES = BLOCK * 1500;

    /** Gzip can shrink a thousandfold: a few megabytes of it could keep a machine busy for hours. */
    private static final long MOST_UNPACKED_BYTES = 4_000_000_000L;

    private final InputStream in;
    private final boolean packed;
    private final long fileBytes;
    private long position;

    private FitsFile(InputStream in, boolean packed, long fileBytes) {
        this.in = in;
        this.packed = packed;
        this.fileBytes = fileBytes;
    }

    static boolean isGzip(byte[] firstBytes) {
        return firstBytes.length >= 3 && firstBytes[0] == 0x1f && firstBytes[1] == (byte) 0x8b && firstBytes[2] == 8;
    }

    static FitsFile open(Path file) throws IOException {
        InputStream raw = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        try {
            raw.mark(8);
            boolean packed = isGzip(raw.readNBytes(3));
            raw.reset();
            InputStream in = packed ? new BufferedInputStream(new GZIPInputStream(raw, 1 << 16), 1 << 16) : raw;
            return new FitsFile(in, packed, Files.size(file));
        } catch (IOException e) {
            raw.close();
            throw e;
        }
    }

    /**
     * The header that begins here.
     *
     * @return null at the end of the file, and where something that is no header follows
     * @throws IOException when the header is cut short or has no END
     */
    FitsHeader nextHeader() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        while (true) {
            byte[] block = in.readNBytes(BLOCK);
            position += block.length;
            if (bytes.size() == 0 && !startsHeader(block)) {
                return null;
            }
            int end = endCard(block);
            bytes.write(block, 0, block.length);
            if (end >= 0) {
                // A file that ends inside the blank part after END has no data, but its header is whole.
                return new FitsHeader(bytes.toByteArray());
            }
            if (block.length < BLOCK) {
                throw new IOException("it is cut short inside a header: there is no END");
            }
            if (bytes.size() > MOST_HEADER_BYTES) {
                throw new IOException("a header has no END");
            }
        }
    }

    private static boolean startsHeader(byte[] block) {
        if (block.length < CARD) {
            return false;
        }
        String start = new String(block, 0, 9, StandardCharsets.US_ASCII);
        return start.equals("SIMPLE  =") || start.equals("XTENSION=");
    }

    private static int endCard(byte[] block) {
        for (int at = 0; at + 3 <= block.length; at += CARD) {
            boolean end = block[at] == 'E' && block[at + 1] == 'N' && block[at + 2] == 'D';
            if (end && (at + 3 == block.length || block[at + 3] == ' ')) {
                return at;
            }
        }
        return -1;
    }

    /** Passes over the data of a header and its padding. */
    void skipData(FitsHeader header) throws IOException {
        long bytes = header.dataBytes();
        long padded = Math.addExact(bytes, (BLOCK - bytes % BLOCK) % BLOCK);
        if (packed && padded > MOST_UNPACKED_BYTES - position) {
            throw new IOException("unpacked it would be longer than " + MOST_UNPACKED_BYTES + " bytes");
        }
        long left = padded;
        while (left > 0) {
            long skipped = in.skip(left);
            if (skipped <= 0) {
                if (in.read() < 0) {
                    break;
                }
                skipped = 1;
            }
            left -= skipped;
        }
        position += padded - left;
        if (padded - left < bytes) {
            throw new IOException("it is cut short: " + (bytes - padded + left) + " bytes are missing");
        }
    }

    /** Fills the array from here on. */
    void read(byte[] target) throws IOException {
        int got = in.readNBytes(target, 0, target.length);
        position += got;
        if (got < target.length) {
            throw new EOFException("it is cut short after " + position + " bytes");
        }
    }

    void skip(long bytes) throws IOException {
        try {
            in.skipNBytes(bytes);
            position += bytes;
        } catch (EOFException e) {
            throw new IOException("it is cut short", e);
        }
    }

    /**
     * Whether so many bytes can follow from here; always true inside gzip, where only reading tells.
     */
    boolean canHold(long bytes) {
        return packed || position + bytes <= fileBytes;
    }

    long position() {
        return position;
    }

    long fileBytes() {
        return fileBytes;
    }

    boolean packed() {
        return packed;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
