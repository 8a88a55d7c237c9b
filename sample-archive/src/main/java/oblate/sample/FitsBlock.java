package oblate.sample;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import nom.tam.fits.BasicHDU;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import nom.tam.fits.FitsFactory;
import nom.tam.fits.Header;
import nom.tam.util.FitsOutputStream;

/** A grey picture as FITS: unsigned sixteen bits, bottom row first, start, length and middle of the capture in its head. */
final class FitsBlock {
    private static final DateTimeFormatter FITS_TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSS", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final int HALF_RANGE = 32768;

    private FitsBlock() {}

    static byte[] of(Shot shot, float[] plane) throws IOException {
        int width = shot.kit().optics().widthPx();
        int height = plane.length / width;
        int[] samples = PictureFiles.twelveInSixteen(plane);
        short[][] rows = new short[height][width];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                rows[height - 1 - y][x] = (short) (samples[y * width + x] - HALF_RANGE);
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Fits fits = new Fits();
                FitsOutputStream out = new FitsOutputStream(new DataOutputStream(bytes))) {
            BasicHDU<?> hdu = FitsFactory.hduFactory(rows);
            fits.addHDU(hdu);
            describe(shot, hdu.getHeader());
            fits.write(out);
        } catch (FitsException e) {
            throw new IOException(e);
        }
        return bytes.toByteArray();
    }

    private static void describe(Shot shot, Header header) {
        Kit kit = shot.kit();
        Instant middle = shot.stated().orElseThrow();
        long halfMs = Math.round(kit.captureS() * 500);
        header.addValue("BZERO", HALF_RANGE, "unsigned samples");
        header.addValue("BSCALE", 1, "");
        header.addValue("OBJECT", "Jupiter", "");
        header.addValue("TIMESYS", "UTC", "time scale");
        header.addValue("DATE-OBS", FITS_TIME.format(middle.minusMillis(halfMs)), "start of capture");
        header.addValue("DATE-AVG", FITS_TIME.format(middle), "middle of capture");
        header.addValue("DATE-END", FITS_TIME.format(middle.plusMillis(halfMs)), "end of capture");
        header.addValue("EXPTIME", kit.captureS(), "[s] length of capture");
        header.addValue("TELESCOP", kit.gear().telescope(), "");
        header.addValue("INSTRUME", kit.gear().camera(), "");
        header.addValue("FILTER", kit.colour() ? "green channel" : kit.gear().filter(), "");
        header.addValue("OBSERVER", kit.observer(), "");
        header.insertComment("Invented sample picture, not an observation.");
    }
}
