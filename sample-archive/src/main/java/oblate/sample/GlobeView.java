package oblate.sample;

import java.util.List;
import oblate.sky.ApparentDisc;
import oblate.sky.Globe;

/**
 * How the globe is turned and lit at an instant, in the axes used for drawing: e in the equator under the Earth, q in the equator a quarter turn to planetary east
 * (the preceding side), p the north pole. Lengths in equatorial radii. Immutable.
 *
 * @param polarRatio polar over equatorial radius
 * @param latDeg planetocentric latitude under the Earth (deg)
 * @param cmDeg central meridian in Systems I, II, III (deg, west-positive)
 * @param sunE part of the direction to the Sun along e
 * @param sunQ part along q
 * @param sunP part along p
 */
record GlobeView(double polarRatio, double latDeg, List<Double> cmDeg, double sunE, double sunQ, double sunP) {

    GlobeView {
        cmDeg = List.copyOf(cmDeg);
    }

    static GlobeView of(ApparentDisc disc) {
        Globe globe = disc.planet().globe();
        double sunLat = Math.toRadians(disc.subSolar().latCentricDeg());
        double east = Math.toRadians(disc.subEarth().iauLonDeg() - disc.subSolar().iauLonDeg());
        return new GlobeView(
                globe.figure().polarRatio(),
                disc.subEarth().latCentricDeg(),
                List.of(cm(disc, "1"), cm(disc, "2"), cm(disc, "3")),
                Math.cos(sunLat) * Math.cos(east),
                Math.cos(sunLat) * Math.sin(east),
                Math.sin(sunLat));
    }

    private static double cm(ApparentDisc disc, String id) {
        return disc.centralMeridianDeg(disc.planet().globe().system(id).orElseThrow());
    }

    /** Semi-axis of the outline along the projected pole, in equatorial radii. */
    double outlineRatio() {
        double b = Math.toRadians(latDeg);
        return Math.hypot(Math.sin(b), polarRatio * Math.cos(b));
    }

    /**
     * Where a point of the surface is seen.
     *
     * @param lonDeg west longitude (deg) in a system
     * @param system 0…2 for Systems I…III
     * @param latGraphicDeg planetographic latitude (deg)
     */
    Seen seen(double lonDeg, int system, double latGraphicDeg) {
        double lat = Math.toRadians(latGraphicDeg);
        double east = Math.toRadians(cmDeg.get(system) - lonDeg);
        double ne = Math.cos(lat) * Math.cos(east);
        double nq = Math.cos(lat) * Math.sin(east);
        double np = Math.sin(lat);
        double k2 = polarRatio * polarRatio;
        double size = Math.sqrt(ne * ne + nq * nq + k2 * np * np);
        double e = ne / size;
        double q = nq / size;
        double p = k2 * np / size;
        double b = Math.toRadians(latDeg);
        double mu = ne * Math.cos(b) + np * Math.sin(b);
        double mu0 = ne * sunE + nq * sunQ + np * sunP;
        return new Seen(
                q,
                p * Math.cos(b) - e * Math.sin(b),
                Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, mu)))),
                Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, mu0)))));
    }

    /**
     * A point of the surface as seen.
     *
     * @param x toward planetary east at the centre (equatorial radii)
     * @param y along the projected pole (equatorial radii)
     * @param emissionDeg angle between the surface's upright and the line of sight (deg)
     * @param incidenceDeg angle between the upright and the Sun (deg)
     */
    record Seen(double x, double y, double emissionDeg, double incidenceDeg) {}
}
