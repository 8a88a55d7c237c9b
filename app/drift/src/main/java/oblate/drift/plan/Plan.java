/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What one night or several have to offer.
 *
 * @param wish what was asked for
 * @param nights in order
 * @param untimed features that get no time, and why
 * @param remarks what a person should know, one sentence each
 * @param nextWindow without a window in any of the nights: date of the next evening that has one, empty when there is none within some 800 days or before
 *     the ephemeris ends
 * @param cautions for safety, one sentence each
 */
public record Plan(
        PlanWish wish,
        List<PlanNight> nights,
        List<Untimed> untimed,
        List<String> remarks,
        Optional<LocalDate> nextWindow,
        List<String> cautions) {

    /** Copies the lists. */
    public Plan {
        nights = List.copyOf(nights);
        untimed = List.copyOf(untimed);
        remarks = List.copyOf(remarks);
        cautions = List.copyOf(cautions);
    }

    /** Whether any of the nights has a window. */
    public boolean hasWindow() {
        return nights.stream().anyMatch(n -> !n.windows().isEmpty());
    }
}
