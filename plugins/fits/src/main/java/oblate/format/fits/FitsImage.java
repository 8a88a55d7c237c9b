/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import nom.tam.fits.HeaderCardException;
import nom.tam.image.compression.hdu.CompressedImageData;
import nom.tam.image.compression.hdu.CompressedImageHDU;
import nom.tam.util.FitsInputStream;
import oblate.base.ProblemException;
import oblate.image.HeaderFact;
import oblate.image.ImageProblem;
import oblate.image.PixelGrid;

/**
 * The picture in a FITS file: its layout, and the way from stored numbers to samples.
 *
 * @param header header of the picture itself
 * @param tiles whether it is tile-compressed
 * @param widthPx width (px)
 * @param heightPx height (px)
 * @param planesStored planes in the file
 * @param bitpix kind of sample: 8, 16, 32, 64 integers, -32, -64 floating
 * @param facts what the file says
 */
record FitsImage(
        FitsHeader header,
        boolean tiles,
        int widthPx,
        int heightPx,
        long planesStored,
        int bitpix,
        List<HeaderFact> facts) {
    private static final long LARGEST_SIDE = 1_000_000;
    private static final long MORE_THAN_A_CUBE = Long.MAX_VALUE;

    /** Whether a header announces a picture: two axes or more, none of them empty. */
    static boolean isImage(FitsHeader header) {
        boolean tiles = tiled(header);
        String z = tiles ? "Z" : "";
        boolean kind = tiles
                || header.has("SIMPLE")
                || header.text("XTENSION").equals("IMAGE")
                || header.text("XTENSION").equals("IUEIMAGE");
        if (!kind || header.whole(z + "NAXIS", 0) < 2 || (header.flag("GROUPS") && header.whole("NAXIS1", -1) == 0)) {
            return false;
        }
        return header.whole(z + "NAXIS1", 0) > 0 && header.whole(z + "NAXIS2", 0) > 0;
    }

    private static boolean tiled(FitsHeader header) {
        return header.text("XTENSION").equals("BINTABLE") && header.flag("ZIMAGE");
    }

    /**
     * Reads the layout and checks it against the file's length.
     *
     * @param number place of the header in the file, from 1
     */
    static FitsImage of(Path file, FitsHeader primary, FitsHeader header, int number, FitsFile fits)
            throws IOException {
        boolean tiles = tiled(header);
        String z = tiles ? "Z" : "";
        int bitpix = (int) header.whole(z + "BITPIX", 0);
        if (bitpix != 8 && bitpix != 16 && bitpix != 32 && bitpix != 64 && bitpix != -32 && bitpix != -64) {
            throw new IOException("BITPIX is " + bitpix);
        }
        long width = header.whole(z + "NAXIS1", 0);
        long height = header.whole(z + "NAXIS2", 0);
        if (width > LARGEST_SIDE || height > LARGEST_SIDE) {
            throw new ProblemException(ImageProblem.TOO_LARGE, file, width, height, LARGEST_SIDE + " a side");
        }
        if (tiles) {
            refuseUnsafeTiles(file, header, bitpix);
        }
        long planes = planes(header, z);
        if (!fits.canHold(header.dataBytes())) {
            throw new IOException("it is cut short: its data need " + header.dataBytes() + " bytes and it has "
                    + Math.max(0, fits.fileBytes() - fits.position()));
        }
        List<HeaderFact> facts = new ArrayList<>(header.facts());
        if (primary != header) {
            // What the primary header says holds for the whole file unless the picture's own header says otherwise.
            List<HeaderFact> own = List.copyOf(facts);
            primary.facts().stream()
                    .filter(f -> own.stream()
                            .noneMatch(
                                    o -> o.group().equals(f.group()) && o.key().equals(f.key())))
                    .filter(f -> !f.key().matches("SIMPLE|BITPIX|NAXIS\\d*|EXTEND|BZERO|BSCALE|CHECKSUM|DATASUM"))
                    .forEach(facts::add);
            facts.add(new HeaderFact("Reading", "HDU", "the picture is in part " + number + " of the file"));
        }
        if (planes != 1 && planes != 3) {
            String many = planes == MORE_THAN_A_CUBE ? "more than a cube" : Long.toString(planes);
            facts.add(new HeaderFact("Reading", "Planes", many + ", of which the first is read"));
        }
        if (topDown(header)) {
            facts.add(new HeaderFact(
                    "Reading", "Rows", "ROWORDER says the first stored row is the top; the rows are not turned over"));
        }
        return new FitsImage(header, tiles, (int) width, (int) height, planes, bitpix, List.copyOf(facts));
    }

    /** Kinds of tiles the library at hand (1.21) turns into wrong samples without a word; upstream mended them later. */
    private static void refuseUnsafeTiles(Path file, FitsHeader header, int bitpix) {
        boolean whole = column(header, "ZSCALE") || header.has("ZSCALE") || header.has("ZQUANTIZ");
        if (bitpix < 0 && whole) {
            throw new ProblemException(
                    ImageProblem.UNSUPPORTED,
                    file,
                    "FITS tiles of floating samples rounded to steps (ZSCALE, ZQUANTIZ)");
        }
        if (column(header, "ZBLANK")) {
            throw new ProblemException(
                    ImageProblem.UNSUPPORTED, file, "FITS tiles that mark missing pixels each in its own way (ZBLANK)");
        }
        if (header.text("ZCMPTYPE").startsWith("PLIO") && Math.abs(bitpix) > 16) {
            throw new ProblemException(
                    ImageProblem.UNSUPPORTED, file, "FITS tiles packed as PLIO_1 with " + bitpix + " bits a sample");
        }
    }

    private static boolean column(FitsHeader header, String name) {
        long columns = Math.min(999, header.whole("TFIELDS", 0));
        for (int column = 1; column <= columns; column++) {
            if (header.text("TTYPE" + column).equalsIgnoreCase(name)) {
                return true;
            }
        }
        return false;
    }

    /** Planes of a cube; of anything with more axes a number no cube has, since only its first plane has a meaning here. */
    private static long planes(FitsHeader header, String z) throws IOException {
        long planes = 1;
        for (int axis = 3; axis <= header.whole(z + "NAXIS", 2); axis++) {
            long length = header.whole(z + "NAXIS" + axis, 1);
            if (length < 1) {
                throw new IOException(z + "NAXIS" + axis + " is " + length);
            }
            if (axis == 3) {
                planes = length;
            } else if (length > 1) {
                return MORE_THAN_A_CUBE;
            }
        }
        return planes;
    }

    private static boolean topDown(FitsHeader header) {
        return header.text("ROWORDER").equalsIgnoreCase("TOP-DOWN");
    }

    int channels() {
        return planesStored == 3 ? 3 : 1;
    }

    /** The samples as displayed; the stream stands at the start of the data. */
    PixelGrid readPixels(FitsFile fits) throws IOException {
        Scaling scaling = Scaling.of(header, bitpix, tiles);
        List<float[]> planes = new ArrayList<>();
        if (tiles) {
            byte[] all = uncompressed(fits);
            int planeBytes = widthPx * heightPx * Math.abs(bitpix) / 8;
            for (int channel = 0; channel < channels(); channel++) {
                planes.add(plane(new ByteArrayInputStream(all, channel * planeBytes, planeBytes)::readNBytes, scaling));
            }
        } else {
            for (int channel = 0; channel < channels(); channel++) {
                planes.add(plane(
                        n -> {
                            byte[] row = new byte[n];
                            fits.read(row);
                            return row;
                        },
                        scaling));
            }
        }
        return scaling.natural()
                ? new PixelGrid(widthPx, heightPx, planes, 0, 1)
                : PixelGrid.ranged(widthPx, heightPx, planes);
    }

    /** Gives the next so many bytes. */
    @FunctionalInterface
    private interface Bytes {
        byte[] next(int count) throws IOException;
    }

    private float[] plane(Bytes source, Scaling scaling) throws IOException {
        float[] plane = new float[widthPx * heightPx];
        boolean bottomFirst = !topDown(header);
        int rowBytes = widthPx * (Math.abs(bitpix) / 8);
        for (int row = 0; row < heightPx; row++) {
            ByteBuffer samples = ByteBuffer.wrap(source.next(rowBytes));
            int y = bottomFirst ? heightPx - 1 - row : row;
            for (int x = 0; x < widthPx; x++) {
                plane[y * widthPx + x] = switch (bitpix) {
                    case 8 -> scaling.whole(samples.get() & 0xff);
                    case 16 -> scaling.whole(samples.getShort());
                    case 32 -> scaling.whole(samples.getInt());
                    case 64 -> scaling.whole(samples.getLong());
                    case -32 -> scaling.real(samples.getFloat());
                    default -> scaling.real(samples.getDouble());
                };
            }
        }
        return plane;
    }

    /** The tiles put together by the library, as big-endian bytes like a plain FITS file has them. */
    private byte[] uncompressed(FitsFile fits) throws IOException {
        long bytes = header.dataBytes();
        if (bytes > Integer.MAX_VALUE - 16) {
            throw new IOException("its compressed data are " + bytes + " bytes long");
        }
        byte[] table = new byte[(int) bytes];
        fits.read(table);
        try {
            Header library = header.library();
            CompressedImageData data = CompressedImageHDU.manufactureData(library);
            byte[] padded = java.util.Arrays.copyOf(table, (table.length + 2879) / 2880 * 2880);
            data.read(new FitsInputStream(new ByteArrayInputStream(padded)));
            CompressedImageHDU hdu = new CompressedImageHDU(library, data);
            return bigEndian(hdu.asImageHDU().getKernel());
        } catch (HeaderCardException e) {
            throw new IOException("its header cannot be understood: " + e.getMessage(), e);
        } catch (FitsException e) {
            throw new IOException("its tiles cannot be decompressed: " + e.getMessage(), e);
        }
    }

    private byte[] bigEndian(Object array) throws IOException {
        if (array == null) {
            throw new IOException("its tiles cannot be decompressed");
        }
        long pixels = (long) widthPx * heightPx * channels();
        ByteBuffer target = ByteBuffer.allocate(Math.toIntExact(pixels * Math.abs(bitpix) / 8));
        put(array, target);
        if (target.hasRemaining()) {
            throw new IOException("its tiles do not fill the picture");
        }
        return target.array();
    }

    /** Row by row; what is beyond the planes wanted is left. */
    private static void put(Object array, ByteBuffer target) throws IOException {
        if (!target.hasRemaining()) {
            return;
        }
        if (array instanceof Object[] parts) {
            for (Object part : parts) {
                put(part, target);
            }
        } else if (array instanceof byte[] row) {
            target.put(row);
        } else if (array instanceof short[] row) {
            for (short value : row) {
                target.putShort(value);
            }
        } else if (array instanceof int[] row) {
            for (int value : row) {
                target.putInt(value);
            }
        } else if (array instanceof long[] row) {
            for (long value : row) {
                target.putLong(value);
            }
        } else if (array instanceof float[] row) {
            for (float value : row) {
                target.putFloat(value);
            }
        } else if (array instanceof double[] row) {
            for (double value : row) {
                target.putDouble(value);
            }
        } else {
            throw new IOException("its samples are of an unknown kind");
        }
    }
}
