/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;

/**
 * The lines that come near the best one in piling up the marks, the likeliest first; of even ones the slower in the customary system.
 *
 * @param lines what they are, fitted to a thinned arc
 */
record TurnChoice(List<Choice> lines) {
    private static final double RIVAL_SHARE = 0.9;
    /** Lines this near in log-likelihood are as good as each other; the slower one is taken. */
    private static final double EVEN_LOG_LIKELIHOOD = 3;

    private static final int MOST_RIVALS = 8;
    private static final int MOST_MARKS = 2000;

    /** A line with its fit to a thinned arc. */
    record Choice(RateScan.Candidate candidate, RobustLine fit) {}

    /**
     * @param window rates looked among
     * @param stillDegPerDay drift of a feature at rest in the system customary at its latitude (deg per day)
     */
    static TurnChoice of(Arc arc, RateWindow window, double stillDegPerDay) {
        List<RateScan.Candidate> candidates = RateScan.candidates(arc, window);
        double best = candidates.get(0).pile();
        Arc thinned = arc.thinned(MOST_MARKS);
        List<Choice> choices = new ArrayList<>();
        for (RateScan.Candidate candidate : candidates) {
            if (candidate.pile() >= RIVAL_SHARE * best && choices.size() < MOST_RIVALS) {
                choices.add(new Choice(candidate, RobustLine.fit(thinned, candidate.line())));
            }
        }
        double likeliest = Double.NEGATIVE_INFINITY;
        for (Choice choice : choices) {
            likeliest = Math.max(likeliest, choice.fit().logLikelihood());
        }
        double floor = likeliest - EVEN_LOG_LIKELIHOOD;
        choices.sort((a, b) -> {
            boolean aEven = a.fit().logLikelihood() >= floor;
            boolean bEven = b.fit().logLikelihood() >= floor;
            if (aEven && bEven) {
                return Double.compare(
                        Math.abs(a.candidate().line().slope() - stillDegPerDay),
                        Math.abs(b.candidate().line().slope() - stillDegPerDay));
            }
            return aEven || bEven
                    ? Boolean.compare(bEven, aEven)
                    : Double.compare(b.fit().logLikelihood(), a.fit().logLikelihood());
        });
        return new TurnChoice(List.copyOf(choices));
    }

    Line best() {
        return lines.get(0).fit().line();
    }

    /** Rates (deg per day) of the others. */
    List<Double> rivals() {
        return lines.stream().skip(1).map(c -> c.fit().line().slope()).toList();
    }
}
