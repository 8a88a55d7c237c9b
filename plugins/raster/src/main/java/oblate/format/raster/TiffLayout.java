/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import java.io.IOException;
import java.nio.file.Path;

/**
 * How the samples of a TIFF file's first page lie, checked for what a hostile file could claim.
 *
 * @param widthPx stored width (px)
 * @param heightPx stored height (px)
 * @param channels 1 grey, 3 colour
 * @param bits bits a sample, 1…64; 8 for palettes
 * @param floating floating-point samples
 * @param signed integer samples with a sign
 * @param orientation how it is displayed
 * @param pages directories in the file
 * @param big BigTIFF
 */
record TiffLayout(
        int widthPx,
        int heightPx,
        int channels,
        int bits,
        boolean floating,
        boolean signed,
        Orientation orientation,
        int pages,
        boolean big) {
    private static final int MOST_SAMPLES = 8;
    private static final long LARGEST_SIDE = 1_000_000;

    /**
     * @throws IOException with one plain sentence part when the claims cannot be true
     * @throws oblate.base.ProblemException for layouts that are not read
     */
    static TiffLayout of(Path file, TiffTags tags, long fileBytes) throws IOException {
        long width = tags.number(TiffTags.WIDTH, 0);
        long height = tags.number(TiffTags.HEIGHT, 0);
        if (width < 1 || height < 1 || width > LARGEST_SIDE || height > LARGEST_SIDE) {
            throw new IOException("it claims " + width + " × " + height + " pixels");
        }
        long samples = tags.number(TiffTags.SAMPLES, Math.max(1, tags.all(TiffTags.BITS).length));
        if (samples < 1 || samples > MOST_SAMPLES) {
            throw TiffFormat.unsupported(file, "TIFF with " + samples + " samples a pixel");
        }
        long bits = bits(file, tags);
        long format = tags.number(TiffTags.SAMPLE_FORMAT, 1);
        if (format > 4 || (format == 3 && bits < 16)) {
            throw TiffFormat.unsupported(file, "TIFF samples of kind " + format + " with " + bits + " bits");
        }
        if (format == 3 && tags.number(TiffTags.PHOTOMETRIC, 1) == 0) {
            throw TiffFormat.unsupported(file, "TIFF with floating samples of which zero is white");
        }
        int channels = channels(file, tags, (int) samples);
        if (channels > samples && tags.number(TiffTags.PHOTOMETRIC, 0) != 3) {
            throw new IOException("it claims colour with " + samples + " samples a pixel");
        }
        checkBlocks(tags, width, height, fileBytes, bits * samples);
        boolean palette = tags.number(TiffTags.PHOTOMETRIC, 0) == 3;
        return new TiffLayout(
                (int) width,
                (int) height,
                channels,
                palette ? 8 : (int) bits,
                format == 3,
                format == 2,
                Orientation.of((int) tags.number(TiffTags.ORIENTATION, 1)),
                tags.pages(),
                tags.big());
    }

    private static long bits(Path file, TiffTags tags) throws IOException {
        long bits = tags.number(TiffTags.BITS, 1);
        for (long other : tags.all(TiffTags.BITS)) {
            if (other != bits) {
                throw TiffFormat.unsupported(file, "TIFF with channels of different bits");
            }
        }
        if (bits < 1 || bits > 64) {
            throw new IOException("it claims " + bits + " bits a sample");
        }
        return bits;
    }

    private static int channels(Path file, TiffTags tags, int samples) {
        long photometric = tags.number(TiffTags.PHOTOMETRIC, samples >= 3 ? 2 : 1);
        return switch ((int) photometric) {
            case 0, 1, 4 -> 1;
            case 2, 6 -> 3;
            case 3 -> greyPalette(tags.all(TiffTags.COLOUR_MAP)) ? 1 : 3;
            case 5 -> throw TiffFormat.unsupported(file, "TIFF in printing inks (CMYK)");
            case 8, 9, 10 -> throw TiffFormat.unsupported(file, "TIFF in Lab colours");
            case 32803 -> throw TiffFormat.unsupported(file, "TIFF of unprocessed sensor samples");
            default -> throw TiffFormat.unsupported(file, "TIFF of colour kind " + photometric);
        };
    }

    private static boolean greyPalette(long[] map) {
        int size = map.length / 3;
        for (int i = 0; i < size; i++) {
            if (map[i] != map[size + i] || map[i] != map[2 * size + i]) {
                return false;
            }
        }
        return true;
    }

    /** Strips or tiles must lie within the file, and a tile must not be out of proportion to the picture. */
    private static void checkBlocks(TiffTags tags, long width, long height, long fileBytes, long bitsPerPixel)
            throws IOException {
        boolean tiled = tags.has(TiffTags.TILE_WIDTH);
        if (tiled) {
            long tileWidth = tags.number(TiffTags.TILE_WIDTH, 0);
            long tileHeight = tags.number(TiffTags.TILE_HEIGHT, 0);
            boolean sane =
                    tileWidth >= 1 && tileHeight >= 1 && tileWidth <= width + 4096 && tileHeight <= height + 4096;
            if (!sane) {
                throw new IOException("it claims tiles of " + tileWidth + " × " + tileHeight + " pixels");
            }
        }
        boolean tileTags = tiled && tags.has(TiffTags.TILE_OFFSETS);
        long[] offsets = tags.all(tileTags ? TiffTags.TILE_OFFSETS : TiffTags.STRIP_OFFSETS);
        long[] lengths = tags.all(tileTags ? TiffTags.TILE_BYTES : TiffTags.STRIP_BYTES);
        long compression = tags.number(TiffTags.COMPRESSION, 1);
        boolean oldJpeg = compression == 6;
        if (offsets.length == 0 && !oldJpeg) {
            throw new IOException("it does not say where its pixels are");
        }
        long blocks = blocks(tags, tiled, width, height);
        if (offsets.length != blocks && !(oldJpeg && (offsets.length == 0 || !tiled))) {
            String kind = tiled ? "tiles" : "strips";
            throw new IOException(
                    "it has " + offsets.length + " " + kind + " of pixels where its size asks for " + blocks);
        }
        checkLengths(offsets, lengths, compression != 1);
        for (int i = 0; i < offsets.length; i++) {
            long end = offsets[i] + (i < lengths.length ? lengths[i] : 1);
            if (offsets[i] < 0 || end < offsets[i] || end > fileBytes) {
                throw new IOException("it is cut short: its pixels go on to byte " + end + " of " + fileBytes);
            }
        }
        if (compression == 1 && width * height / 8 * bitsPerPixel > fileBytes) {
            throw new IOException("it is cut short: its pixels need more bytes than it has");
        }
    }

    /** Strips or tiles the picture must have, those of every channel where they lie apart. */
    private static long blocks(TiffTags tags, boolean tiled, long width, long height) {
        long apart = tags.number(TiffTags.PLANAR, 1) == 2 ? tags.number(TiffTags.SAMPLES, 1) : 1;
        if (tiled) {
            return apart
                    * ceiling(width, tags.number(TiffTags.TILE_WIDTH, 1))
                    * ceiling(height, tags.number(TiffTags.TILE_HEIGHT, 1));
        }
        long rows = Math.max(1, Math.min(tags.number(TiffTags.ROWS_PER_STRIP, height), height));
        return apart * ceiling(height, rows);
    }

    private static long ceiling(long whole, long part) {
        return (whole + part - 1) / part;
    }

    /** Of packed pixels only their stated length tells whether they are all there; of plain ones the picture's size does. */
    private static void checkLengths(long[] offsets, long[] lengths, boolean packed) throws IOException {
        if (packed && lengths.length != offsets.length) {
            throw new IOException("it states the lengths of " + lengths.length + " blocks of pixels and has "
                    + offsets.length + " of them");
        }
        for (long length : lengths) {
            if (packed && length < 1) {
                throw new IOException("it has a block of pixels without content");
            }
        }
    }
}
