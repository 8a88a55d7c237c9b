/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import static com.drew.metadata.exif.ExifDirectoryBase.TAG_ARTIST;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_COPYRIGHT;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_DATETIME;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_DATETIME_DIGITIZED;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_DATETIME_ORIGINAL;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_EXPOSURE_TIME;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_FNUMBER;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_FOCAL_LENGTH;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_IMAGE_DESCRIPTION;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_ISO_EQUIVALENT;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_MAKE;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_MODEL;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_ORIENTATION;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_SOFTWARE;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_SUBSECOND_TIME;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_SUBSECOND_TIME_DIGITIZED;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_TIME_ZONE;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_TIME_ZONE_DIGITIZED;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL;
import static com.drew.metadata.exif.ExifDirectoryBase.TAG_USER_COMMENT;

import com.drew.imaging.tiff.TiffProcessingException;
import com.drew.imaging.tiff.TiffReader;
import com.drew.lang.RandomAccessReader;
import com.drew.lang.Rational;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.exif.ExifTiffHandler;
import com.drew.metadata.exif.GpsDirectory;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** Facts from an Exif block or a TIFF file's own tags, under the names the Exif standard gives them. */
final class ExifFacts {
    private static final String GROUP = "Exif";
    private static final int TAG_XMP_IN_TIFF = 700;
    private static final Map<Integer, String> NAMES = names();
    private static final Map<Integer, String> GPS_NAMES = Map.of(
            GpsDirectory.TAG_LATITUDE_REF, "GPSLatitudeRef",
            GpsDirectory.TAG_LATITUDE, "GPSLatitude",
            GpsDirectory.TAG_LONGITUDE_REF, "GPSLongitudeRef",
            GpsDirectory.TAG_LONGITUDE, "GPSLongitude",
            GpsDirectory.TAG_ALTITUDE, "GPSAltitude",
            GpsDirectory.TAG_TIME_STAMP, "GPSTimeStamp",
            GpsDirectory.TAG_DATE_STAMP, "GPSDateStamp");

    private ExifFacts() {}

    private static Map<Integer, String> names() {
        Map<Integer, String> names = new LinkedHashMap<>();
        names.put(TAG_IMAGE_DESCRIPTION, "ImageDescription");
        names.put(TAG_MAKE, "Make");
        names.put(TAG_MODEL, "Model");
        names.put(TAG_ORIENTATION, "Orientation");
        names.put(TAG_SOFTWARE, "Software");
        names.put(TAG_DATETIME, "DateTime");
        names.put(TAG_ARTIST, "Artist");
        names.put(TAG_COPYRIGHT, "Copyright");
        names.put(TAG_EXPOSURE_TIME, "ExposureTime");
        names.put(TAG_FNUMBER, "FNumber");
        names.put(TAG_ISO_EQUIVALENT, "ISO");
        names.put(TAG_DATETIME_ORIGINAL, "DateTimeOriginal");
        names.put(TAG_DATETIME_DIGITIZED, "DateTimeDigitized");
        names.put(TAG_TIME_ZONE, "OffsetTime");
        names.put(TAG_TIME_ZONE_ORIGINAL, "OffsetTimeOriginal");
        names.put(TAG_TIME_ZONE_DIGITIZED, "OffsetTimeDigitized");
        names.put(TAG_SUBSECOND_TIME, "SubSecTime");
        names.put(TAG_SUBSECOND_TIME_ORIGINAL, "SubSecTimeOriginal");
        names.put(TAG_SUBSECOND_TIME_DIGITIZED, "SubSecTimeDigitized");
        names.put(TAG_FOCAL_LENGTH, "FocalLength");
        names.put(TAG_USER_COMMENT, "UserComment");
        return names;
    }

    /**
     * Adds what a TIFF-structured block says. Exif is a side matter: what cannot be read of it is told as a fact and costs no picture.
     *
     * @param block the block from its byte-order mark on
     * @param facts where to add
     * @return the orientation stated, or {@link Orientation#AS_STORED}
     */
    @SuppressWarnings("checkstyle:IllegalCatch") // border to a library reading hostile bytes
    static Orientation add(RandomAccessReader block, FactList facts) {
        Metadata metadata = new Metadata();
        try {
            new TiffReader().processTiff(block, new PlainTags(metadata), 0);
        } catch (TiffProcessingException | IOException | RuntimeException e) {
            facts.add(GROUP, "Unreadable", "its Exif tags cannot be read in full");
        }
        Orientation orientation = Orientation.AS_STORED;
        for (Directory directory : metadata.getDirectories()) {
            boolean main = directory.getClass() == ExifIFD0Directory.class;
            if (main || directory instanceof ExifSubIFDDirectory) {
                NAMES.forEach((tag, name) -> addTag(directory, tag, name, facts));
            } else if (directory instanceof GpsDirectory) {
                GPS_NAMES.forEach((tag, name) -> addTag(directory, tag, name, facts));
            }
            if (main) {
                Integer code = directory.getInteger(TAG_ORIENTATION);
                orientation = code == null || orientation.code() != 1 ? orientation : Orientation.of(code);
                byte[] xmp = directory.getByteArray(TAG_XMP_IN_TIFF);
                if (xmp != null) {
                    XmpFacts.add(xmp, facts);
                }
            }
        }
        return orientation;
    }

    private static void addTag(Directory directory, int tag, String name, FactList facts) {
        Object value = directory.getObject(tag);
        if (value == null || facts.has(GROUP, name)) {
            return;
        }
        if (tag == GpsDirectory.TAG_TIME_STAMP && directory instanceof GpsDirectory) {
            facts.add(GROUP, name, clock(directory.getRationalArray(tag)));
        } else if (value instanceof Rational rational) {
            facts.add(GROUP, name, decimal(rational));
        } else if (value instanceof Rational[] rationals) {
            StringBuilder text = new StringBuilder();
            for (Rational rational : rationals) {
                text.append(text.isEmpty() ? "" : " ").append(decimal(rational));
            }
            facts.add(GROUP, name, text.toString());
        } else if (value instanceof byte[] bytes) {
            facts.add(GROUP, name, comment(bytes));
        } else {
            facts.add(GROUP, name, directory.getString(tag));
        }
    }

    /** Hours, minutes and seconds as {@code hh:mm:ss} with the fraction there is. */
    private static String clock(Rational[] parts) {
        if (parts == null || parts.length != 3) {
            return null;
        }
        String seconds = decimal(parts[2]);
        if (seconds.indexOf('.') == 1 || seconds.length() == 1) {
            seconds = "0" + seconds;
        }
        return String.format(
                java.util.Locale.ROOT, "%02d:%02d:%s", parts[0].longValue(), parts[1].longValue(), seconds);
    }

    private static String decimal(Rational value) {
        if (value.getDenominator() == 0) {
            return value.getNumerator() + "/0";
        }
        return BigDecimal.valueOf(value.getNumerator())
                .divide(BigDecimal.valueOf(value.getDenominator()), MathContext.DECIMAL32)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** A UserComment: eight bytes naming its code, then text. */
    private static String comment(byte[] bytes) {
        if (bytes.length <= 8) {
            return null;
        }
        String code = new String(bytes, 0, 8, StandardCharsets.US_ASCII);
        var charset = code.startsWith("UNICODE") ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8;
        return new String(bytes, 8, bytes.length - 8, charset);
    }

    /** Keeps every tag as it stands: no maker notes, no embedded packets, which are not needed and are a hostile file's playground. */
    private static final class PlainTags extends ExifTiffHandler {
        PlainTags(Metadata metadata) {
            super(metadata, null, 0);
        }

        @Override
        public boolean customProcessTag(
                int tagOffset,
                Set<Integer> processedOffsets,
                int headerOffset,
                RandomAccessReader reader,
                int tagId,
                int byteCount) {
            return false;
        }
    }
}
