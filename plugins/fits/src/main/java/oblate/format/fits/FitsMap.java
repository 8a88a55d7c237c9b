/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import nom.tam.fits.BasicHDU;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import nom.tam.fits.Header;
import nom.tam.util.FitsOutputStream;
import oblate.disc.MapFormat;
import oblate.disc.MapFrame;
import oblate.disc.MapProjection;
import oblate.disc.PlanetMap;
import oblate.sky.Spheroid;

/**
 * Maps as FITS of 32-bit floats with world coordinates (Calabretta and Greisen 2002, A&amp;A 395, 1077) on planetary axes (Marmo et al. 2018, Earth and
 * Space Science 5, 640): longitudes are told positive east, as readers of such files assume. Unknown pixels are NaN; three planes are red, green, blue.
 */
public final class FitsMap implements MapFormat {
    private static final double METRES_PER_KM = 1000;
    private static final Map<String, String> BODY = Map.of(
            "mercury", "ME", "venus", "VE", "mars", "MA", "jupiter", "JU", "saturn", "SA", "uranus", "UR", "neptune",
            "NE");

    @Override
    public String id() {
        return "fits";
    }

    @Override
    public String label() {
        return "FITS with planetary coordinates";
    }

    @Override
    public boolean prefersCentric() {
        return true;
    }

    @Override
    public void write(PlanetMap map, Path file) throws IOException {
        try (Fits fits = new Fits();
                FitsOutputStream out = new FitsOutputStream(java.nio.file.Files.newOutputStream(file))) {
            BasicHDU<?> hdu = Fits.makeHDU(samples(map));
            describe(hdu.getHeader(), map);
            fits.addHDU(hdu);
            fits.write(out);
        } catch (FitsException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /** The last row comes first in FITS. */
    private static Object samples(PlanetMap map) {
        int width = map.frame().widthPx();
        int height = map.frame().heightPx();
        List<float[]> planes = map.planes();
        float[][][] cube = new float[planes.size()][height][width];
        for (int c = 0; c < planes.size(); c++) {
            for (int y = 0; y < height; y++) {
                System.arraycopy(planes.get(c), y * width, cube[c][height - 1 - y], 0, width);
            }
        }
        return planes.size() == 1 ? cube[0] : cube;
    }

    private static void describe(Header header, PlanetMap map) throws FitsException {
        MapFrame frame = map.frame();
        String body = BODY.getOrDefault(frame.planet().id(), "XX");
        String code = frame.projection().fitsCode();
        boolean polar =
                frame.projection() == MapProjection.NORTH_POLAR || frame.projection() == MapProjection.SOUTH_POLAR;
        boolean north = frame.projection() == MapProjection.NORTH_POLAR;
        header.addValue("OBJECT", frame.planet().label(), "planet");
        header.addValue("CTYPE1", body + "LN-" + code, "longitude, positive east");
        header.addValue("CRPIX1", (frame.widthPx() + 1) / 2.0, "reference pixel");
        header.addValue("CRVAL1", eastLonDeg(frame), "[deg] east longitude there");
        header.addValue("CDELT1", frame.cellDeg(), "[deg] east is to the right");
        header.addValue("CUNIT1", "deg", "");
        header.addValue("CTYPE2", body + "LT-" + code, "latitude");
        header.addValue(
                "CRPIX2",
                (frame.heightPx() + 1) / 2.0 - (polar ? 0 : frame.middleYDeg() / frame.cellDeg()),
                "reference pixel");
        header.addValue("CRVAL2", polar ? (north ? 90.0 : -90.0) : 0.0, "[deg] latitude there");
        header.addValue("CDELT2", frame.cellDeg(), "[deg] north is up");
        header.addValue("CUNIT2", "deg", "");
        if (polar) {
            header.addValue("LONPOLE", north ? 180.0 : 0.0, "[deg]");
        }
        header.addValue(
                "WCSNAME",
                (frame.graphic() ? "Planetographic" : "Planetocentric") + " body-fixed",
                "kind of latitudes");
        Spheroid figure = frame.planet().globe().figure();
        header.addValue("A_RADIUS", figure.equatorialRadiusKm() * METRES_PER_KM, "[m] equatorial radius");
        header.addValue("B_RADIUS", figure.equatorialRadiusKm() * METRES_PER_KM, "[m] equatorial radius");
        header.addValue("C_RADIUS", figure.polarRadiusKm() * METRES_PER_KM, "[m] polar radius");
        tell(header, map);
    }

    private static void tell(Header header, PlanetMap map) throws FitsException {
        MapFrame frame = map.frame();
        header.insertComment("Longitudes here are positive EAST, in "
                + frame.system().label() + " of " + frame.planet().label() + ".");
        if (!frame.system().id().equals(frame.planet().globe().iauSystem().id())) {
            header.insertComment("NOTE: that is NOT the frame of the IAU.");
        }
        if (frame.eastSign() < 0) {
            header.insertComment("Planetographic longitudes (IAU) count west here: west = 360 - east.");
        }
        header.insertComment("Latitudes are " + (frame.graphic() ? "planetoGRAPHIC." : "planetocentric."));
        map.contributions().stream()
                .map(PlanetMap.Contribution::time)
                .min(java.util.Comparator.naturalOrder())
                .ifPresent(first ->
                        add(header, "DATE-BEG", first.toString().replace("Z", ""), "[UTC] first picture, middle"));
        map.contributions().stream()
                .map(PlanetMap.Contribution::time)
                .max(java.util.Comparator.naturalOrder())
                .ifPresent(last ->
                        add(header, "DATE-END", last.toString().replace("Z", ""), "[UTC] last picture, middle"));
        for (PlanetMap.Contribution c : map.contributions()) {
            header.insertHistory(ascii(String.format(
                    Locale.ROOT,
                    "%.24s %s weight %.3f gain %.3f k %.3f",
                    c.name(),
                    c.time(),
                    c.weight(),
                    c.gain(),
                    c.law().exponent())));
        }
    }

    private static void add(Header header, String key, String value, String comment) {
        try {
            header.addValue(key, value, comment);
        } catch (FitsException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String ascii(String text) {
        return text.replaceAll("[^\\x20-\\x7e]", "?");
    }

    private static double eastLonDeg(MapFrame frame) {
        double lon = frame.eastSign() * frame.middleLonDeg() % 360;
        return lon < 0 ? lon + 360 : lon;
    }
}
