/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import oblate.sky.Globe;

/** What a person should know about a fit, one sentence each. */
record DriftWords(
        LongitudeSeries series,
        Arc arc,
        FoundMotion fit,
        double rateDegPerDay,
        List<Double> rivals,
        RateRange leftOut) {
    private static final int MANY = 12;
    private static final double SHORT_ARC_DAYS = 7;
    private static final double LARGE_REJECTED_SHARE = 0.2;
    private static final double CLEAR_CURVE = 3.5;
    private static final double LARGE_SCATTER = 1;
    private static final double CLEAR_CHOICE = 4;

    List<String> warnings() {
        List<String> words = new ArrayList<>();
        few(words);
        span(words);
        rival(words);
        rejected(words);
        scatter(words);
        choice(words);
        curve(words);
        sense(words);
        return words;
    }

    private void few(List<String> words) {
        int used = fit.used();
        if (used == 2) {
            words.add(
                    "two marks only: the line goes through both, nothing checks it, and its errors are no better than those stated with the marks");
        } else if (used < MANY) {
            words.add(text("%d marks only: one false mark among fewer than %d can take the line over", used, MANY));
        }
        if (leftOut.present() && used > 2) {
            words.add(text(
                    "with any one mark left out the drift lies between %+.2f and %+.2f deg per 30 days",
                    30 * leftOut.lowDegPerDay(), 30 * leftOut.highDegPerDay()));
        }
    }

    private void span(List<String> words) {
        double days = arc.spanDays();
        if (days < SHORT_ARC_DAYS) {
            words.add(text("short arc of %.1f days: good for fast currents only", days));
        }
    }

    private void rival(List<String> words) {
        if (!rivals.isEmpty()) {
            String others = rivals.stream()
                    .limit(3)
                    .map(rate -> text("%+.3f", rate))
                    .reduce((a, b) -> a + ", " + b)
                    .orElse("");
            words.add(text(
                    "%s deg per day instead of %+.3f piles the marks up nearly as well on other turns: a mark within the gaps would decide",
                    others, rateDegPerDay));
        }
    }

    private void rejected(List<String> words) {
        int left = arc.size() - fit.used();
        if (left > LARGE_REJECTED_SHARE * arc.size()) {
            words.add(text("%d of %d marks lie off the line: look whether they are of one feature", left, arc.size()));
        }
    }

    private void scatter(List<String> words) {
        double meanSquare = 0;
        for (double sigma : arc.sigmaDeg()) {
            meanSquare += sigma * sigma / arc.size();
        }
        if (fit.scatterDeg() > LARGE_SCATTER * Math.sqrt(meanSquare) && fit.used() > 2) {
            words.add(text(
                    "the marks scatter more than their errors say: %.2f deg were added to each", fit.scatterDeg()));
        }
    }

    /** How sure the kind of motion is. */
    private void choice(List<String> words) {
        List<Alternative> compared = fit.alternatives();
        String chosen = compared.get(0).curve().modelId();
        boolean bent = !chosen.equals(CurveKind.RATE.id());
        if (compared.size() > 1 && compared.get(1).criterion() < CLEAR_CHOICE) {
            Alternative next = compared.get(1);
            String rest = next.curve().modelId();
            if (bent) {
                words.add(text(
                        "the kind of motion is unsure: perhaps %s, but %s fits nearly as well (criterion +%.1f)",
                        chosen, rest, next.criterion()));
            } else {
                words.add(text(
                        "the rate may have varied: %s fits nearly as well as a constant rate (criterion +%.1f)",
                        rest, next.criterion()));
            }
        }
    }

    /** A parabola through the residuals of the used marks: a rate that changes shows there first. */
    private void curve(List<String> words) {
        int used = fit.used();
        if (used < MANY || !fit.curve().modelId().equals(CurveKind.RATE.id())) {
            return;
        }
        double[] weights = new double[arc.size()];
        double[] square = new double[arc.size()];
        double[] residual = new double[arc.size()];
        for (int i = 0; i < arc.size(); i++) {
            double sigma = arc.sigmaDeg()[i];
            weights[i] = fit.goodness()[i] / (sigma * sigma + fit.scatterDeg() * fit.scatterDeg());
            square[i] = arc.days()[i] * arc.days()[i];
            residual[i] = fit.residualDeg()[i];
        }
        Optional<Line> trend = Line.fit(arc.days(), square, weights);
        if (trend.isEmpty()) {
            return;
        }
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < arc.size(); i++) {
            double bent = square[i] - trend.get().at(arc.days()[i]);
            xx += weights[i] * bent * bent;
            xy += weights[i] * bent * residual[i];
        }
        double clear = Math.abs(xy) / Math.sqrt(xx * used / (used - 3.0));
        if (xx > 0 && clear > CLEAR_CURVE) {
            words.add(text(
                    "the residuals bend (%.1f standard errors): the rate changed, and one line tells only its mean over the arc",
                    clear));
        }
    }

    private void sense(List<String> words) {
        Globe globe = series.planet().globe();
        double turn = Motion.turnDegPerDay(globe, series.system(), rateDegPerDay);
        if (turn * series.system().degPerDay() <= 0) {
            words.add(
                    "the feature turns against the planet's sense of rotation; the period is given as a positive number");
        }
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
