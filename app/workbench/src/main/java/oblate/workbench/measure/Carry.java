/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.base.ProblemException;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.words.Texts;

/**
 * How a place of one picture is followed to another: it stays in a rotation system, or moves in it as a feature drifts. Immutable.
 *
 * @param label what a person reads
 * @param system system it stays or moves in
 * @param drift the motion; empty for a place that stays
 */
record Carry(String label, RotationSystem system, Optional<Drift> drift) {
    private static final Texts TEXTS = Texts.of(Carry.class);
    /** What following a feature is called. */
    static String with(String feature) {
        return TEXTS.text("carry.with", feature);
    }

    /** A place that stays in a system. */
    static Carry in(RotationSystem system) {
        return new Carry(TEXTS.text("carry.in", system.label()), system, Optional.empty());
    }

    /** All ways: first the systems, then the features whose marks give a drift, by name. Slow. */
    static List<Carry> all(Archive archive, PlanetModel planet) {
        List<Carry> ways = new ArrayList<>();
        planet.globe().systems().forEach(s -> ways.add(in(s)));
        for (LongitudeSeries series : new MarkSeries().ofArchive(archive, planet, Optional.empty())) {
            try {
                Drift drift = new DriftFitter().fit(series);
                ways.add(new Carry(with(series.feature()), series.system(), Optional.of(drift)));
            } catch (ProblemException e) {
                // Too few marks for a drift: it cannot be followed.
            }
        }
        return List.copyOf(ways);
    }

    /** How far the place has moved in the system from one instant to another (deg). */
    double movedDeg(Instant from, Instant to) {
        return drift.map(d -> d.unwrappedLonDegAt(to) - d.unwrappedLonDegAt(from))
                .orElse(0.0);
    }

    /** Longitude (deg) in the IAU's system at another disc's instant, of what had this one at the first disc's. */
    double lonIauDeg(double lonIauDeg, ApparentDisc from, ApparentDisc to) {
        RotationSystem iau = from.planet().globe().iauSystem();
        double there = from.convertLonDeg(lonIauDeg, iau, system)
                + movedDeg(from.time().toInstant(), to.time().toInstant());
        return to.convertLonDeg((there % 360 + 360) % 360, system, iau);
    }

    @Override
    public String toString() {
        return label;
    }
}
