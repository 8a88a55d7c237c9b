/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import oblate.disc.MapFormat;
import oblate.disc.MapFrame;
import oblate.disc.MapProjection;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import picocli.CommandLine.Option;

/** The sheet a map is drawn on, as asked for: projection, rotation system, size, middle, and how far it goes. */
final class MapSheetOptions {
    private static final double WHOLE_DEG = 360;

    @Option(
            names = "--projection",
            paramLabel = "WHICH",
            defaultValue = "CYLINDRICAL",
            description = "cylindrical, sinusoidal, north_polar or south_polar (default: cylindrical)")
    private MapProjection projection;

    @Option(
            names = "--system",
            paramLabel = "SYSTEM",
            description = "rotation system of the longitudes (default: the IAU's)")
    private String system;

    @Option(
            names = "--width",
            paramLabel = "PX",
            defaultValue = "1440",
            description = "pixels from one end to the other (default: ${DEFAULT-VALUE})")
    private int widthPx;

    @Option(
            names = "--centre",
            paramLabel = "LON",
            description = "longitude in the middle of the map, or pointing down on polar maps (default: 180, polar 0)")
    private Double centreDeg;

    @Option(
            names = "--strip",
            paramLabel = "LAT,LAT",
            description = "only the band between two latitudes; cylindrical maps")
    private String strip;

    @Option(
            names = "--polar-reach",
            paramLabel = "DEG",
            defaultValue = "60",
            description = "how far polar maps go from the pole (default: ${DEFAULT-VALUE})")
    private double polarReachDeg;

    @Option(
            names = "--lat",
            paramLabel = "KIND",
            description = "graphic or centric latitudes (default: graphic; centric in FITS)")
    private LatitudeKind latitudes;

    /** Kinds of latitude. */
    enum LatitudeKind {
        GRAPHIC,
        CENTRIC
    }

    /**
     * Refuses sizes and reaches out of range.
     *
     * @throws UsageException naming the option
     */
    void check() {
        if (widthPx < 16 || widthPx > 14_000) {
            throw new UsageException("--width must be between 16 and 14000");
        }
        if (!(polarReachDeg >= 5 && polarReachDeg <= 180)) {
            throw new UsageException("--polar-reach must be between 5 and 180");
        }
        if (strip != null) {
            band();
        }
        if (strip != null && projection != MapProjection.CYLINDRICAL) {
            throw new UsageException("--strip goes with --projection cylindrical only");
        }
    }

    /**
     * The sheet.
     *
     * @param format whose kind of latitude is taken when none was asked for
     * @throws UsageException when the planet has no such rotation system
     */
    MapFrame frame(PlanetModel planet, MapFormat format) {
        RotationSystem chosen = system == null
                ? planet.globe().iauSystem()
                : planet.globe()
                        .system(system)
                        .orElseThrow(() -> new UsageException("rotation system \"" + system + "\" of "
                                + planet.label() + " is not known; known: "
                                + planet.globe().systems().stream()
                                        .map(RotationSystem::id)
                                        .toList()));
        boolean graphic = latitudes == null ? !format.prefersCentric() : latitudes == LatitudeKind.GRAPHIC;
        boolean polar = projection == MapProjection.NORTH_POLAR || projection == MapProjection.SOUTH_POLAR;
        double centre = centreDeg == null ? (polar ? 0 : WHOLE_DEG / 2) : centreDeg;
        if (polar) {
            double cell = 2 * polarReachDeg / widthPx;
            return new MapFrame(planet, chosen, projection, graphic, centre, 0, widthPx, widthPx, cell);
        }
        double cell = WHOLE_DEG / widthPx;
        double[] band = band();
        int height = Math.max(1, (int) Math.round((band[1] - band[0]) / cell));
        return new MapFrame(
                planet, chosen, projection, graphic, centre, (band[0] + band[1]) / 2, widthPx, height, cell);
    }

    private double[] band() {
        if (strip == null) {
            return new double[] {-90, 90};
        }
        String[] parts = strip.split(",", -1);
        try {
            double a = Double.parseDouble(parts[0]);
            double b = Double.parseDouble(parts[1]);
            double south = Math.min(a, b);
            double north = Math.max(a, b);
            if (parts.length == 2 && south >= -90 && north <= 90 && north - south >= 1) {
                return new double[] {south, north};
            }
        } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
            // told below
        }
        throw new UsageException(
                "--strip \"" + strip + "\" must be two latitudes at least 1 degree apart, e.g. --strip=-30,-10");
    }
}
