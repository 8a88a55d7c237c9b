package oblate.sample;

import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.CRC32;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.spi.IIORegistry;
import javax.imageio.spi.ImageWriterSpi;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Writes a finished picture as the kind of file its shot wants, with its time where the shot wants it. Stateless. */
final class PictureFiles {
    private static final float JPEG_QUALITY = 0.93f;
    private static final int TWELVE_BITS = 4095;
    private static final DateTimeFormatter NOTE_TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    /**
     * Writes the picture, and the note beside it where that carries the time.
     *
     * @param shot what it is
     * @param planes one or three planes of 0…1, rows from the top
     * @param file where; its folder exists
     */
    void write(Shot shot, float[][] planes, Path file) throws IOException {
        Files.write(file, encoded(shot, planes));
        if (shot.carrier() == TimeCarrier.SIDE_NOTE) {
            String name = file.getFileName().toString();
            Path note = file.resolveSibling(name.substring(0, name.lastIndexOf('.')) + ".txt");
            Files.writeString(note, note(shot));
        }
    }

    private byte[] encoded(Shot shot, float[][] planes) throws IOException {
        int width = shot.kit().optics().widthPx();
        Optional<byte[]> exif =
                shot.carrier() == TimeCarrier.EXIF ? Optional.of(ExifBlock.of(shot)) : Optional.empty();
        return switch (shot.fileKind()) {
            case PNG_8 -> withExifChunk(imageIo("png", eightBit(planes, width), Optional.empty()), exif);
            case PNG_16 -> withExifChunk(imageIo("png", sixteenBit(planes, width), Optional.empty()), exif);
            case JPEG -> withExifSegment(imageIo("jpeg", eightBit(planes, width), Optional.empty()), exif);
            case TIFF_16 -> imageIo("tiff", sixteenBit(planes, width), Optional.empty());
            case TIFF_16_LZW -> imageIo("tiff", sixteenBit(planes, width), Optional.of("LZW"));
            case TIFF_16_DEFLATE -> imageIo("tiff", sixteenBit(planes, width), Optional.of("ZLib"));
            case FITS_16 -> FitsBlock.of(shot, planes[0]);
        };
    }

    private static String note(Shot shot) {
        return "Jupiter, " + shot.kit().label() + "\n"
                + "Invented sample picture, not an observation.\n"
                + "Middle of capture: " + NOTE_TIME.format(shot.stated().orElseThrow()) + "\n"
                + String.format(Locale.ROOT, "Length of capture: %.0f s%n", shot.kit().captureS())
                        .replace(System.lineSeparator(), "\n")
                + "Seeing: Antoniadi " + shot.plan().seeing() + "\n";
    }

    private static BufferedImage eightBit(float[][] planes, int width) {
        int height = planes[0].length / width;
        int type = planes.length == 1 ? BufferedImage.TYPE_BYTE_GRAY : BufferedImage.TYPE_3BYTE_BGR;
        BufferedImage image = new BufferedImage(width, height, type);
        WritableRaster raster = image.getRaster();
        for (int c = 0; c < planes.length; c++) {
            raster.setSamples(0, 0, width, height, c, samples(planes[c], 255, 1));
        }
        return image;
    }

    /** Sixteen-bit samples of a camera that gives twelve: multiples of sixteen. */
    private static BufferedImage sixteenBit(float[][] planes, int width) {
        int height = planes[0].length / width;
        ColorSpace space = ColorSpace.getInstance(planes.length == 1 ? ColorSpace.CS_GRAY : ColorSpace.CS_sRGB);
        ColorModel model = new ComponentColorModel(space, false, false, ColorModel.OPAQUE, DataBuffer.TYPE_USHORT);
        WritableRaster raster = model.createCompatibleWritableRaster(width, height);
        for (int c = 0; c < planes.length; c++) {
            raster.setSamples(0, 0, width, height, c, twelveInSixteen(planes[c]));
        }
        return new BufferedImage(model, raster, false, null);
    }

    static int[] twelveInSixteen(float[] plane) {
        return samples(plane, TWELVE_BITS, 16);
    }

    private static int[] samples(float[] plane, int top, int step) {
        int[] samples = new int[plane.length];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = Math.round(plane[i] * top) * step;
        }
        return samples;
    }

    /** Writes with the JDK's own writer, whatever others are on the class path, so that the bytes do not depend on it. */
    private static byte[] imageIo(String format, BufferedImage image, Optional<String> compression) throws IOException {
        ImageWriter writer = jdkWriter(format);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            writer.setOutput(out);
            ImageWriteParam param = writer.getDefaultWriteParam();
            if (format.equals("jpeg")) {
                param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
                param.setCompressionQuality(JPEG_QUALITY);
            }
            if (compression.isPresent()) {
                param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
                param.setCompressionType(compression.get());
            }
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    private static ImageWriter jdkWriter(String format) throws IOException {
        // Asking ImageIO first makes the registry scan its providers.
        ImageIO.getImageWritersByFormatName(format);
        Iterator<ImageWriterSpi> all = IIORegistry.getDefaultInstance().getServiceProviders(ImageWriterSpi.class, true);
        while (all.hasNext()) {
            ImageWriterSpi spi = all.next();
            if (spi.getClass().getName().startsWith("com.sun.imageio.")
                    && java.util.Arrays.asList(spi.getFormatNames()).contains(format)) {
                return spi.createWriterInstance();
            }
        }
        throw new IOException("this Java has no writer for " + format);
    }

    /** Puts an eXIf chunk (PNG, third edition) behind the head of a PNG. */
    private static byte[] withExifChunk(byte[] png, Optional<byte[]> exif) throws IOException {
        if (exif.isEmpty()) {
            return png;
        }
        int afterHead = 8 + 4 + 4 + 13 + 4;
        byte[] body = exif.get();
        byte[] type = "eXIf".getBytes(StandardCharsets.US_ASCII);
        CRC32 crc = new CRC32();
        crc.update(type);
        crc.update(body);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(png.length + body.length + 12);
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(png, 0, afterHead);
        out.writeInt(body.length);
        out.write(type);
        out.write(body);
        out.writeInt((int) crc.getValue());
        out.write(png, afterHead, png.length - afterHead);
        return bytes.toByteArray();
    }

    /** Puts an APP1 segment with Exif behind the JFIF head of a JPEG. */
    private static byte[] withExifSegment(byte[] jpeg, Optional<byte[]> exif) throws IOException {
        if (exif.isEmpty()) {
            return jpeg;
        }
        byte[] body = exif.get();
        // SOI, then APP0: marker (2) and a length that counts itself.
        int afterHead = 2 + 2 + (ByteBuffer.wrap(jpeg, 4, 2).getShort() & 0xffff);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(jpeg.length + body.length + 10);
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(jpeg, 0, afterHead);
        out.writeShort(0xFFE1);
        out.writeShort(2 + 6 + body.length);
        out.write("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
        out.write(body);
        out.write(jpeg, afterHead, jpeg.length - afterHead);
        return bytes.toByteArray();
    }
}
