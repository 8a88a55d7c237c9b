/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import oblate.sky.GroundView;

/** What to beware of in the nights of a plan; common practice, which replaces no local code. */
public final class PlanCautions {
    private static final Set<String> INNER = Set.of("mercury", "venus");

    private final PlanWish wish;
    private final List<PlanNight> nights;

    PlanCautions(PlanWish wish, List<PlanNight> nights) {
        this.wish = wish;
        this.nights = nights;
    }

    List<String> sentences() {
        List<String> said = new ArrayList<>();
        sun().ifPresent(said::add);
        said.addAll(always());
        return said;
    }

    /** Those of every night, one sentence each. */
    public static List<String> always() {
        return List.of(
                "Mains power outdoors: residual-current device, dry connectors, low voltage where you can; dew makes"
                        + " everything wet. Fixed wiring is for a licensed electrician.",
                "Lights and lasers: never toward people, aircraft or vehicles. Cables, steps and tiredness are risks"
                        + " too. Local codes and rules come first (docs/cautions.md).");
    }

    private Optional<String> sun() {
        String planet = wish.planet().label();
        Optional<GroundView> danger = nights.stream()
                .flatMap(n -> Stream.concat(n.windows().stream().flatMap(w -> w.track().stream()), n.best().stream()))
                .filter(GroundView::isSunDangerous)
                .findFirst();
        if (danger.isPresent()) {
            return Optional.of(String.format(
                    Locale.ROOT,
                    "THE SUN is up or about to rise at %s, %.0f deg from %s: never let it into an unfiltered"
                            + " telescope or finder, not even while slewing.",
                    danger.get().time().iso(0),
                    danger.get().sunSeparationDeg(),
                    planet));
        }
        if (INNER.contains(wish.planet().id()) || wish.sunBelowDeg() > -1) {
            return Optional.of("THE SUN: when looking for " + planet
                    + " by day, keep tube and finder in shade, cap the finder, and never sweep toward the Sun.");
        }
        return Optional.empty();
    }
}
