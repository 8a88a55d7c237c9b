/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

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

    private static final double RAD_PER_MICROARCSEC = 1e-6 / Angles.ARCSEC_PER_RAD;

    /** In arc seconds: Fukushima's and Williams' angles γ, φ, ψ, and the mean obliquity; IERS Conventions (2010), eq. 5.40. */
    private static final double[] GAMMA = {-0.052928, 10.556378, 0.4932044, -0.00031238, -0.000002788, 0.0000000260};

    private static final double[] PHI = {84381.412819, -46.811016, 0.0511268, 0.00053289, -0.000000440, -0.0000000176};
    private static final double[] PSI = {-0.041775, 5038.481484, 1.5584175, -0.00018522, -0.000026452, -0.0000000148};
    private static final double[] EPSILON = {84381.406, -46.836769, -0.0001831, 0.00200340, -0.000000576, -0.0000000434
    };

    /** The largest whole number by which a term of the table multiplies each argument. */
    private static final int[] MOST = {3, 2, 4, 4, 3, 0, 8, 12, 16, 4, 5, 0, 0, 2};

    /** Work space: places for all multiples of all arguments. */
    static final int ANGLES = 2 * Arrays.stream(MOST).sum();

    private final int firstGrowing;
    private final int[][] factors;
    private final double[][] amounts;

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
        // Alike terms beside one another: the processor then foresees the inner loop's length.
        rows.sort(Comparator.comparingDouble((double[] row) -> row[0]).thenComparing(row -> factors(row).length));
        firstGrowing = (int) rows.stream().filter(row -> row[0] == 0).count();
        factors = rows.stream().map(EarthAxis::factors).toArray(int[][]::new);
        amounts = rows.stream().map(row -> Arrays.copyOfRange(row, 1, 5)).toArray(double[][]::new);
    }

    /** Where in the work space the multiples of arguments stand that make up a term's angle. */
    private static int[] factors(double[] row) {
        return IntStream.range(0, MOST.length)
                .filter(i -> row[5 + i] != 0)
                .map(i -> place(i, (int) row[5 + i]))
                .toArray();
    }

    /** The multiples of an argument stand as 1, −1, 2, −2 … behind those of the argument before. */
    private static int place(int argument, int multiple) {
        if (Math.abs(multiple) > MOST[argument]) {
            throw new IllegalArgumentException("argument " + argument + " times " + multiple);
        }
        int before = 2 * Arrays.stream(MOST, 0, argument).sum();
        return before + 2 * Math.abs(multiple) - (multiple > 0 ? 2 : 1);
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

    /**
     * Nutation in longitude (rad); that in obliquity is left in the work space. A term's angle is a sum of multiples of few arguments, so its cosine and
     * sine are a product of theirs: only those of the arguments themselves are looked up.
     */
    private double nutationRad(double t, WorkTurn turn) {
        setMultiples(t, turn.cosines, turn.sines);
        double psiGrowing = addTerms(firstGrowing, factors.length, turn);
        double epsilonGrowing = turn.obliquityNutationRad;
        double psi = addTerms(0, firstGrowing, turn);
        turn.obliquityNutationRad += t * epsilonGrowing;
        return psi + t * psiGrowing;
    }

    private double addTerms(int first, int end, WorkTurn turn) {
        double[] cosines = turn.cosines;
        double[] sines = turn.sines;
        double psi = 0;
        double epsilon = 0;
        for (int term = first; term < end; term++) {
            int[] places = factors[term];
            double cos = cosines[places[0]];
            double sin = sines[places[0]];
            for (int i = 1; i < places.length; i++) {
                double c = cosines[places[i]];
                double s = sines[places[i]];
                double product = cos * c - sin * s;
                sin = sin * c + cos * s;
                cos = product;
            }
            double[] amount = amounts[term];
            psi += amount[0] * sin + amount[1] * cos;
            epsilon += amount[2] * cos + amount[3] * sin;
        }
        turn.obliquityNutationRad = epsilon * RAD_PER_MICROARCSEC;
        return psi * RAD_PER_MICROARCSEC;
    }

    private static void setMultiples(double t, double[] cosines, double[] sines) {
        int place = 0;
        for (int argument = 0; argument < MOST.length; argument++) {
            if (MOST[argument] == 0) {
                continue;
            }
            double rad = argument < DELAUNAY_ARCSEC.length
                    ? arcsecRad(DELAUNAY_ARCSEC[argument], t)
                    : polynomial(PLANETS_RAD[argument - DELAUNAY_ARCSEC.length], t);
            double c = Math.cos(rad);
            double s = Math.sin(rad);
            double cos = c;
            double sin = s;
            for (int multiple = 1; multiple <= MOST[argument]; multiple++) {
                cosines[place] = cos;
                cosines[place + 1] = cos;
                sines[place] = sin;
                sines[place + 1] = -sin;
                place += 2;
                double product = cos * c - sin * s;
                sin = sin * c + cos * s;
                cos = product;
            }
        }
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
}
