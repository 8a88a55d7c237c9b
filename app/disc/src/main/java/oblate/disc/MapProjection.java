/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * Ways to lay a globe flat, on a sphere of radius 180°/π so that lengths are degrees: x to the right, y up, both 0 in the middle. All have north up or
 * in the middle and planetary east to the right of it, as the planet is seen from outside. Formulas: J. P. Snyder, Map Projections — A Working Manual,
 * USGS Professional Paper 1395 (1987), chapters 12, 30 and 25; FITS names: Calabretta and Greisen 2002, A&amp;A 395, 1077.
 */
public enum MapProjection {
    /** Plate carrée: longitude and latitude as they are. */
    CYLINDRICAL("CAR") {
        @Override
        void flat(double eastDeg, double latDeg, double[] out) {
            out[0] = eastDeg;
            out[1] = latDeg;
        }

        @Override
        boolean globe(double x, double y, double[] out) {
            out[0] = x;
            out[1] = y;
            return Math.abs(x) <= 180 && Math.abs(y) <= 90;
        }
    },
    /** Sinusoidal: areas are true. */
    SINUSOIDAL("SFL") {
        @Override
        void flat(double eastDeg, double latDeg, double[] out) {
            out[0] = eastDeg * Math.cos(Math.toRadians(latDeg));
            out[1] = latDeg;
        }

        @Override
        boolean globe(double x, double y, double[] out) {
            double shrink = Math.cos(Math.toRadians(y));
            out[0] = shrink < 1e-12 ? 0 : x / shrink;
            out[1] = y;
            return Math.abs(y) <= 90 && Math.abs(x) <= 180 * shrink;
        }
    },
    /** Round the north pole, distances from it true; the middle longitude points down. */
    NORTH_POLAR("ARC") {
        @Override
        void flat(double eastDeg, double latDeg, double[] out) {
            out[0] = (90 - latDeg) * Math.sin(Math.toRadians(eastDeg));
            out[1] = -(90 - latDeg) * Math.cos(Math.toRadians(eastDeg));
        }

        @Override
        boolean globe(double x, double y, double[] out) {
            out[0] = Math.toDegrees(Math.atan2(x, -y));
            out[1] = 90 - Math.hypot(x, y);
            return out[1] >= -90;
        }
    },
    /** Round the south pole, distances from it true; the middle longitude points down. */
    SOUTH_POLAR("ARC") {
        @Override
        void flat(double eastDeg, double latDeg, double[] out) {
            out[0] = -(90 + latDeg) * Math.sin(Math.toRadians(eastDeg));
            out[1] = -(90 + latDeg) * Math.cos(Math.toRadians(eastDeg));
        }

        @Override
        boolean globe(double x, double y, double[] out) {
            out[0] = Math.toDegrees(Math.atan2(-x, -y));
            out[1] = Math.hypot(x, y) - 90;
            return out[1] <= 90;
        }
    };

    private final String fitsCode;

    MapProjection(String fitsCode) {
        this.fitsCode = fitsCode;
    }

    /** The projection's name in FITS world coordinates. */
    public String fitsCode() {
        return fitsCode;
    }

    /** Plane coordinates (deg) of a point so far east of the middle (deg, −180…180). */
    abstract void flat(double eastDeg, double latDeg, double[] out);

    /** East of the middle and latitude (deg) of a point of the plane; false outside the map. */
    abstract boolean globe(double x, double y, double[] out);
}
