package oblate.sample;

/** Where a line of sight meets the globe. One per thread; each cast overwrites the last. */
final class Ray {
    private final double cosB;
    private final double sinB;
    private final double inverseK2;
    private final GlobeView view;

    /** Point met, along e, q, p. */
    double e;

    double q;
    double p;
    /** Cosines of emission and incidence; incidence is negative on the night side. */
    double mu;

    double mu0;
    /** Planetographic latitude (deg). */
    double latGraphicDeg;
    /** Angle east of the central meridian (deg): west longitude is the central meridian minus this. */
    double eastDeg;

    Ray(GlobeView view) {
        this.view = view;
        double b = Math.toRadians(view.latDeg());
        cosB = Math.cos(b);
        sinB = Math.sin(b);
        inverseK2 = 1 / (view.polarRatio() * view.polarRatio());
    }

    /**
     * Casts the ray parallel to the line to the globe's centre.
     *
     * @param x toward planetary east (equatorial radii)
     * @param y along the projected pole (equatorial radii)
     * @return whether it meets the globe
     */
    boolean cast(double x, double y) {
        // A z² + 2 H z + C = 0 for the depth z of the meeting point on e² + q² + p²/k² = 1.
        double a = cosB * cosB + sinB * sinB * inverseK2;
        double h = y * sinB * cosB * (inverseK2 - 1);
        double c = x * x + y * y * (sinB * sinB + cosB * cosB * inverseK2) - 1;
        double root = h * h - a * c;
        if (root < 0) {
            return false;
        }
        double z = (Math.sqrt(root) - h) / a;
        e = z * cosB - y * sinB;
        q = x;
        p = z * sinB + y * cosB;
        double upP = p * inverseK2;
        double length = Math.sqrt(e * e + q * q + upP * upP);
        mu = (e * cosB + upP * sinB) / length;
        mu0 = (e * view.sunE() + q * view.sunQ() + upP * view.sunP()) / length;
        latGraphicDeg = Math.toDegrees(Math.atan2(upP, Math.sqrt(e * e + q * q)));
        eastDeg = Math.toDegrees(Math.atan2(q, e));
        return true;
    }
}
