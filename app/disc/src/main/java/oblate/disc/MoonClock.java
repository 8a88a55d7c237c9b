/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.List;
import java.util.Optional;

/** What the moons beside a disc say of the clock. */
final class MoonClock {
    private static final double FINE_S = 5;
    private static final double SIGNIFICANT = 4;
    private static final double AGREEING = 3;
    private static final double LEAST_OFFSET_S = 20;
    private static final double CLEARLY = 9;
    private static final double RIVAL = 4.6;
    private static final double RIVAL_APART_S = 300;

    private final MoonsBeside beside;

    MoonClock(MoonsBeside beside) {
        this.beside = beside;
    }

    /**
     * Judges the stated time.
     *
     * @param way how the picture is turned, with its likelihood over the times
     * @param placement where the disc then lies
     */
    ClockFinding judge(PictureTurn way, Placement placement) {
        Refined at = refine(placement, way.bestS);
        Refined stated = refine(placement, 0);
        boolean elsewhere = way.best - way.near > CLEARLY && at.moons >= 2;
        Refined told = elsewhere ? at : stated;
        if (told.moons < 2 || !(told.sigmaS < 1800)) {
            return new ClockFinding(
                    ClockFinding.Verdict.UNDECIDED,
                    told.moons,
                    Double.NaN,
                    Double.NaN,
                    "Fewer than two moons beside the disc were found where they can tell the time.");
        }
        boolean off = elsewhere
                || Math.abs(told.offsetS) > SIGNIFICANT * told.sigmaS && Math.abs(told.offsetS) > LEAST_OFFSET_S;
        if (!off && Math.abs(told.offsetS) > AGREEING * told.sigmaS) {
            return new ClockFinding(
                    ClockFinding.Verdict.UNDECIDED,
                    told.moons,
                    told.offsetS,
                    told.sigmaS,
                    "The moons fit another time a little better, but not surely.");
        }
        if (!off) {
            return new ClockFinding(
                    ClockFinding.Verdict.AGREES,
                    told.moons,
                    told.offsetS,
                    told.sigmaS,
                    "The moons agree with the stated time.");
        }
        boolean rivals = elsewhere
                && way.good.stream()
                        .anyMatch(g -> g[1] > way.best - RIVAL && Math.abs(g[0] - way.bestS) > RIVAL_APART_S);
        return new ClockFinding(
                ClockFinding.Verdict.DISAGREES,
                told.moons,
                told.offsetS,
                told.sigmaS,
                ClockReason.words(told.offsetS, told.sigmaS, rivals));
    }

    private record Refined(double offsetS, double sigmaS, int moons) {}

    /** Least squares for the time together with the disc's place, scale and angle, which may give way by their own errors. */
    private Refined refine(Placement placement, double startS) {
        double t = startS;
        double sigma = Double.POSITIVE_INFINITY;
        int moons = 0;
        for (int round = 0; round < 6; round++) {
            List<MoonsBeside.Hit> hits = beside.hits(placement, beside.moons(t));
            List<MoonsBeside.Spot> later = beside.expected(placement, beside.moons(t + FINE_S));
            List<MoonsBeside.Spot> earlier = beside.expected(placement, beside.moons(t - FINE_S));
            double[][] normal = new double[5][6];
            double[] priors = {
                0,
                beside.errors().sigmaCentrePx(),
                beside.errors().sigmaCentrePx(),
                beside.errors().sigmaRadiusPx() / placement.equatorialRadiusPx(),
                Math.toRadians(Math.min(5, beside.errors().sigmaPoleAngleDeg()))
            };
            for (int k = 1; k < 5; k++) {
                normal[k][k] = 1 / (priors[k] * priors[k]);
            }
            moons = 0;
            for (MoonsBeside.Hit hit : hits) {
                double[] speed = speed(hit.moon(), earlier, later);
                if (speed == null) {
                    continue;
                }
                moons++;
                double dx = hit.x() - placement.centreXPx();
                double dy = hit.y() - placement.centreYPx();
                double w = 1
                        / (MoonsBeside.MODEL_PX * MoonsBeside.MODEL_PX
                                + hit.light().sigmaPx() * hit.light().sigmaPx());
                add(normal, new double[] {speed[0], 1, 0, dx, dy}, hit.light().xPx() - hit.x(), w);
                add(normal, new double[] {speed[1], 0, 1, dy, -dx}, hit.light().yPx() - hit.y(), w);
            }
            if (moons == 0 || !(normal[0][0] > 0)) {
                return new Refined(t, Double.POSITIVE_INFINITY, moons);
            }
            double[] step = Gauss.solve(normal);
            sigma = Math.sqrt(step[5]);
            double change = Math.max(-1800, Math.min(1800, step[0]));
            t += change;
            if (Math.abs(change) < 0.5) {
                break;
            }
        }
        return new Refined(t, sigma, moons);
    }

    private static double[] speed(String moon, List<MoonsBeside.Spot> earlier, List<MoonsBeside.Spot> later) {
        Optional<MoonsBeside.Spot> a =
                earlier.stream().filter(s -> s.moon().name().equals(moon)).findFirst();
        Optional<MoonsBeside.Spot> b =
                later.stream().filter(s -> s.moon().name().equals(moon)).findFirst();
        if (a.isEmpty() || b.isEmpty()) {
            return null;
        }
        return new double[] {
            (b.get().x() - a.get().x()) / (2 * FINE_S), (b.get().y() - a.get().y()) / (2 * FINE_S)
        };
    }

    private static void add(double[][] normal, double[] row, double value, double weight) {
        for (int j = 0; j < 5; j++) {
            for (int k = 0; k < 5; k++) {
                normal[j][k] += weight * row[j] * row[k];
            }
            normal[j][5] += weight * row[j] * value;
        }
    }
}
