/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.archive.Feature;
import oblate.archive.NewMark;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.disc.DiscFit;
import oblate.disc.DiscFrame;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.ApparentDisc;
import oblate.sky.Sky;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Pattern;
import oblate.workbench.pictures.SystemLabel;
import org.junit.jupiter.api.Test;

/** Layers are planned without a screen; these tests need none. */
class LayersTest {
    private static final Instant TIME = Instant.parse("2031-03-24T21:05:30Z");
    private final Jupiter jupiter = new Jupiter();
    private final ApparentDisc disc = Sky.bundled().disc(jupiter, TIME);
    private final Placement placement = new Placement(320, 240, 200, 24, false);
    private final DiscFrame frame = new DiscFrame(disc, placement);

    private LayerInput input(Trust trust, List<StoredMark> marks, Optional<Long> chosen, List<Expected> expected) {
        return new LayerInput(frame, trust, SystemLabel.usual(jupiter), marks, chosen, expected, moons(), 15);
    }

    private List<MoonSpot> moons() {
        DiscFit fit = new DiscFit(
                placement,
                PlacementCovariance.diagonal(0.1, 0.1, 0.2, 0.2),
                Trust.TRUSTED,
                List.of(),
                "test",
                "grey",
                0.1,
                100,
                List.of());
        StoredFit stored = new StoredFit(1, 1, fit, disc.ephemeris(), "test", TIME, Optional.empty(), Optional.empty());
        return MoonSpot.of(MoonSpot.Places.of(Sky.bundled(), disc), frame, stored, 3);
    }

    private List<Drawn> plan(String layer, LayerInput input) {
        return Layers.all().stream()
                .filter(l -> l.id().equals(layer))
                .findFirst()
                .orElseThrow()
                .plan(input);
    }

    private StoredMark mark(long id, PixelPoint pixel, Optional<String> name) {
        var measured =
                new MarkMeasurer().measure(frame, PlacementCovariance.diagonal(0.1, 0.1, 0.2, 0.2), pixel, 0.7, 3);
        NewMark mark = new NewMark(
                1,
                Optional.of(1L),
                Optional.empty(),
                pixel,
                0.7,
                measured.map(m -> m.point()),
                measured.map(m -> m.errors()),
                "centre",
                "test");
        return new StoredMark(id, mark, Map.of(), name, TIME, TIME, Optional.empty(), Optional.empty());
    }

    private Expected expected(String name, double lonIauDeg, double latDeg, boolean fromDrift) {
        Feature feature = new Feature(7, "jupiter", name, "spot", Optional.empty(), Optional.empty(), Optional.empty());
        return new Expected(feature, lonIauDeg, 1, latDeg, 1, "drift of 5 marks", fromDrift);
    }

    @Test
    void theOutlineIsAnEllipseAsWideAsTheEquatorAndFlattened() {
        Drawn.Line outline = (Drawn.Line) plan("outline", input(Trust.TRUSTED, List.of(), Optional.empty(), List.of()))
                .get(0);
        double most = outline.points().stream()
                .mapToDouble(p -> Math.hypot(p.xPx() - 320, p.yPx() - 240))
                .max()
                .orElseThrow();
        double least = outline.points().stream()
                .mapToDouble(p -> Math.hypot(p.xPx() - 320, p.yPx() - 240))
                .min()
                .orElseThrow();
        assertThat(most).isEqualTo(200, offset(0.05));
        assertThat(least / most)
                .isEqualTo(
                        jupiter.globe()
                                .figure()
                                .apparentAxisRatio(disc.subEarth().latCentricDeg()),
                        offset(1e-3));
    }

    @Test
    void aDoubtfulFitIsDottedNotOnlyColoured() {
        assertThat(((Drawn.Line) plan("outline", input(Trust.TRUSTED, List.of(), Optional.empty(), List.of()))
                                .get(0))
                        .pattern())
                .isEqualTo(Pattern.SOLID);
        assertThat(((Drawn.Line) plan("outline", input(Trust.DOUBTFUL, List.of(), Optional.empty(), List.of()))
                                .get(0))
                        .pattern())
                .isEqualTo(Pattern.DOTTED);
    }

    @Test
    void everyGridPointLiesOnTheDiscAndLabelsStandWhereTheySay() {
        List<Drawn> grid = plan("grid", input(Trust.TRUSTED, List.of(), Optional.empty(), List.of()));
        assertThat(grid).hasSizeGreaterThan(15);
        int labels = 0;
        for (Drawn drawn : grid) {
            if (drawn instanceof Drawn.Line line) {
                line.points().forEach(p -> assertThat(Math.hypot(p.xPx() - 320, p.yPx() - 240))
                        .isLessThan(200.5));
            } else if (drawn instanceof Drawn.Words words && !words.text().matches("[+\u2212].*")) {
                var at = frame.locate(words.at().xPx(), words.at().yPx()).orElseThrow();
                double lon = at.lonDeg(disc, SystemLabel.usual(jupiter));
                assertThat(Math.abs(Math.IEEEremainder(
                                lon - Double.parseDouble(words.text().replace("°", "")), 360)))
                        .isLessThan(0.01);
                labels++;
            }
        }
        assertThat(labels).isBetween(3, 5);
    }

    @Test
    void marksShowTheirNamesAndTheChosenOneStandsOut() {
        List<Drawn> drawn = plan(
                "marks",
                input(
                        Trust.TRUSTED,
                        List.of(
                                mark(1, new PixelPoint(330, 250), Optional.of("oval A")),
                                mark(2, new PixelPoint(300, 200), Optional.empty())),
                        Optional.of(2L),
                        List.of()));
        Drawn.Spot named = (Drawn.Spot) drawn.get(0);
        Drawn.Spot chosen = (Drawn.Spot) drawn.get(1);
        assertThat(named.label()).isEqualTo("oval A");
        assertThat(named.ink()).isEqualTo(Ink.MARK);
        assertThat(named.pattern()).isEqualTo(Pattern.SOLID);
        assertThat(chosen.ink()).isEqualTo(Ink.CHOSEN);
        assertThat(chosen.pattern()).isEqualTo(Pattern.DOTTED);
        assertThat(chosen.at()).isEqualTo(new PixelPoint(300, 200));
    }

    @Test
    void theErrorRingIsAsLargeAsTheErrorSays() {
        StoredMark mark = mark(1, new PixelPoint(320, 245), Optional.empty());
        Drawn.Line ring = (Drawn.Line) plan("errors", input(Trust.TRUSTED, List.of(mark), Optional.empty(), List.of()))
                .get(0);
        for (PixelPoint p : ring.points()) {
            var at = frame.locate(p.xPx(), p.yPx()).orElseThrow();
            double lon = Math.IEEEremainder(
                            at.lonIauDeg() - mark.mark().point().orElseThrow().lonIauDeg(), 360)
                    / mark.mark().errors().orElseThrow().totalLonDeg();
            double lat = (at.latGraphicDeg() - mark.mark().point().orElseThrow().latGraphicDeg())
                    / mark.mark().errors().orElseThrow().totalLatDeg();
            assertThat(Math.hypot(lon, lat)).isEqualTo(1, offset(1e-3));
        }
    }

    @Test
    void whatIsExpectedIsDashedOnTheNearSideAndLeftOutOnceMarkedOrBehind() {
        double meridian = disc.subEarth().iauLonDeg();
        List<Expected> expected = List.of(
                expected("near", meridian + 10, -20, true),
                expected("last seen", meridian - 10, 20, false),
                expected("behind", meridian + 180, 0, true),
                expected("marked", meridian, 5, true));
        List<Drawn> drawn = plan(
                "expected",
                input(
                        Trust.TRUSTED,
                        List.of(mark(1, new PixelPoint(320, 230), Optional.of("marked"))),
                        Optional.empty(),
                        expected));
        assertThat(drawn).hasSize(2);
        assertThat(((Drawn.Spot) drawn.get(0)).pattern()).isEqualTo(Pattern.DASHED);
        assertThat(((Drawn.Spot) drawn.get(1)).pattern()).isEqualTo(Pattern.DOTTED);
    }

    @Test
    void offersComeNearestInSigmasFirstAndTypingFiltersOrMakesANewOne() {
        double meridian = disc.subEarth().iauLonDeg();
        StoredMark mark = mark(1, frame.place(meridian + 9.5, -20).orElseThrow(), Optional.empty());
        Feature never =
                new Feature(9, "jupiter", "never seen", "spot", Optional.empty(), Optional.empty(), Optional.empty());
        Feature moon = new Feature(10, "jupiter", "io", "moon", Optional.empty(), Optional.empty(), Optional.empty());
        List<Offer> offers = Offer.rank(
                List.of(never, moon),
                List.of(expected("far", meridian - 30, -20, true), expected("near", meridian + 10, -20, true)),
                disc,
                mark.mark().point(),
                0.3);
        assertThat(offers).extracting(o -> o.feature().name()).containsExactly("near", "far", "never seen");
        assertThat(offers.get(0).sigmas()).isLessThan(1);
        assertThat(offers.get(0).detail()).contains("II ").contains("σ").contains("drift of 5 marks");
        assertThat(Offer.filter(offers, "NEA", "jupiter", "oval"))
                .extracting(o -> o.feature().name())
                .containsExactly("near", "NEA");
        assertThat(Offer.filter(offers, "near", "jupiter", "oval")).hasSize(1);
        Offer fresh = Offer.filter(offers, "storm B", "jupiter", "storm").get(0);
        assertThat(fresh.isNew()).isTrue();
        assertThat(fresh.feature().kind()).isEqualTo("storm");
        assertThat(Offer.rank(List.of(never, moon), List.of(), disc, Optional.empty(), 1))
                .extracting(o -> o.feature().name())
                .containsExactly("io");
    }

    @Test
    void moonsAreDrawnWhereTheSkyHasThemAndHiddenOnesDotted() {
        List<Drawn> drawn = plan("moons", input(Trust.TRUSTED, List.of(), Optional.empty(), List.of()));
        var places = Sky.bundled().moons(jupiter, disc.time());
        assertThat(drawn).hasSizeGreaterThanOrEqualTo(2 * places.size());
        for (var moon : places) {
            // Independent of the layer: sky sense, the pole 24 degrees counter-clockwise from up, 200 px to a radius.
            double a = Math.toRadians(24);
            double x = 320 + 200 * (moon.xWestRadii() * Math.cos(a) - moon.yNorthRadii() * Math.sin(a));
            double y = 240 - 200 * (moon.xWestRadii() * Math.sin(a) + moon.yNorthRadii() * Math.cos(a));
            Drawn.Label label = drawn.stream()
                    .filter(Drawn.Label.class::isInstance)
                    .map(Drawn.Label.class::cast)
                    .filter(l -> l.text().startsWith(moon.name()))
                    .findFirst()
                    .orElseThrow();
            assertThat(label.at().xPx()).isEqualTo(x, offset(1e-6));
            assertThat(label.at().yPx()).isEqualTo(y, offset(1e-6));
        }
        assertThat(drawn.stream().filter(Drawn.Line.class::isInstance))
                .allMatch(d -> ((Drawn.Line) d).pattern() != Pattern.SOLID);
    }

    @Test
    void aPredictedMoonNearTheMarkIsOfferedFirstWithItsDifference() {
        MoonSpot spot = moons().stream().filter(MoonSpot::isVisible).findFirst().orElseThrow();
        PixelPoint near = new PixelPoint(spot.at().xPx() + 0.5, spot.at().yPx());
        List<Offer> offers = Offer.merged(
                Offer.ofMoons(moons(), List.of(), "jupiter", near, 0.7),
                Offer.rank(List.of(), List.of(), disc, Optional.empty(), 1));
        assertThat(offers.get(0).feature().name()).isEqualTo(spot.featureName());
        assertThat(offers.get(0).isNew()).isTrue();
        assertThat(offers.get(0).sigmas()).isLessThan(1);
        assertThat(offers.get(0).detail()).contains("0.5 px away");
        PixelPoint far = new PixelPoint(spot.at().xPx() + 80, spot.at().yPx() + 80);
        assertThat(Offer.ofMoons(List.of(spot), List.of(), "jupiter", far, 0.7)).isEmpty();
    }
}
