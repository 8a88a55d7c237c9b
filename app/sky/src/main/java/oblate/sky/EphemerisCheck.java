/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** Looks whether positions can be true: each body at a distance it really has, no jump where records meet. */
final class EphemerisCheck {
    /** Least and greatest distance from the Sun, Mercury … Pluto, generous by some hundredths (au): perihelia and aphelia with their swings over centuries. */
    private static final double[][] FROM_SUN_AU = {
        {0.29, 0.48},
        {0.70, 0.74},
        {0.97, 1.03},
        {1.35, 1.70},
        {4.85, 5.55},
        {8.90, 10.20},
        {18.10, 20.30},
        {29.50, 30.60},
        {29.00, 50.00}
    };

    private static final double SUN_FROM_BARYCENTRE_AU = 0.02;
    private static final double MOON_NEAREST_KM = 350_000;
    private static final double MOON_FARTHEST_KM = 410_000;
    /** What neighbouring records may differ by where they meet (km); real files join to a few metres. */
    private static final double JOIN_KM = 1;

    private final Ephemeris ephemeris;
    private final String fileName;

    private EphemerisCheck(Ephemeris ephemeris, String fileName) {
        this.ephemeris = ephemeris;
        this.fileName = fileName;
    }

    /**
     * Looks at every record.
     *
     * @throws oblate.base.ProblemException {@link SkyProblem#BAD_EPHEMERIS} naming the first thing that cannot be
     */
    static void of(Ephemeris ephemeris, String fileName) {
        EphemerisCheck check = new EphemerisCheck(ephemeris, fileName);
        double step = ephemeris.daysPerRecord();
        int records = (int) Math.round((ephemeris.lastTdbDay() - ephemeris.firstTdbDay()) / step);
        for (int i = 0; i < records; i++) {
            double start = ephemeris.firstTdbDay() + i * step;
            check.distances(start + step / 3);
            if (i > 0) {
                check.joins(start, i);
            }
        }
    }

    private void distances(double tdbDays) {
        Vec3 sun = ephemeris.bodyKm(Ephemeris.SUN, tdbDays);
        expect("Sun", tdbDays, sun.norm() / Starlight.AU_KM, 0, SUN_FROM_BARYCENTRE_AU, "au from the barycentre");
        double moonKm = ephemeris.bodyKm(Ephemeris.MOON, tdbDays).norm();
        expect("Moon", tdbDays, moonKm, MOON_NEAREST_KM, MOON_FARTHEST_KM, "km from the Earth");
        for (int body = 1; body <= FROM_SUN_AU.length; body++) {
            if (ephemeris.has(body)) {
                double au = ephemeris.bodyKm(body, tdbDays).minus(sun).norm() / Starlight.AU_KM;
                double[] range = FROM_SUN_AU[body - 1];
                expect("body " + body, tdbDays, au, range[0], range[1], "au from the Sun");
            }
        }
    }

    private void expect(String what, double tdbDays, double value, double least, double greatest, String unit) {
        if (!(value >= least && value <= greatest)) {
            throw EphemerisHead.bad(
                    fileName,
                    String.format(
                            java.util.Locale.ROOT,
                            "at JD %.1f it puts the %s %.4g %s, which cannot be",
                            ephemeris.jd(tdbDays),
                            what,
                            value,
                            unit));
        }
    }

    private void joins(double tdbDays, int record) {
        for (int body = 1; body <= EphemerisLayout.BODIES; body++) {
            if (ephemeris.has(body)
                    && !(ephemeris
                                    .atRecordStart(body, record)
                                    .minus(ephemeris.atRecordEnd(body, record - 1))
                                    .norm()
                            < JOIN_KM)) {
                throw EphemerisHead.bad(
                        fileName,
                        String.format(
                                java.util.Locale.ROOT,
                                "body %d jumps at JD %.1f, where two records meet",
                                body,
                                ephemeris.jd(tdbDays)));
            }
        }
    }
}
