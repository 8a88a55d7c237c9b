/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

/**
 * How much of a moon's light another takes away, by areas alone: even discs, no limb darkening, no phase.
 *
 * @param backKm radius of the back moon
 * @param frontKm radius of the front moon, or of its shadow at half light, at the back moon
 * @param sunKm radius of the Sun's disc cast through the front moon's centre onto the back moon's plane; 0 for an occultation
 */
record LightDrop(double backKm, double frontKm, double sunKm) {
    private static final int RINGS = 24;
    private static final int SPOKES = 48;

    /** Share of the back moon's light lost when the centres are so far apart (km). */
    double ofBack(double apartKm) {
        if (sunKm <= 0) {
            return overlap(backKm, frontKm, apartKm) / (Math.PI * backKm * backKm);
        }
        double sum = 0;
        for (int i = 0; i < RINGS; i++) {
            // rings of equal area
            double radius = backKm * Math.sqrt((i + 0.5) / RINGS);
            for (int j = 0; j < SPOKES; j++) {
                double angle = 2 * Math.PI * (j + 0.5) / SPOKES;
                double fromAxis = Math.hypot(apartKm + radius * Math.cos(angle), radius * Math.sin(angle));
                sum += overlap(sunKm, frontKm, fromAxis);
            }
        }
        return sum / (RINGS * SPOKES) / (Math.PI * sunKm * sunKm);
    }

    /** Area common to two circles. */
    private static double overlap(double r, double q, double apart) {
        if (apart >= r + q) {
            return 0;
        }
        if (apart <= Math.abs(r - q)) {
            double small = Math.min(r, q);
            return Math.PI * small * small;
        }
        double a = clamp((apart * apart + r * r - q * q) / (2 * apart * r));
        double b = clamp((apart * apart + q * q - r * r) / (2 * apart * q));
        double alpha = Math.acos(a);
        double beta = Math.acos(b);
        return r * r * (alpha - Math.sin(alpha) * a) + q * q * (beta - Math.sin(beta) * b);
    }

    private static double clamp(double cosine) {
        return Math.max(-1, Math.min(1, cosine));
    }
}
