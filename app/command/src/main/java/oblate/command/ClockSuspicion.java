/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import oblate.drift.Drift;

/**
 * A picture all of whose features stand off their drifts by the same amount: its clock, not the planet.
 *
 * @param midUtc the picture's stated mid-time
 * @param marks how many marks speak
 * @param meanDeg mean of measured minus drift (deg)
 * @param fastMinutes how far its clock is fast (min), negative when slow
 * @param sigmaMinutes standard error of that (min)
 */
record ClockSuspicion(Instant midUtc, int marks, double meanDeg, double fastMinutes, double sigmaMinutes) {
    private static final int LEAST_MARKS = 3;
    private static final double LEAST_DEG = 1.5;
    private static final double LEAST_SIGMAS = 6;

    /** Looks at the residuals of all drifts, picture by picture. */
    static List<ClockSuspicion> among(List<Drift> drifts) {
        Map<Instant, List<double[]>> byPicture = new TreeMap<>();
        for (Drift drift : drifts) {
            for (int i = 0; i < drift.states().size(); i++) {
                byPicture
                        .computeIfAbsent(drift.series().points().get(i).time(), t -> new ArrayList<>())
                        .add(new double[] {
                            Math.IEEEremainder(drift.states().get(i).residualDeg(), 360),
                            drift.series().system().degPerDay()
                        });
            }
        }
        List<ClockSuspicion> found = new ArrayList<>();
        byPicture.forEach((time, residuals) -> of(time, residuals).ifPresent(found::add));
        return found;
    }

    private static Optional<ClockSuspicion> of(Instant time, List<double[]> residuals) {
        int n = residuals.size();
        if (n < LEAST_MARKS) {
            return Optional.empty();
        }
        double mean = residuals.stream().mapToDouble(r -> r[0]).average().orElse(0);
        double variance = residuals.stream()
                        .mapToDouble(r -> (r[0] - mean) * (r[0] - mean))
                        .sum()
                / (n - 1);
        double sigma = Math.sqrt(variance / n) + 0.02;
        if (Math.abs(mean) < LEAST_DEG || Math.abs(mean) < LEAST_SIGMAS * sigma) {
            return Optional.empty();
        }
        // A clock that is fast makes the central meridian too large, and with it every longitude that is counted from
        // it.
        double degPerMinute = residuals.get(0)[1] / 1440;
        return Optional.of(new ClockSuspicion(time, n, mean, mean / degPerMinute, sigma / degPerMinute));
    }
}
