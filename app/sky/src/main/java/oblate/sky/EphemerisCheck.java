/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.Locale;

/** Looks whether positions can be true: each body at a distance it really has, no jump where stretches meet. */
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
    /** What neighbouring stretches may differ by where they meet (km); real files join to a few metres. */
    private static final double JOIN_KM = 1;

    private final Ephemeris ephemeris;
    private final String fileName;

    private EphemerisCheck(Ephemeris ephemeris, String fileName) {
        this.ephemeris = ephemeris;
        this.fileName = fileName;
    }

    /**
     * Looks at every sub-interval of every record.
     *
     * @throws oblate.base.ProblemException {@link SkyProblem#BAD_EPHEMERIS} naming the first thing that cannot be
     */
    static void of(Ephemeris ephemeris, String fileName) {
        EphemerisCheck check = new EphemerisCheck(ephemeris, fileName);
        for (int body = 1; body <= EphemerisLayout.BODIES; body++) {
            if (ephemeris.has(body)) {
                check.body(body);
            }
        }
    }

    private void body(int body) {
        double partDays = ephemeris.daysPerRecord() / ephemeris.parts(body);
        Vec3 before = null;
        double from = ephemeris.firstTdbDay();
        for (int record = 0; record < ephemeris.records(); record++) {
            for (int part = 0; part < ephemeris.parts(body); part++) {
                distance(body, from + partDays / 2, ephemeris.inPart(body, record, part, 0));
                if (before != null) {
                    join(body, from, ephemeris.inPart(body, record, part, -1).minus(before));
                }
                before = ephemeris.inPart(body, record, part, 1);
                from += partDays;
            }
        }
    }

    private void distance(int body, double tdbDays, Vec3 placeKm) {
        if (body == Ephemeris.SUN) {
            double au = placeKm.norm() / Starlight.AU_KM;
            expect("Sun", tdbDays, au, 0, SUN_FROM_BARYCENTRE_AU, "au from the barycentre");
        } else if (body == Ephemeris.MOON) {
            expect("Moon", tdbDays, placeKm.norm(), MOON_NEAREST_KM, MOON_FARTHEST_KM, "km from the Earth");
        } else {
            Vec3 sun = ephemeris.bodyKm(Ephemeris.SUN, tdbDays);
            double[] range = FROM_SUN_AU[body - 1];
            double au = placeKm.minus(sun).norm() / Starlight.AU_KM;
            expect("body " + body, tdbDays, au, range[0], range[1], "au from the Sun");
        }
    }

    private void expect(String what, double tdbDays, double value, double least, double greatest, String unit) {
        if (!(value >= least && value <= greatest)) {
            throw EphemerisHead.bad(
                    fileName,
                    String.format(
                            Locale.ROOT,
                            "at JD %.1f it puts the %s %.4g %s, which cannot be",
                            ephemeris.jd(tdbDays),
                            what,
                            value,
                            unit));
        }
    }

    private void join(int body, double tdbDays, Vec3 jumpKm) {
        if (!(jumpKm.norm() < JOIN_KM)) {
            throw EphemerisHead.bad(
                    fileName,
                    String.format(
                            Locale.ROOT,
                            "body %d jumps at JD %.1f, where two stretches meet",
                            body,
                            ephemeris.jd(tdbDays)));
        }
    }
}
