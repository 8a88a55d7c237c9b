/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/** Looks up where places of the globe are in one picture, and how they are lit and seen there. Not safe for many threads: it remembers the last place. */
final class MapSight {
    /** The Sun may stand lower than the observer by this share of the cosine. */
    static final double LIT_SHARE = 0.5;

    /** Blur carries a ring's light so far beyond its edges (equatorial radii). */
    private static final double RING_MARGIN = 0.02;

    private final GlobeView view;
    private final DiscFrame frame;
    private final double leastCosine;

    double xPx;
    double yPx;
    /** Cosine of the emission angle. */
    double seen;
    /** Cosine of the incidence angle. */
    double lit;

    /** @param largestEmissionDeg beyond it nothing is taken (deg) */
    MapSight(DiscFrame frame, double largestEmissionDeg) {
        this.frame = frame;
        view = frame.view();
        leastCosine = Math.cos(Math.toRadians(largestEmissionDeg));
    }

    /** Whether a place can be taken from the picture: seen and lit well enough, no ring before it and no ring's shadow on it. */
    boolean look(double lonIauDeg, double latGraphicDeg) {
        double lat = Math.toRadians(latGraphicDeg);
        double east = Math.toRadians(view.eastSign * (lonIauDeg - view.meridianDeg));
        double cos = Math.cos(lat);
        double sin = Math.sin(lat);
        double scale = 1 / Math.sqrt(cos * cos + view.q * view.q * sin * sin);
        double bx = cos * scale * Math.cos(east);
        double by = cos * scale * Math.sin(east);
        double bz = view.q * view.q * sin * scale;
        double nz = view.k * bz;
        double length = Math.sqrt(bx * bx + by * by + nz * nz);
        seen = (bx * view.cosB + nz * view.sinB) / length;
        lit = (bx * view.sunX + by * view.sunY + nz * view.sunZ) / length;
        if (seen < leastCosine || lit < LIT_SHARE * leastCosine) {
            return false;
        }
        double y = view.sightY(bx, bz);
        if (view.ringOuter > 0 && ringed(bx, by, bz, y)) {
            return false;
        }
        PixelPoint p = frame.placeOffset(by, y);
        xPx = p.xPx();
        yPx = p.yPx();
        return true;
    }

    private boolean ringed(double bx, double by, double bz, double y) {
        double r = view.ringRadius(by, y);
        boolean before = view.ringInFront(y) && r > view.ringInner - RING_MARGIN && r < view.ringOuter + RING_MARGIN;
        return before || view.ringShadow(bx, by, bz);
    }
}
