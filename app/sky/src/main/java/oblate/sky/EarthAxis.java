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

    private static final double ARCSEC_PER_TURN = 1296000;

    /** In arc seconds: Fukushima's and Williams' angles γ, φ, ψ, and the mean obliquity; IERS Conventions (2010), eq. 5.40. */
    private static final double[] GAMMA = {
        -0.052928, 10.556378, 0.4932044, -0.00031238, -0.000002788, 0.0000000260
    };

    private static final double[] PHI = {84381.412819, -46.811016, 0.0511268, 0.00053289, -0.000000440, -0.0000000176};
    private static final double[] PSI = {-0.041775, 5038.481484, 1.5584175, -0.00018522, -0.000026452, -0.0000000148};
    private static final double[] EPSILON = {84381.406, -46.836769, -0.0001831, 0.00200340, -0.000000576, -0.0000000434};

    private final Terms constant;
    private final Terms growing;

    EarthAxis() {
        List<double[]> rows = new ArrayList<>();
        for (String line : LeapSeconds.resourceLines("nutation.csv")) {
            if (Character.isDigit(line.charAt(0))) {
                String[] cells = line.split(",", -1);
                double[] row = new double[cells.length];
                for (int i = 0; i < row.length; i++) {
                    row[i] = Double.parseDouble(cells[i]);
                }
                rows.add(row);
            }
        }
        constant = new Terms(rows.stream().filter(row -> row[0] == 0).toList());
        growing = new Terms(rows.stream().filter(row -> row[0] == 1).toList());
    }

    /** The turn for an instant, in days of TT from J2000. */
    Turn at(double ttDays) {
        WorkTurn turn = new WorkTurn();
        at(ttDays, turn);
        return turn.frozen();
    }

    /** As {@link #at(double)}, into a work space. */
    void at(double ttDays, WorkTurn turn) {
        double t = ttDays / 36525;
        double psi = arcsecRad(PSI, t) + nutationRad(t, turn);
        double epsilon = arcsecRad(EPSILON, t) + turn.obliquityNutationRad;
        turn.reset();
        turn.thenZ(arcsecRad(GAMMA, t));
        turn.thenX(arcsecRad(PHI, t));
        turn.thenZ(-psi);
        turn.thenX(-epsilon);
    }

    /** Apparent minus mean sidereal time (rad): Δψ cos ε; further terms make 0.003 arcsec. */
    double equationOfEquinoxesRad(double ttDays) {
        double t = ttDays / 36525;
        return nutationRad(t)[0] * Math.cos(arcsecRad(EPSILON, t));
    }

    /** Nutation in longitude and in obliquity (rad) at a time in Julian centuries of TT from J2000. */
    double[] nutationRad(double t) {
        WorkTurn turn = new WorkTurn();
        double psi = nutationRad(t, turn);
        return new double[] {psi, turn.obliquityNutationRad};
    }

    /** Nutation in longitude (rad); that in obliquity is left in the work space. */
    private double nutationRad(double t, WorkTurn turn) {
        turn.obliquityNutationRad = constant.obliquityRad(t) + t * growing.obliquityRad(t);
        return constant.longitudeRad(t) + t * growing.longitudeRad(t);
    }

    private static double arcsecRad(double[] coefficients, double t) {
        return polynomial(coefficients, t) / Angles.ARCSEC_PER_RAD;
    }

    private static double polynomial(double[] coefficients, double t) {
        double sum = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * t + coefficients[i];
        }
        return sum;
    }

    /**
     * Terms of nutation, column by column. The arguments' whole-number combinations are taken once for all: each term has its angle as a polynomial
     * of the fourth degree (turns).
     */
    private static final class Terms {
        private static final int DEGREE = 4;
        private static final double RAD_PER_MICROARCSEC = 1e-6 / Angles.ARCSEC_PER_RAD;

        private final double[] longitudeSin;
        private final double[] longitudeCos;
        private final double[] obliquityCos;
        private final double[] obliquitySin;
        private final double[][] turns = new double[DEGREE + 1][];

        Terms(List<double[]> rows) {
            longitudeSin = column(rows, 1);
            longitudeCos = column(rows, 2);
            obliquityCos = column(rows, 3);
            obliquitySin = column(rows, 4);
            for (int power = 0; power <= DEGREE; power++) {
                turns[power] = new double[rows.size()];
                for (int term = 0; term < rows.size(); term++) {
                    turns[power][term] = turns(rows.get(term), power);
                }
            }
        }

        private static double[] column(List<double[]> rows, int index) {
            return rows.stream().mapToDouble(row -> row[index]).toArray();
        }

        private static double turns(double[] row, int power) {
            double sum = 0;
            for (int i = 0; i < DELAUNAY_ARCSEC.length; i++) {
                sum += row[5 + i] * DELAUNAY_ARCSEC[i][power] / ARCSEC_PER_TURN;
            }
            for (int i = 0; i < PLANETS_RAD.length && power < PLANETS_RAD[i].length; i++) {
                sum += row[5 + DELAUNAY_ARCSEC.length + i] * PLANETS_RAD[i][power] * Turns.PER_RAD;
            }
            return power == 0 ? sum - Math.rint(sum) : sum;
        }

        double longitudeRad(double t) {
            return sum(longitudeSin, longitudeCos, t);
        }

        double obliquityRad(double t) {
            return sum(obliquitySin, obliquityCos, t);
        }

        private double sum(double[] sin, double[] cos, double t) {
            double[] c0 = turns[0];
            double[] c1 = turns[1];
            double[] c2 = turns[2];
            double[] c3 = turns[3];
            double[] c4 = turns[4];
            double sum = 0;
            for (int i = 0; i < sin.length; i++) {
                double angle = c0[i] + t * (c1[i] + t * (c2[i] + t * (c3[i] + t * c4[i])));
                sum += sin[i] * Turns.sin(angle) + cos[i] * Turns.cos(angle);
            }
            return sum * RAD_PER_MICROARCSEC;
        }
    }
}
