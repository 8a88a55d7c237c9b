/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.ArrayList;
import java.util.List;

/**
 * Precession (IAU 2006), nutation (IAU 2000A adjusted, terms of 0.05 mas and more) and frame bias: turns ICRF directions into the true equator and
 * equinox of date. Immutable.
 *
 * <p>Sources: precession and bias as the angles of Fukushima and Williams, Capitaine, Wallace and Chapront 2003 with the constants of the IERS
 * Conventions (2010), eq. 5.40; nutation from tables 5.3a and 5.3b there. What is left out adds up to less than 1 mas. The full
 * tables would cost each start of the program a fifth of a second.
 */
final class EarthAxis {
    private static final int ARGUMENTS = 14;
    private static final int LUNISOLAR = 5;

    /** l, l′, F, D, Ω: arc seconds; IERS Conventions (2010), eq. 5.43. */
    private static final double[][] DELAUNAY_ARCSEC = {
        {485868.249036, 1717915923.2178, 31.8792, 0.051635, -0.00024470},
        {1287104.793048, 129596581.0481, -0.5532, 0.000136, -0.00001149},
        {335779.526232, 1739527262.8478, -12.7512, -0.001037, 0.00000417},
        {1072260.703692, 1602961601.2090, -6.3706, 0.006593, -0.00003169},
        {450160.398036, -6962890.5431, 7.4722, 0.007702, -0.00005939}
    };

    /** Mean longitudes Mercury … Neptune and general precession: radians; IERS Conventions (2010), eq. 5.44. */
    private static final double[][] PLANETS_RAD = {
        {4.402608842, 2608.7903141574, 0},
        {3.176146697, 1021.3285546211, 0},
        {1.753470314, 628.3075849991, 0},
        {6.203480913, 334.0612426700, 0},
        {0.599546497, 52.9690962641, 0},
        {0.874016757, 21.3299104960, 0},
        {5.481293872, 7.4781598567, 0},
        {5.311886287, 3.8133035638, 0},
        {0, 0.02438175, 0.00000538691}
    };

    private final double[][] terms;

    EarthAxis() {
        List<double[]> rows = new ArrayList<>();
        for (String line : LeapSeconds.resourceLines("nutation.csv")) {
            if (Character.isDigit(line.charAt(0))) {
                String[] cells = line.split(",");
                double[] row = new double[cells.length];
                for (int i = 0; i < row.length; i++) {
                    row[i] = Double.parseDouble(cells[i]);
                }
                rows.add(row);
            }
        }
        terms = rows.toArray(double[][]::new);
    }

    /** The turn for an instant, in days of TT from J2000. */
    Turn at(double ttDays) {
        double t = ttDays / 36525;
        double[] nutation = nutationRad(t);
        double gamma = arcsec(t, -0.052928, 10.556378, 0.4932044, -0.00031238, -0.000002788, 0.0000000260);
        double phi = arcsec(t, 84381.412819, -46.811016, 0.0511268, 0.00053289, -0.000000440, -0.0000000176);
        double psi = arcsec(t, -0.041775, 5038.481484, 1.5584175, -0.00018522, -0.000026452, -0.0000000148);
        double epsilon = arcsec(t, 84381.406, -46.836769, -0.0001831, 0.00200340, -0.000000576, -0.0000000434);
        Turn turn =
                Turn.NONE.thenZ(gamma).thenX(phi).thenZ(-(psi + nutation[0])).thenX(-(epsilon + nutation[1]));
        return turn;
    }

    /** Nutation in longitude and in obliquity (rad) at a time in Julian centuries of TT from J2000. */
    double[] nutationRad(double t) {
        double[] arguments = argumentsRad(t);
        double psi = 0;
        double epsilon = 0;
        for (double[] term : terms) {
            double angle = 0;
            for (int i = 0; i < ARGUMENTS; i++) {
                angle += term[5 + i] * arguments[i];
            }
            double factor = term[0] == 0 ? 1 : t;
            double sin = factor * Math.sin(angle);
            double cos = factor * Math.cos(angle);
            psi += term[1] * sin + term[2] * cos;
            epsilon += term[3] * cos + term[4] * sin;
        }
        double perMicroarcsec = 1e-6 / Angles.ARCSEC_PER_RAD;
        return new double[] {psi * perMicroarcsec, epsilon * perMicroarcsec};
    }

    private static double[] argumentsRad(double t) {
        double[] arguments = new double[ARGUMENTS];
        for (int i = 0; i < LUNISOLAR; i++) {
            arguments[i] = arcsec(t, DELAUNAY_ARCSEC[i]);
        }
        for (int i = 0; i < PLANETS_RAD.length; i++) {
            arguments[LUNISOLAR + i] = polynomial(t, PLANETS_RAD[i]);
        }
        return arguments;
    }

    private static double arcsec(double t, double... coefficients) {
        return polynomial(t, coefficients) / Angles.ARCSEC_PER_RAD;
    }

    private static double polynomial(double t, double... coefficients) {
        double sum = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * t + coefficients[i];
        }
        return sum;
    }
}
