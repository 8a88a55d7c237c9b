/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import oblate.archive.Feature;
import oblate.disc.SurfacePoint;
import oblate.sky.ApparentDisc;
import oblate.sky.RotationSystem;
import oblate.workbench.look.Figures;
import oblate.workbench.pictures.SystemLabel;

/**
 * A name offered for a mark.
 *
 * @param feature the feature; its id is 0 when it is to be made
 * @param detail what speaks for it, a few words
 * @param sigmas distance from the expected place in standard errors; infinite when nothing is expected
 */
record Offer(Feature feature, String detail, double sigmas) {
    /** Beyond this many standard errors a name is listed but not put forward. */
    static final double NEAR_SIGMAS = 5;

    private static final Set<String> OFF_GLOBE = Set.of("moon");

    boolean isNew() {
        return feature.id() == 0;
    }

    /**
     * Offers for a mark, best first: features expected near it, then the others by name. Beside the globe only moons are offered.
     *
     * @param point the mark's place; empty beside the globe
     * @param sigmaDeg its standard error (deg)
     */
    static List<Offer> rank(
            List<Feature> features,
            List<Expected> expected,
            ApparentDisc disc,
            Optional<SurfacePoint> point,
            double sigmaDeg) {
        List<Offer> offers = new ArrayList<>();
        Set<Long> placed = new HashSet<>();
        point.ifPresent(p -> expected.forEach(e -> {
            placed.add(e.feature().id());
            offers.add(new Offer(
                    e.feature(),
                    detail(e, disc, p, sigmaDeg),
                    e.sigmasFrom(p.lonIauDeg(), p.latGraphicDeg(), sigmaDeg)));
        }));
        for (Feature feature : features) {
            if (!placed.contains(feature.id()) && point.isEmpty() == OFF_GLOBE.contains(feature.kind())) {
                offers.add(
                        new Offer(feature, feature.kind() + ", not expected anywhere yet", Double.POSITIVE_INFINITY));
            }
        }
        offers.sort(Comparator.comparingDouble(Offer::sigmas)
                .thenComparing(o -> o.feature().name()));
        return List.copyOf(offers);
    }

    private static String detail(Expected e, ApparentDisc disc, SurfacePoint point, double sigmaDeg) {
        RotationSystem system = disc.planet().customarySystem(e.latDeg());
        double lon = disc.convertLonDeg(e.lonDeg(), disc.planet().globe().iauSystem(), system);
        double away = e.sigmasFrom(point.lonIauDeg(), point.latGraphicDeg(), sigmaDeg);
        double difference = e.lonDifferenceDeg(point.lonIauDeg());
        String sign = difference > 0 ? "+" : "";
        String sigmas = away < 9.95 ? Figures.fixed(away, 1) : Figures.fixed(away, 0);
        return SystemLabel.brief(system) + " " + Figures.longitude(lon, e.sigmaLonDeg()) + "   " + sign
                + Figures.fixed(difference, 1) + "°   " + sigmas + " σ   " + e.basis();
    }

    /** Offers whose name contains what was typed, whatever its case; and a new feature of that name, unless there is one. */
    static List<Offer> filter(List<Offer> offers, String typed, String planetId, String kind) {
        String text = typed.strip();
        if (text.isEmpty()) {
            return offers;
        }
        String small = text.toLowerCase(Locale.ROOT);
        List<Offer> found = new ArrayList<>(offers.stream()
                .filter(o -> o.feature().name().toLowerCase(Locale.ROOT).contains(small))
                .toList());
        boolean known = offers.stream().anyMatch(o -> o.feature().name().equalsIgnoreCase(text));
        if (!known) {
            Feature fresh = new Feature(0, planetId, text, kind, Optional.empty(), Optional.empty(), Optional.empty());
            found.add(new Offer(fresh, "a new " + kind, Double.POSITIVE_INFINITY));
        }
        return List.copyOf(found);
    }
}
