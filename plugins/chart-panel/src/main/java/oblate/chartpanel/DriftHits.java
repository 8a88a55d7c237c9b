/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import oblate.report.ladder.LadderChart;
import oblate.report.ladder.LadderStrip;

/**
 * What lies under the pointer in a drawn scene. Immutable.
 *
 * @param drawn the scene
 */
record DriftHits(DriftScene.Drawn drawn) {
    private static final double REACH_PX = 9;
    private static final double TRACK_REACH_PX = 40;

    /** The mark of a feature nearest to a place of the screen, in any of the three drawings. */
    Optional<DriftData.Point> pointAt(Point2D at) {
        Optional<DriftData.Point> best = Optional.empty();
        double nearest = REACH_PX;
        for (Track track : drawn.tracks()) {
            for (Track.Dot dot : track.dots()) {
                double apart = place(dot).distance(at);
                if (apart < nearest) {
                    nearest = apart;
                    best = Optional.of(new DriftData.Point(track.name(), dot.index()));
                }
            }
        }
        if (best.isEmpty() && drawn.residuals().isPresent()) {
            for (Track.Dot dot : drawn.residuals().get().dots()) {
                double apart = residualPlace(dot).distance(at);
                if (apart < nearest) {
                    nearest = apart;
                    best = Optional.of(
                            new DriftData.Point(drawn.residuals().get().name(), dot.index()));
                }
            }
        }
        return best;
    }

    /** Where a mark of the chart of longitudes is drawn. */
    Point2D place(Track.Dot dot) {
        double value = drawn.round() ? Turns.reduced(dot.value()) : dot.value();
        return drawn.longitudes().at(dot.time().toEpochMilli(), value);
    }

    /** Where a mark's residual is drawn, at the edge when it lies beyond. */
    Point2D residualPlace(Track.Dot dot) {
        PlotSpace space = drawn.residualSpace().orElseThrow();
        double value =
                Math.max(space.values().getLowerBound(), Math.min(space.values().getUpperBound(), dot.value()));
        return space.at(dot.time().toEpochMilli(), value);
    }

    /** The dot of a point in the chart of longitudes. */
    Optional<Track.Dot> dot(DriftData.Point point) {
        return drawn.tracks().stream()
                .filter(t -> t.name().equals(point.feature()))
                .flatMap(t -> t.dots().stream())
                .filter(d -> d.index() == point.index())
                .findFirst();
    }

    /** The dot of a point among the residuals. */
    Optional<Track.Dot> residualDot(DriftData.Point point) {
        return drawn.residuals().filter(t -> t.name().equals(point.feature())).stream()
                .flatMap(t -> t.dots().stream())
                .filter(d -> d.index() == point.index())
                .findFirst();
    }

    /** The track whose line or mark is nearest to a place of the screen, within reach. */
    Optional<String> trackAt(Point2D at) {
        Optional<String> best = Optional.empty();
        double nearest = TRACK_REACH_PX;
        for (Track track : drawn.tracks()) {
            double apart = Double.MAX_VALUE;
            for (Track.Run run : track.runs()) {
                apart = Math.min(apart, distance(run, at));
            }
            for (Track.Dot dot : track.dots()) {
                apart = Math.min(apart, place(dot).distance(at));
            }
            if (apart < nearest) {
                nearest = apart;
                best = Optional.of(track.name());
            }
        }
        return best;
    }

    private double distance(Track.Run run, Point2D at) {
        double nearest = Double.MAX_VALUE;
        List<List<Turns.Point>> pieces = drawn.round() ? Turns.path(run.points()) : List.of(run.points());
        for (List<Turns.Point> piece : pieces) {
            for (int k = 1; k < piece.size(); k++) {
                Point2D a = drawn.longitudes()
                        .at(piece.get(k - 1).timeMs(), piece.get(k - 1).lonDeg());
                Point2D b = drawn.longitudes()
                        .at(piece.get(k).timeMs(), piece.get(k).lonDeg());
                nearest = Math.min(
                        nearest,
                        java.awt.geom.Line2D.ptSegDist(a.getX(), a.getY(), b.getX(), b.getY(), at.getX(), at.getY()));
            }
        }
        return nearest;
    }

    /** The ladder's strip at a place of the screen. */
    Optional<LadderStrip> stripAt(Point2D at) {
        return strip(box -> box.contains(at));
    }

    /** Where the strip of a mark's picture is drawn. */
    Optional<Rectangle2D> stripOf(java.time.Instant time) {
        if (drawn.ladderSpace().isEmpty()) {
            return Optional.empty();
        }
        LadderChart ladder = drawn.scene().ladder().orElseThrow();
        PlotSpace space = drawn.ladderSpace().get();
        return StripsMark.layout(ladder, space).places().stream()
                .filter(p ->
                        Math.abs(Duration.between(ladder.strips().get(p.strip()).midUtc(), time)
                                        .toMillis())
                                < 1000)
                .map(p -> StripsMark.box(ladder, space, p))
                .findFirst();
    }

    private Optional<LadderStrip> strip(java.util.function.Predicate<Rectangle2D> wanted) {
        if (drawn.ladderSpace().isEmpty()) {
            return Optional.empty();
        }
        LadderChart ladder = drawn.scene().ladder().orElseThrow();
        PlotSpace space = drawn.ladderSpace().get();
        return StripsMark.layout(ladder, space).places().stream()
                .filter(p -> wanted.test(StripsMark.box(ladder, space, p)))
                .map(p -> ladder.strips().get(p.strip()))
                .findFirst();
    }
}
