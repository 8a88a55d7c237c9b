/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import oblate.archive.Archive;
import oblate.archive.Feature;
import oblate.base.ProblemException;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.sky.PlanetModel;

/**
 * The features of a planet as far as they can be followed.
 *
 * @param drifts their motions
 * @param untimed those without a motion, and why
 */
public record FollowedFeatures(List<Drift> drifts, List<Untimed> untimed) {
    private static final Set<String> NOT_OF_THE_SURFACE = Set.of("moon", "shadow");

    /** Copies the lists. */
    public FollowedFeatures {
        drifts = List.copyOf(drifts);
        untimed = List.copyOf(untimed);
    }

    /** None at all. */
    public static FollowedFeatures none() {
        return new FollowedFeatures(List.of(), List.of());
    }

    /** Those of an archive, each in its own system; moons and shadows are left out. */
    public static FollowedFeatures of(Archive archive, PlanetModel planet, DriftFitter fitter) {
        List<LongitudeSeries> series = new MarkSeries().ofArchive(archive, planet, Optional.empty());
        FollowedFeatures fitted = of(series, fitter);
        Set<String> marked = new HashSet<>();
        series.forEach(one -> marked.add(one.feature()));
        List<Untimed> untimed = new ArrayList<>(fitted.untimed());
        for (Feature feature : archive.features(planet.id())) {
            if (!NOT_OF_THE_SURFACE.contains(feature.kind()) && !marked.contains(feature.name())) {
                untimed.add(new Untimed(feature.name(), "it has no mark yet"));
            }
        }
        return new FollowedFeatures(fitted.drifts(), untimed);
    }

    /** Those of some series. */
    public static FollowedFeatures of(List<LongitudeSeries> series, DriftFitter fitter) {
        List<Drift> drifts = new ArrayList<>();
        List<Untimed> untimed = new ArrayList<>();
        for (LongitudeSeries one : series) {
            try {
                drifts.add(fitter.fit(one));
            } catch (ProblemException e) {
                untimed.add(new Untimed(one.feature(), withoutName(e.getMessage(), one.feature())));
            }
        }
        return new FollowedFeatures(drifts, untimed);
    }

    /** The sentence, which begins with the feature's name where it stands alone. */
    private static String withoutName(String sentence, String feature) {
        String name = "feature \"" + feature + "\": ";
        return sentence.startsWith(name) ? sentence.substring(name.length()) : sentence;
    }
}
