/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import oblate.archive.StoredMark;
import oblate.disc.DiscFrame;
import oblate.disc.ErrorBudget;
import oblate.disc.PixelPoint;
import oblate.disc.Polyline;
import oblate.disc.SurfacePoint;
import oblate.disc.Trust;
import oblate.sky.Region;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Pattern;
import oblate.workbench.words.Texts;

/** The layers of the canvas, from the lowest up. */
public final class Layers {
    private static final Texts TEXTS = Texts.of(Layers.class);
    private static final int LABEL_STEP_DEG = 30;
    private static final double LABEL_REACH_DEG = 66;

    /** Labels stand a little off their lines. */
    private static final double LABEL_LAT_DEG = 3.5;

    private static final double LABEL_LON_DEG = 5;
    private static final int ERROR_POINTS = 24;
    private static final double LEAST_MOON_PX = 2;

    private Layers() {}

    private record Simple(String id, Function<LayerInput, List<Drawn>> planner) implements Layer {
        @Override
        public String label() {
            return TEXTS.text("layer." + id);
        }

        @Override
        public List<Drawn> plan(LayerInput input) {
            return planner.apply(input);
        }
    }

    /** All layers. */
    public static List<Layer> all() {
        return List.of(
                new Simple("outline", Layers::outline),
                new Simple("grid", Layers::grid),
                new Simple("meridian", Layers::meridian),
                new Simple("terminator", Layers::terminator),
                new Simple("belts", Layers::belts),
                new Simple("expected", Layers::expected),
                new Simple("moons", Layers::moons),
                new Simple("errors", Layers::errors),
                new Simple("marks", Layers::marks));
    }

    private static Pattern ofFit(LayerInput input) {
        return input.trust() == Trust.TRUSTED ? Pattern.SOLID : Pattern.DOTTED;
    }

    private static List<Drawn> outline(LayerInput input) {
        List<Drawn> drawn = new ArrayList<>();
        drawn.add(new Drawn.Line(
                Ink.OUTLINE, ofFit(input), input.frame().outline().points(), false));
        for (Polyline ring : input.frame().rings()) {
            drawn.add(new Drawn.Line(Ink.RING, Pattern.SOLID, ring.points(), false));
        }
        return drawn;
    }

    private static boolean isCentral(Polyline line) {
        return line.role().equals("central-meridian") || line.role().equals("equator");
    }

    private static List<Drawn> grid(LayerInput input) {
        DiscFrame frame = input.frame();
        List<Drawn> drawn = new ArrayList<>();
        frame.grid(input.system(), input.gridStepDeg()).stream()
                .filter(l -> !isCentral(l))
                .forEach(l -> drawn.add(new Drawn.Line(Ink.GRID, Pattern.SOLID, l.points(), false)));
        double meridian = frame.disc().centralMeridianDeg(input.system());
        for (int lon = 0; lon < 360; lon += LABEL_STEP_DEG) {
            double away = Math.IEEEremainder(lon - meridian, 360);
            if (Math.abs(away) < LABEL_REACH_DEG && Math.abs(away) > 3) {
                label(drawn, frame, away, LABEL_LAT_DEG, lon + "°");
            }
        }
        for (int lat = -60; lat <= 60; lat += LABEL_STEP_DEG) {
            if (lat != 0) {
                label(drawn, frame, LABEL_LON_DEG, lat, (lat > 0 ? "+" : "\u2212") + Math.abs(lat) + "°");
            }
        }
        return drawn;
    }

    private static void label(List<Drawn> drawn, DiscFrame frame, double awayDeg, double latDeg, String text) {
        frame.place(frame.disc().subEarth().iauLonDeg() + awayDeg, latDeg)
                .ifPresent(at -> drawn.add(new Drawn.Words(Ink.GRID, at, text)));
    }

    private static List<Drawn> meridian(LayerInput input) {
        return input.frame().grid(input.system(), 90).stream()
                .filter(Layers::isCentral)
                .map(l -> (Drawn) new Drawn.Line(
                        Ink.MERIDIAN, Pattern.SOLID, l.points(), l.role().equals("central-meridian")))
                .toList();
    }

    private static List<Drawn> terminator(LayerInput input) {
        return input.frame().terminator().stream()
                .map(l -> (Drawn) new Drawn.Line(Ink.TERMINATOR, Pattern.SOLID, l.points(), true))
                .toList();
    }

    private static List<Drawn> belts(LayerInput input) {
        DiscFrame frame = input.frame();
        List<Drawn> drawn = new ArrayList<>();
        for (Region region : frame.disc().planet().regions()) {
            double south = Math.max(-85, region.southLatGraphicDeg());
            double north = Math.min(85, region.northLatGraphicDeg());
            // Written a third of the way from the meridian to the edge, so that the middle stays clear.
            double lon = frame.disc().subEarth().iauLonDeg() + 48;
            frame.place(lon, (south + north) / 2)
                    .ifPresent(p -> drawn.add(new Drawn.Words(Ink.GRID, p, region.shortName())));
        }
        return drawn;
    }

    private static List<Drawn> expected(LayerInput input) {
        List<Drawn> drawn = new ArrayList<>();
        for (Expected expected : input.expected()) {
            boolean marked = input.marks().stream().anyMatch(m -> m.featureName()
                    .equals(Optional.of(expected.feature().name())));
            if (!marked) {
                input.frame()
                        .place(expected.lonDeg(), expected.latDeg())
                        .ifPresent(at -> drawn.add(new Drawn.Spot(
                                Ink.EXPECTED,
                                expected.fromDrift() ? Pattern.DASHED : Pattern.DOTTED,
                                at,
                                expected.feature().name(),
                                9)));
            }
        }
        return drawn;
    }

    private static List<Drawn> moons(LayerInput input) {
        List<Drawn> drawn = new ArrayList<>();
        for (MoonSpot spot : input.moons()) {
            List<PixelPoint> round = new ArrayList<>();
            double radius = Math.max(LEAST_MOON_PX, spot.radiusPx());
            for (int i = 0; i <= ERROR_POINTS; i++) {
                double a = 2 * Math.PI * i / ERROR_POINTS;
                round.add(new PixelPoint(
                        spot.at().xPx() + radius * Math.cos(a), spot.at().yPx() + radius * Math.sin(a)));
            }
            Pattern pattern = spot.isVisible() ? Pattern.DASHED : Pattern.DOTTED;
            drawn.add(new Drawn.Line(Ink.EXPECTED, pattern, round, false));
            boolean marked = input.marks().stream().anyMatch(m -> m.featureName()
                    .filter(spot.featureName()::equalsIgnoreCase)
                    .isPresent());
            if (!marked) {
                String state = spot.state().isEmpty() || spot.shadow() ? "" : ", " + spot.state();
                drawn.add(new Drawn.Label(Ink.EXPECTED, spot.at(), radius, spot.featureName() + state));
            }
        }
        return drawn;
    }

    private static List<Drawn> errors(LayerInput input) {
        List<Drawn> drawn = new ArrayList<>();
        for (StoredMark mark : input.marks()) {
            Optional<SurfacePoint> point = mark.mark().point();
            Optional<ErrorBudget> errors = mark.mark().errors();
            if (point.isPresent() && errors.isPresent()) {
                List<PixelPoint> round = new ArrayList<>();
                for (int i = 0; i <= ERROR_POINTS; i++) {
                    double a = 2 * Math.PI * i / ERROR_POINTS;
                    double lat = point.get().latGraphicDeg() + errors.get().totalLatDeg() * Math.sin(a);
                    input.frame()
                            .place(
                                    point.get().lonIauDeg() + errors.get().totalLonDeg() * Math.cos(a),
                                    Math.max(-90, Math.min(90, lat)))
                            .ifPresent(round::add);
                }
                if (round.size() > 2) {
                    drawn.add(new Drawn.Line(Ink.ERROR, Pattern.SOLID, round, false));
                }
            }
        }
        return drawn;
    }

    private static List<Drawn> marks(LayerInput input) {
        List<Drawn> drawn = new ArrayList<>();
        for (StoredMark mark : input.marks()) {
            boolean chosen = input.chosenMark().equals(Optional.of(mark.id()));
            drawn.add(new Drawn.Spot(
                    chosen ? Ink.CHOSEN : Ink.MARK,
                    mark.featureName().isPresent() ? Pattern.SOLID : Pattern.DOTTED,
                    mark.mark().pixel(),
                    mark.featureName().orElse("?"),
                    chosen ? 8 : 6));
        }
        return drawn;
    }
}
