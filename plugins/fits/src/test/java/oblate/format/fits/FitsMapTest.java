/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import nom.tam.fits.Fits;
import nom.tam.fits.Header;
import oblate.disc.MapFrame;
import oblate.disc.MapProjection;
import oblate.disc.PixelPoint;
import oblate.disc.PlanetMap;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import oblate.sky.Rings;
import oblate.sky.RotationElements;
import oblate.sky.RotationSystem;
import oblate.sky.Spheroid;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FitsMapTest {
    @TempDir
    Path folder;

    private record Body(String id, Globe globe, Optional<Rings> rings) implements PlanetModel {
        @Override
        public String label() {
            return "Jupiter";
        }
    }

    private static PlanetModel jupiter() {
        RotationSystem third = new RotationSystem("3", "System III", 284.95, 870.536, "test");
        return new Body(
                "jupiter",
                new Globe(
                        5,
                        new Spheroid(71492, 66854, "test"),
                        new RotationElements(0, 0, 90, 0, List.of(), List.of(), List.of(), "test"),
                        List.of(third),
                        "3",
                        LongitudeSense.WEST),
                Optional.empty());
    }

    private Header written(MapFrame frame) throws Exception {
        float[] plane = new float[frame.widthPx() * frame.heightPx()];
        for (int i = 0; i < plane.length; i++) {
            plane[i] = i;
        }
        plane[0] = Float.NaN;
        Path file = folder.resolve(frame.projection() + ".fits");
        new FitsMap().write(new PlanetMap(frame, List.of(plane), List.of()), file);
        try (Fits fits = new Fits(Files.newInputStream(file))) {
            return fits.readHDU().getHeader();
        }
    }

    /**
     * East longitude and latitude of a FITS pixel as Calabretta and Greisen 2002 have it, worked out here for the four cases used: CAR and SFL about the
     * equator (eqs 83, 84, 90), ARC with the pole as reference (eqs 12, 13, 67 and 2 with δp = ±90°).
     */
    private static double[] world(Header h, double i, double j) {
        double x = (i - h.getDoubleValue("CRPIX1")) * h.getDoubleValue("CDELT1");
        double y = (j - h.getDoubleValue("CRPIX2")) * h.getDoubleValue("CDELT2");
        double lon0 = h.getDoubleValue("CRVAL1");
        String code = h.getStringValue("CTYPE1").substring(5);
        if (code.equals("CAR")) {
            return new double[] {lon0 + x, y};
        }
        if (code.equals("SFL")) {
            return new double[] {lon0 + x / Math.cos(Math.toRadians(y)), y};
        }
        double phi = Math.toDegrees(Math.atan2(x, -y));
        double theta = 90 - Math.hypot(x, y);
        double pole = h.getDoubleValue("LONPOLE");
        return h.getDoubleValue("CRVAL2") > 0
                ? new double[] {lon0 + phi - pole - 180, theta}
                : new double[] {lon0 - phi + pole, -theta};
    }

    @Test
    @Tag("truth")
    void worldCoordinatesLeadToTheSamePlaces() throws Exception {
        PlanetModel planet = jupiter();
        for (MapProjection projection : MapProjection.values()) {
            MapFrame frame = new MapFrame(
                    planet,
                    planet.globe().iauSystem(),
                    projection,
                    false,
                    210,
                    0,
                    120,
                    60,
                    projection.ordinal() < 2 ? 3 : 1);
            Header header = written(frame);
            assertThat(header.getStringValue("CTYPE2")).isEqualTo("JULT-" + projection.fitsCode());
            for (double[] place : new double[][] {{200, 40}, {220, -40}, {190, 70}, {230, -75}}) {
                PixelPoint p = frame.pixelOf(place[0], place[1]);
                double[] world = world(header, p.xPx() + 1, frame.heightPx() - p.yPx());
                assertThat(Math.IEEEremainder(world[0] + place[0], 360))
                        .as(projection + " longitude, east against west")
                        .isCloseTo(0, within(1e-6));
                assertThat(world[1]).as(projection + " latitude").isCloseTo(place[1], within(1e-6));
            }
        }
    }

    @Test
    void stripsKeepTheEquatorAsReference() throws Exception {
        PlanetModel planet = jupiter();
        MapFrame frame =
                new MapFrame(planet, planet.globe().iauSystem(), MapProjection.CYLINDRICAL, true, 180, -20, 72, 4, 5);
        Header header = written(frame);
        assertThat(header.getDoubleValue("CRVAL2")).isZero();
        PixelPoint p = frame.pixelOf(150, -22);
        assertThat(world(header, p.xPx() + 1, frame.heightPx() - p.yPx())[1]).isCloseTo(-22, within(1e-9));
        assertThat(header.getDoubleValue("A_RADIUS")).isEqualTo(71_492_000);
        assertThat(header.getStringValue("WCSNAME")).startsWith("Planetographic");
    }

    /** The file is read back by our own reader with the first row on top and the unknown pixel missing. */
    @Test
    void isReadBackAsDrawn() throws Exception {
        PlanetModel planet = jupiter();
        MapFrame frame =
                new MapFrame(planet, planet.globe().iauSystem(), MapProjection.CYLINDRICAL, true, 180, 0, 40, 20, 9);
        written(frame);
        var pixels = new PictureReader(List.of(new FitsFormat()), PictureLimits.usual())
                .decode(folder.resolve("CYLINDRICAL.fits"))
                .pixels();
        assertThat(pixels.widthPx()).isEqualTo(40);
        assertThat(pixels.plane(0)[0]).isNaN();
        assertThat(pixels.plane(0)[5]).isEqualTo(5);
        assertThat(pixels.plane(0)[799]).isEqualTo(799);
    }
}
