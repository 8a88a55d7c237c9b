package oblate.sample;

/**
 * Where the globe lies in a picture. Pixel centres are whole numbers, origin top left as displayed, x right, y down.
 *
 * @param cxPx centre of the globe
 * @param cyPx centre of the globe
 * @param rePx equatorial radius (px)
 * @param poleAngleDeg direction of the north pole from straight up, counter-clockwise as displayed (deg, −180…180)
 * @param mirrored mirror image of the sky
 */
record CameraFrame(double cxPx, double cyPx, double rePx, double poleAngleDeg, boolean mirrored) {

    /** Direction in pixels of one radius toward planetary east at the centre: celestial west when north is up. */
    double[] eastPx() {
        double a = Math.toRadians(poleAngleDeg);
        double sign = mirrored ? -1 : 1;
        return new double[] {sign * rePx * Math.cos(a), -sign * rePx * Math.sin(a)};
    }

    /** Direction in pixels of one radius along the projected pole. */
    double[] polePx() {
        double a = Math.toRadians(poleAngleDeg);
        return new double[] {-rePx * Math.sin(a), -rePx * Math.cos(a)};
    }

    double xPx(double x, double y) {
        return cxPx + x * eastPx()[0] + y * polePx()[0];
    }

    double yPx(double x, double y) {
        return cyPx + x * eastPx()[1] + y * polePx()[1];
    }
}
