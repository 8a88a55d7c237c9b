/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** How well drifts of invented features are recovered. */
final class ModelScore {
    private int features;
    private int rightModel;
    private int curvedSteady;
    private int wrongTurn;
    private double square;
    private int within1;
    private int within2;
    private int falseMarks;
    private int falseOut;
    private int goodMarks;
    private int goodOut;
    private int changes;
    private int changeWithin1;
    private int changeWithin2;
    private int predicted1;
    private int predicted2;
    private int predicted;
    private int foretellable1;
    private int foretellable2;
    private int foretellable;

    void add(SimulatedFeature made, Drift drift) {
        features++;
        boolean right = drift.model().equals(made.kind().id());
        rightModel += right ? 1 : 0;
        curvedSteady += made.kind() == CurveKind.RATE && !right ? 1 : 0;
        double error = drift.rateDegPerDay() - made.rate(drift);
        square += Math.pow(error / made.boundRate(), 2);
        double pull = Math.abs(error) / drift.sigmaRateDegPerDay();
        within1 += pull < 1 ? 1 : 0;
        within2 += pull < 2 ? 1 : 0;
        double middle = made.halfSpan();
        double off = Math.IEEEremainder(drift.unwrappedLonDegAt(Sets.day(middle)) - made.lonDegAt(middle), 360);
        wrongTurn += Math.abs(error) * made.halfSpan() > 10 || Math.abs(off) > 10 ? 1 : 0;
        for (int i = 0; i < made.isFalse().length; i++) {
            boolean out = !drift.states().get(i).used();
            falseMarks += made.isFalse()[i] ? 1 : 0;
            falseOut += made.isFalse()[i] && out ? 1 : 0;
            goodMarks += made.isFalse()[i] ? 0 : 1;
            goodOut += !made.isFalse()[i] && out ? 1 : 0;
        }
        if (right && drift.motion() instanceof DriftModel.RateChange change) {
            double truth = made.halfSpan() * (1 + made.theta()[3]);
            double days = Math.abs(Drift.daysBetween(Sets.day(truth), change.changeUtc()));
            changes++;
            changeWithin1 += days < change.sigmaChangeDays() ? 1 : 0;
            changeWithin2 += days < 2 * change.sigmaChangeDays() ? 1 : 0;
        }
    }

    /** Fits without the last 20 days and looks where the feature then is. */
    void addHeldOut(SimulatedFeature made, DriftFitter fitter) {
        double end = 2 * made.halfSpan();
        List<LongitudePoint> kept = new ArrayList<>();
        for (LongitudePoint p : made.series().points()) {
            if (Drift.daysBetween(Sets.START, p.time()) < end - 20) {
                kept.add(p);
            }
        }
        Drift drift = fitter.fit(Sets.jupiter("2", kept));
        for (double day : new double[] {end - 10, end}) {
            Prediction found = drift.at(Sets.day(day));
            double pull = Math.abs(Math.IEEEremainder(found.lonDeg() - made.lonDegAt(day), 360)) / found.sigmaLonDeg();
            predicted++;
            predicted1 += pull < 1 ? 1 : 0;
            predicted2 += pull < 2 ? 1 : 0;
            if (!changesLate(made, drift)) {
                foretellable++;
                foretellable1 += pull < 1 ? 1 : 0;
                foretellable2 += pull < 2 ? 1 : 0;
            }
        }
    }

    /** Whether the rate changes so near the end of the kept marks, or after them, that no change is looked for there. */
    private static boolean changesLate(SimulatedFeature made, Drift drift) {
        double first = Drift.daysBetween(Sets.START, drift.firstUtc());
        double last = Drift.daysBetween(Sets.START, drift.lastUtc());
        return made.kind() == CurveKind.CHANGE
                && made.halfSpan() * (1 + made.theta()[3]) > last - ModelSearch.LEAST_SHARE_PER_SIDE * (last - first);
    }

    int features() {
        return features;
    }

    double rightModelShare() {
        return (double) rightModel / features;
    }

    double curvedSteadyShare() {
        return (double) curvedSteady / features;
    }

    int wrongTurns() {
        return wrongTurn;
    }

    double errorOverBound() {
        return Math.sqrt(square / features);
    }

    double within(int sigmas) {
        return (double) (sigmas == 1 ? within1 : within2) / features;
    }

    double falseLeftOut() {
        return (double) falseOut / Math.max(1, falseMarks);
    }

    double goodLeftOut() {
        return (double) goodOut / Math.max(1, goodMarks);
    }

    double changeWithin(int sigmas) {
        return (double) (sigmas == 1 ? changeWithin1 : changeWithin2) / Math.max(1, changes);
    }

    double predictedWithin(int sigmas) {
        return (double) (sigmas == 1 ? predicted1 : predicted2) / Math.max(1, predicted);
    }

    /** As {@link #predictedWithin}, without features whose rate changes where no change is looked for. */
    double foretellableWithin(int sigmas) {
        return (double) (sigmas == 1 ? foretellable1 : foretellable2) / Math.max(1, foretellable);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%4d features: error/bound %.3f, within 1 sigma %.3f, 2 sigma %.3f; right model %.3f; steady given a curve %.3f; wrong turns %d; "
                        + "false left out %.3f, good left out %.4f; change date within 1 / 2 sigma %.2f / %.2f (%d); held out 1 / 2 sigma %.3f / %.3f, without late changes %.3f / %.3f (%d)",
                features,
                errorOverBound(),
                within(1),
                within(2),
                rightModelShare(),
                curvedSteadyShare(),
                wrongTurn,
                falseLeftOut(),
                goodLeftOut(),
                changeWithin(1),
                changeWithin(2),
                changes,
                predictedWithin(1),
                predictedWithin(2),
                foretellableWithin(1),
                foretellableWithin(2),
                foretellable);
    }

    /** Half steady, a sixth each clearly accelerating, clearly changing and clearly oscillating. */
    private static void mixed(int features, long seed, DriftFitter fitter) {
        SplittableRandom random = new SplittableRandom(seed);
        ModelScore score = new ModelScore();
        CurveKind[] kinds = {
            CurveKind.RATE,
            CurveKind.RATE,
            CurveKind.RATE,
            CurveKind.ACCELERATION,
            CurveKind.CHANGE,
            CurveKind.OSCILLATION
        };
        for (int i = 0; i < features; i++) {
            CurveKind kind = kinds[i % kinds.length];
            double least = kind == CurveKind.CHANGE ? 150 : 60;
            SimulatedFeature made = SimulatedFeature.of(random, kind, least, 1e9, 1);
            score.add(made, fitter.fit(made.series()));
            score.addHeldOut(made, fitter);
        }
        System.out.println("mixed: " + score);
    }

    /** Prints the score of many invented features: number per kind (default 250), seed. */
    public static void main(String[] words) {
        int each = words.length > 0 ? Integer.parseInt(words[0]) : 250;
        long seed = words.length > 1 ? Long.parseLong(words[1]) : 1;
        DriftFitter fitter = new DriftFitter();
        mixed(4 * each, seed, fitter);
        for (double factor : new double[] {1, 1.4}) {
            for (CurveKind kind : CurveKind.values()) {
                for (double[] range : new double[][] {{5, 25}, {25, 60}, {60, 150}, {150, 1e9}}) {
                    if (kind == CurveKind.RATE && range[0] != 25) {
                        continue;
                    }
                    SplittableRandom random = new SplittableRandom(seed);
                    ModelScore score = new ModelScore();
                    for (int i = 0; i < each; i++) {
                        SimulatedFeature made = SimulatedFeature.of(random, kind, range[0], range[1], factor);
                        score.add(made, fitter.fit(made.series()));
                        score.addHeldOut(made, fitter);
                    }
                    System.out.printf(
                            Locale.ROOT, "sigma x %.1f %-12s strength %4.0f+: %s%n", factor, kind, range[0], score);
                }
            }
        }
    }
}
