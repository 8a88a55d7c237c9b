/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import oblate.image.PixelGrid;

/**
 * One picture unrolled: brightness on an even grid of longitude and planetographic latitude (plate carrée), as much as the disc shows. North is
 * the first row; columns run from planetary west (following side) to planetary east, so with west-positive longitudes they fall from left to right,
 * as on the disc with north up. What is hidden, unlit or too near the limb is NaN. Immutable.
 */
public final class MapStrip {
    private final int columns;
    private final int rows;
    private final double cellDeg;
    private final double northDeg;
    private final double meridianDeg;
    private final int eastSign;
    private final float[] values;

    private MapStrip(int columns, int rows, double cellDeg, double northDeg, DiscFrame frame) {
        this.columns = columns;
        this.rows = rows;
        this.cellDeg = cellDeg;
        this.northDeg = northDeg;
        meridianDeg = frame.view().meridianDeg;
        eastSign = frame.view().eastSign;
        values = new float[columns * rows];
    }

    /**
     * What to unroll.
     *
     * @param southDeg southern edge, planetographic (deg, −90…90)
     * @param northDeg northern edge (deg), above it
     * @param halfWidthDeg how far to go to both sides of the central meridian (deg, 1…90)
     * @param cellDeg side of a cell (deg, 0.05…10)
     * @param largestEmissionDeg emission angle beyond which nothing is taken (deg, 1…90)
     */
    public record Extent(
            double southDeg, double northDeg, double halfWidthDeg, double cellDeg, double largestEmissionDeg) {

        /** Checks the ranges. */
        public Extent {
            if (!(southDeg >= -90
                    && northDeg <= 90
                    && southDeg < northDeg
                    && halfWidthDeg >= 1
                    && halfWidthDeg <= 90)) {
                throw new IllegalArgumentException(southDeg + " " + northDeg + " " + halfWidthDeg);
            }
            if (!(cellDeg >= 0.05 && cellDeg <= 10 && largestEmissionDeg >= 1 && largestEmissionDeg <= 90)) {
                throw new IllegalArgumentException(cellDeg + " " + largestEmissionDeg);
            }
        }
    }

    /** Unrolls one channel of a picture by bilinear samples. */
    public static MapStrip of(PixelGrid pixels, int channel, DiscFrame frame, Extent extent) {
        return of(new Plane(pixels.widthPx(), pixels.heightPx(), pixels.plane(channel)), frame, extent);
    }

    static MapStrip of(Plane plane, DiscFrame frame, Extent extent) {
        int columns = 2 * (int) Math.round(extent.halfWidthDeg() / extent.cellDeg());
        int rows = (int) Math.round((extent.northDeg() - extent.southDeg()) / extent.cellDeg());
        MapStrip map =
                new MapStrip(Math.max(1, columns), Math.max(1, rows), extent.cellDeg(), extent.northDeg(), frame);
        for (int row = 0; row < map.rows; row++) {
            for (int column = 0; column < map.columns; column++) {
                map.values[row * map.columns + column] = (float) sample(
                        plane, frame, map.lonIauDeg(column), map.latGraphicDeg(row), extent.largestEmissionDeg());
            }
        }
        return map;
    }

    private static double sample(Plane plane, DiscFrame frame, double lon, double lat, double largestEmissionDeg) {
        if (frame.emissionDeg(lon, lat) > largestEmissionDeg) {
            return Double.NaN;
        }
        PixelPoint p = frame.place(lon, lat).orElse(null);
        if (p == null || frame.incidenceDeg(lon, lat) > 90) {
            return Double.NaN;
        }
        return plane.sample(p.xPx(), p.yPx());
    }

    /** Cells from west to east. */
    public int columns() {
        return columns;
    }

    /** Cells from north to south. */
    public int rows() {
        return rows;
    }

    /** Side of a cell (deg). */
    public double cellDeg() {
        return cellDeg;
    }

    /** Brightness in a cell, in the picture's own units; NaN where the picture shows nothing usable. */
    public float value(int column, int row) {
        return values[row * columns + column];
    }

    /** East of the central meridian (deg, west negative) of a column's middle; fractions between columns are allowed. */
    public double eastDeg(double column) {
        return (column + 0.5 - columns / 2.0) * cellDeg;
    }

    /** Longitude (deg, 0…360) in the IAU's system of a column's middle; fractions between columns are allowed. */
    public double lonIauDeg(double column) {
        double lon = (meridianDeg + eastSign * eastDeg(column)) % 360;
        return lon < 0 ? lon + 360 : lon;
    }

    /** Planetographic latitude (deg) of a row's middle; fractions between rows are allowed. */
    public double latGraphicDeg(double row) {
        return northDeg - (row + 0.5) * cellDeg;
    }

    /** Row of a latitude, with fraction. */
    double rowOf(double latGraphicDeg) {
        return (northDeg - latGraphicDeg) / cellDeg - 0.5;
    }
}
