/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Optional;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * The sheet a map is drawn on. Pixel centres are whole numbers from the top left, as in pictures; planetary east is to the right, so longitudes that are
 * positive west fall from left to right.
 *
 * @param planet whose map
 * @param system in which longitudes are told
 * @param projection how the globe is laid flat
 * @param graphic whether latitudes are planetographic; else planetocentric
 * @param middleLonDeg longitude of the middle column, or pointing down on polar maps (deg, in the system)
 * @param middleYDeg plane coordinate of the middle row (deg): 0 but for strips
 * @param widthPx columns
 * @param heightPx rows
 * @param cellDeg side of a pixel (deg)
 */
public record MapFrame(
        PlanetModel planet,
        RotationSystem system,
        MapProjection projection,
        boolean graphic,
        double middleLonDeg,
        double middleYDeg,
        int widthPx,
        int heightPx,
        double cellDeg) {
    private static final int MOST_PX = 20_000;
    private static final long MOST_AREA_PX = 100_000_000;

    /**
     * Checks the sizes.
     *
     * @throws IllegalArgumentException when a side is below 1 or the sheet too large to hold
     */
    public MapFrame {
        if (widthPx < 1
                || heightPx < 1
                || widthPx > MOST_PX
                || heightPx > MOST_PX
                || (long) widthPx * heightPx > MOST_AREA_PX
                || !(cellDeg > 0)) {
            throw new IllegalArgumentException(widthPx + " x " + heightPx + " at " + cellDeg);
        }
    }

    /**
     * A place on the sheet.
     *
     * @param lonDeg longitude in the frame's system (deg, 0…360)
     * @param latDeg latitude of the frame's kind (deg)
     */
    public record Place(double lonDeg, double latDeg) {}

    /** What lies at a pixel, or empty outside the map. */
    public Optional<Place> placeAt(double column, double row) {
        double[] at = new double[2];
        if (!projection.globe(x(column), y(row), at)) {
            return Optional.empty();
        }
        double lon = (middleLonDeg + eastSign() * at[0]) % 360;
        return Optional.of(new Place(lon < 0 ? lon + 360 : lon, at[1]));
    }

    /** The pixel of a place; it may lie outside the sheet. */
    public PixelPoint pixelOf(double lonDeg, double latDeg) {
        double[] flat = new double[2];
        projection.flat(Math.IEEEremainder(eastSign() * (lonDeg - middleLonDeg), 360), latDeg, flat);
        return new PixelPoint(
                flat[0] / cellDeg + (widthPx - 1) / 2.0, (heightPx - 1) / 2.0 - (flat[1] - middleYDeg) / cellDeg);
    }

    /** Plane coordinate of a column (deg, right). */
    double x(double column) {
        return (column - (widthPx - 1) / 2.0) * cellDeg;
    }

    /** Plane coordinate of a row (deg, up). */
    double y(double row) {
        return middleYDeg + ((heightPx - 1) / 2.0 - row) * cellDeg;
    }

    /** +1 where longitudes are positive east, else −1. */
    public int eastSign() {
        return planet.globe().longitudePositive() == LongitudeSense.EAST ? 1 : -1;
    }

    /** Planetographic latitude (deg) of one of the frame's kind. */
    double graphicDeg(double latDeg) {
        return graphic ? latDeg : planet.globe().figure().graphicFromCentricDeg(latDeg);
    }
}
