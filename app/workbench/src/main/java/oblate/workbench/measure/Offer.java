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
import oblate.disc.PixelPoint;
import oblate.disc.SurfacePoint;
import oblate.sky.ApparentDisc;
import oblate.sky.RotationSystem;
import oblate.workbench.look.Figures;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/**
 * A name offered for a mark.
 *
 * @param feature the feature; its id is 0 when it is to be made
 * @param detail what speaks for it, a few words
 * @param sigmas distance from the expected place in standard errors; infinite when nothing is expected
 */
record Offer(Feature feature, String detail, double sigmas) {
    private static final Texts TEXTS = Texts.of(Offer.class);
    /** Beyond this many standard errors a name is listed but not put forward. */
    static final double NEAR_SIGMAS = 5;

    private static final double MOON_SIGMAS = 20;

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
                        new Offer(feature, TEXTS.text("offer.unexpected", feature.kind()), Double.POSITIVE_INFINITY));
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

    /**
     * Offers of moons and shadows predicted near a mark.
     *
     * @param known features of the planet
     * @param pixel the mark
     * @param pickSigmaPx its standard error along any one direction (px)
     */
    static List<Offer> ofMoons(
            List<MoonSpot> spots, List<Feature> known, String planetId, PixelPoint pixel, double pickSigmaPx) {
        List<Offer> offers = new ArrayList<>();
        for (MoonSpot spot : spots) {
            double right = pixel.xPx() - spot.at().xPx();
            double down = pixel.yPx() - spot.at().yPx();
            double away = Math.hypot(right, down);
            double sigmas = away / Math.hypot(spot.sigmaPx(), pickSigmaPx);
            if (!spot.isVisible() || (sigmas > MOON_SIGMAS && away > 2 * spot.radiusPx())) {
                continue;
            }
            Feature feature = known.stream()
                    .filter(f -> f.kind().equals(spot.kind())
                            && f.name()
                                    .toLowerCase(Locale.ROOT)
                                    .contains(spot.moon().toLowerCase(Locale.ROOT)))
                    .findFirst()
                    .orElseGet(() -> new Feature(
                            0,
                            planetId,
                            spot.featureName(),
                            spot.kind(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.empty()));
            String words = TEXTS.text("offer.predicted", Figures.fixed(away, 1)) + "   "
                    + Figures.fixed(sigmas, sigmas < 9.95 ? 1 : 0) + " σ"
                    + (spot.state().isEmpty() || spot.shadow() ? "" : "   " + spot.state());
            offers.add(new Offer(feature, words, sigmas));
        }
        return offers;
    }

    /** Both lists together, best first; a moon already there as a known feature is told only once. */
    static List<Offer> merged(List<Offer> moons, List<Offer> others) {
        Set<String> names = new HashSet<>();
        moons.forEach(o -> names.add(o.feature().name().toLowerCase(Locale.ROOT)));
        List<Offer> all = new ArrayList<>(moons);
        others.stream()
                .filter(o -> !names.contains(o.feature().name().toLowerCase(Locale.ROOT)))
                .forEach(all::add);
        all.sort(Comparator.comparingDouble(Offer::sigmas)
                .thenComparing(o -> o.feature().name()));
        return List.copyOf(all);
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
            found.add(new Offer(fresh, TEXTS.text("offer.new", kind), Double.POSITIVE_INFINITY));
        }
        return List.copyOf(found);
    }
}
