package oblate.sample;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteOrder;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.apache.commons.imaging.formats.tiff.constants.ExifTagConstants;
import org.apache.commons.imaging.formats.tiff.constants.TiffDirectoryType;
import org.apache.commons.imaging.formats.tiff.constants.TiffTagConstants;
import org.apache.commons.imaging.formats.tiff.taginfos.TagInfoAscii;
import org.apache.commons.imaging.formats.tiff.write.TiffImageWriterLossy;
import org.apache.commons.imaging.formats.tiff.write.TiffOutputDirectory;
import org.apache.commons.imaging.formats.tiff.write.TiffOutputSet;

/** Exif of a picture: DateTimeOriginal (middle of the capture, by the kit's clock) with OffsetTimeOriginal, and who made it. */
final class ExifBlock {
    private static final DateTimeFormatter EXIF_TIME = DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss", Locale.ROOT);
    private static final TagInfoAscii OFFSET_TIME_ORIGINAL =
            new TagInfoAscii("OffsetTimeOriginal", 0x9011, 7, TiffDirectoryType.EXIF_DIRECTORY_EXIF_IFD);

    private ExifBlock() {}

    /** The block as it stands in a JPEG's APP1 segment behind its mark, or in a PNG's eXIf chunk. */
    static byte[] of(Shot shot) throws IOException {
        Instant stated = shot.stated().orElseThrow();
        String offset = shot.kit().zone().getTotalSeconds() == 0 ? "+00:00" : shot.kit().zone().getId();
        TiffOutputSet set = new TiffOutputSet(ByteOrder.BIG_ENDIAN);
        TiffOutputDirectory root = set.getOrCreateRootDirectory();
        root.add(
                TiffTagConstants.TIFF_TAG_IMAGE_DESCRIPTION,
                "Invented sample picture, not an observation. Jupiter; the time is the middle of the capture.");
        root.add(TiffTagConstants.TIFF_TAG_ARTIST, shot.kit().observer());
        TiffOutputDirectory exif = set.getOrCreateExifDirectory();
        exif.add(
                ExifTagConstants.EXIF_TAG_DATE_TIME_ORIGINAL,
                EXIF_TIME.format(stated.atOffset(shot.kit().zone())));
        exif.add(OFFSET_TIME_ORIGINAL, offset);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        new TiffImageWriterLossy(ByteOrder.BIG_ENDIAN).write(bytes, set);
        return bytes.toByteArray();
    }
}
