/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import java.io.EOFException;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** The numbers of the first directory of a TIFF or BigTIFF file, and how many directories there are. Immutable once read. */
final class TiffTags {
    static final int WIDTH = 256;
    static final int HEIGHT = 257;
    static final int BITS = 258;
    static final int COMPRESSION = 259;
    static final int PHOTOMETRIC = 262;
    static final int STRIP_OFFSETS = 273;
    static final int ORIENTATION = 274;
    static final int SAMPLES = 277;
    static final int ROWS_PER_STRIP = 278;
    static final int STRIP_BYTES = 279;
    static final int PLANAR = 284;
    static final int PREDICTOR = 317;
    static final int COLOUR_MAP = 320;
    static final int TILE_WIDTH = 322;
    static final int TILE_HEIGHT = 323;
    static final int TILE_OFFSETS = 324;
    static final int TILE_BYTES = 325;
    static final int EXTRA_SAMPLES = 338;
    static final int SAMPLE_FORMAT = 339;

    /** Tags that decide which samples come out. */
    private static final Set<Integer> LAYOUT = Set.of(
            WIDTH,
            HEIGHT,
            BITS,
            COMPRESSION,
            PHOTOMETRIC,
            STRIP_OFFSETS,
            ORIENTATION,
            SAMPLES,
            ROWS_PER_STRIP,
            STRIP_BYTES,
            PLANAR,
            PREDICTOR,
            COLOUR_MAP,
            TILE_WIDTH,
            TILE_HEIGHT,
            TILE_OFFSETS,
            TILE_BYTES,
            EXTRA_SAMPLES,
            SAMPLE_FORMAT);

    private static final int MOST_PAGES = 1000;
    private static final int MOST_VALUES = 4_000_000;

    private final Map<Integer, long[]> values = new HashMap<>();
    private final RandomAccessFile file;
    private final ByteOrder order;
    private final boolean big;
    private int pages;

    private TiffTags(RandomAccessFile file, ByteOrder order, boolean big) {
        this.file = file;
        this.order = order;
        this.big = big;
    }

    static boolean begins(byte[] b) {
        if (b.length < 8) {
            return false;
        }
        boolean little = b[0] == 'I' && b[1] == 'I' && (b[2] == 42 || b[2] == 43) && b[3] == 0;
        boolean bigEnd = b[0] == 'M' && b[1] == 'M' && b[2] == 0 && (b[3] == 42 || b[3] == 43);
        return little || bigEnd;
    }

    /**
     * Reads the first directory.
     *
     * @throws IOException with one plain sentence part when the file is no good TIFF
     */
    static TiffTags read(RandomAccessFile file) throws IOException {
        byte[] start = new byte[16];
        int length = file.read(start);
        if (length < 8 || !begins(start)) {
            throw new IOException("it lacks the TIFF signature");
        }
        ByteOrder order = start[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
        ByteBuffer head = ByteBuffer.wrap(start).order(order);
        boolean big = head.getShort(2) == 43;
        TiffTags tags = new TiffTags(file, order, big);
        long first = big ? head.getLong(8) : head.getInt(4) & 0xffffffffL;
        try {
            tags.walk(first);
        } catch (EOFException e) {
            throw new IOException("it is cut short: its directory of tags is missing or incomplete", e);
        }
        return tags;
    }

    private void walk(long first) throws IOException {
        Set<Long> seen = new HashSet<>();
        long at = first;
        while (at != 0 && pages < MOST_PAGES && seen.add(at)) {
            if (at < 0 || at >= file.length()) {
                if (pages > 0) {
                    return; // only later pages are missing; the first one is all that is read
                }
                throw new EOFException();
            }
            at = directory(at);
            pages++;
        }
        if (pages == 0) {
            throw new EOFException();
        }
    }

    /** Reads one directory; keeps its values when it is the first; gives the place of the next. */
    private long directory(long at) throws IOException {
        int entrySize = big ? 20 : 12;
        long count = big ? bytes(at, 8).getLong() : bytes(at, 2).getShort() & 0xffff;
        if (count < 1 || count > 65_535) {
            throw new IOException("its directory claims " + count + " tags");
        }
        long entries = at + (big ? 8 : 2);
        ByteBuffer block;
        try {
            block = bytes(entries, (int) count * entrySize);
        } catch (EOFException e) {
            if (pages > 0) {
                return 0;
            }
            throw e;
        }
        if (pages == 0) {
            for (int i = 0; i < count; i++) {
                entry(block, i * entrySize);
            }
        }
        long next = entries + count * entrySize;
        if (next + (big ? 8 : 4) > file.length()) {
            return 0; // many writers' files end here, and there is no next page
        }
        return big ? bytes(next, 8).getLong() : bytes(next, 4).getInt() & 0xffffffffL;
    }

    private void entry(ByteBuffer block, int at) throws IOException {
        int tag = block.getShort(at) & 0xffff;
        int type = block.getShort(at + 2) & 0xffff;
        long count = big ? block.getLong(at + 4) : block.getInt(at + 4) & 0xffffffffL;
        int size =
                switch (type) {
                    case 1, 6, 7 -> 1;
                    case 3, 8 -> 2;
                    case 4, 9, 13 -> 4;
                    case 16, 17, 18 -> 8;
                    default -> 0;
                };
        if (size == 0 || tag < WIDTH || tag > SAMPLE_FORMAT || count < 1) {
            return;
        }
        if (count > MOST_VALUES) {
            throw new IOException("its tag " + tag + " claims " + count + " values");
        }
        int valueAt = at + (big ? 12 : 8);
        int room = big ? 8 : 4;
        ByteBuffer data;
        int dataAt;
        if (count * size <= room) {
            data = block;
            dataAt = valueAt;
        } else {
            long offset = big ? block.getLong(valueAt) : block.getInt(valueAt) & 0xffffffffL;
            data = bytes(offset, (int) count * size);
            dataAt = 0;
        }
        long[] numbers = new long[(int) count];
        for (int i = 0; i < count; i++) {
            int p = dataAt + i * size;
            numbers[i] = switch (size) {
                case 1 -> data.get(p) & 0xff;
                case 2 -> data.getShort(p) & 0xffff;
                case 4 -> data.getInt(p) & 0xffffffffL;
                default -> data.getLong(p);
            };
        }
        long[] before = values.putIfAbsent(tag, numbers);
        if (before != null && LAYOUT.contains(tag) && !Arrays.equals(before, numbers)) {
            throw new IOException("it states its tag " + tag + " twice and differently");
        }
    }

    private ByteBuffer bytes(long at, int length) throws IOException {
        if (at < 0 || at + length > file.length()) {
            throw new EOFException();
        }
        byte[] data = new byte[length];
        file.seek(at);
        file.readFully(data);
        return ByteBuffer.wrap(data).order(order);
    }

    long number(int tag, long otherwise) {
        long[] all = values.get(tag);
        return all == null ? otherwise : all[0];
    }

    /** All values of a tag; empty when it is absent. */
    long[] all(int tag) {
        return values.getOrDefault(tag, new long[0]).clone();
    }

    boolean has(int tag) {
        return values.containsKey(tag);
    }

    int pages() {
        return pages;
    }

    boolean big() {
        return big;
    }
}
