/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.archive.Archive;
import oblate.archive.Feature;
import oblate.base.ProblemException;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.drift.Prediction;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.workbench.words.Texts;

/** Works out where each known feature is expected on a picture: by its drift, else where it was last seen. Stateless. */
final class Expectations {
    private static final Texts TEXTS = Texts.of(Expectations.class);
    /** How far a drift may be off that its marks cannot tell (deg). */
    private static final double FLOOR_DEG = 0.5;

    /** How fast a feature may stray whose drift is not known (deg per day). */
    private static final double STRAY_DEG_PER_DAY = 0.3;

    private static final double LAT_SIGMA_DEG = 1.0;

    /** Marks this close in time are of the same look at the feature. */
    private static final Duration SAME_LOOK = Duration.ofMinutes(1);

    private Expectations() {}

    /**
     * All features of a planet with at least one mark on another picture, in order of name.
     *
     * @param time mid-time of the picture, UTC; marks of this very instant are left out, so that a picture does not predict itself
     */
    static List<Expected> of(Archive archive, PlanetModel planet, ApparentDisc disc, Instant time) {
        Map<String, Feature> features = new HashMap<>();
        archive.features(planet.id()).forEach(f -> features.put(f.name(), f));
        List<Expected> all = new ArrayList<>();
        for (LongitudeSeries series : new MarkSeries().ofArchive(archive, planet, Optional.empty())) {
            List<LongitudePoint> others = series.points().stream()
                    .filter(p -> Duration.between(p.time(), time).abs().compareTo(SAME_LOOK) > 0)
                    .toList();
            Feature feature = features.get(series.feature());
            if (!others.isEmpty() && feature != null) {
                all.add(one(
                        new LongitudeSeries(series.feature(), planet, series.system(), others), feature, disc, time));
            }
        }
        all.sort(Comparator.comparing(e -> e.feature().name()));
        return List.copyOf(all);
    }

    private static Expected one(LongitudeSeries series, Feature feature, ApparentDisc disc, Instant time) {
        double lat = series.points().stream()
                .map(LongitudePoint::latGraphicDeg)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .average()
                .orElse(0);
        try {
            Drift drift = new DriftFitter().fit(series);
            Prediction there = drift.at(time);
            double sigma = Math.hypot(Math.hypot(there.sigmaLonDeg(), drift.scatterDeg()), FLOOR_DEG);
            int used = series.points().size() - drift.rejected();
            return new Expected(
                    feature,
                    iau(disc, series, there.lonDeg()),
                    sigma,
                    drift.meanLatDeg().orElse(lat),
                    LAT_SIGMA_DEG,
                    TEXTS.text("expected.drift", Long.toString(used)),
                    true);
        } catch (ProblemException e) {
            // Too few marks for a drift: where it was seen nearest in time, less and less surely.
            LongitudePoint near = series.points().stream()
                    .min(Comparator.comparing(
                            p -> Duration.between(p.time(), time).abs()))
                    .orElseThrow();
            double days = Duration.between(near.time(), time).abs().toSeconds() / 86_400.0;
            double sigma = Math.hypot(Math.hypot(near.sigmaDeg(), FLOOR_DEG), STRAY_DEG_PER_DAY * days);
            return new Expected(
                    feature,
                    iau(disc, series, near.lonDeg()),
                    sigma,
                    near.latGraphicDeg().orElse(lat),
                    LAT_SIGMA_DEG,
                    TEXTS.text("expected.seen", Long.toString(Math.round(days))),
                    false);
        }
    }

    private static double iau(ApparentDisc disc, LongitudeSeries series, double lonDeg) {
        return disc.convertLonDeg(
                ((lonDeg % 360) + 360) % 360,
                series.system(),
                disc.planet().globe().iauSystem());
    }
}
