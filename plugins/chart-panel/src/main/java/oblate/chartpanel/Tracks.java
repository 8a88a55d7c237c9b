/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import oblate.drift.Drift;
import oblate.drift.DriftModel;
import oblate.drift.LatitudeTrend;
import oblate.drift.LongitudePoint;
import oblate.drift.Prediction;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/** Makes tracks of features: of longitude, of latitude, of residuals. Stateless. */
final class Tracks {
    private static final Texts TEXTS = Texts.of(Tracks.class);
    private static final int CURVE_STEPS = 120;
    private static final int LONGEST_NAME = 40;
    private static final double ASSUMED_SIGMA_LAT_DEG = 0.5;

    private Tracks() {}

    /** Longitudes: on the turn of the fitted line, or reduced by whoever draws them. */
    static Track longitudes(Fitted fitted, double gapDays, Optional<Instant> until) {
        List<LongitudePoint> points = fitted.series().points();
        List<Track.Dot> dots = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            LongitudePoint p = points.get(i);
            dots.add(new Track.Dot(i, p.time(), unwrapped(fitted, i), p.sigmaDeg(), used(fitted, i)));
        }
        List<Track.Run> runs = new ArrayList<>();
        List<Track.Band> bands = new ArrayList<>();
        fitted.drift().ifPresent(d -> {
            runs.addAll(runs(d, gapDays, d::unwrappedLonDegAt, steps(d)));
            until.filter(u -> d.lastUtc().isBefore(u)).ifPresent(u -> predict(d, u, runs, bands));
        });
        return new Track(fitted.name(), brief(fitted.name()), dots, runs, bands);
    }

    private static void predict(Drift drift, Instant until, List<Track.Run> runs, List<Track.Band> bands) {
        long spanMs = Duration.between(drift.lastUtc(), until).toMillis();
        List<Turns.Point> middle = new ArrayList<>();
        List<Turns.Point> low = new ArrayList<>();
        List<Turns.Point> high = new ArrayList<>();
        for (int k = 0; k <= CURVE_STEPS; k++) {
            Instant time = drift.lastUtc().plusMillis(spanMs * k / CURVE_STEPS);
            Prediction p = drift.at(time);
            middle.add(new Turns.Point(p.lonDeg(), time.toEpochMilli()));
            low.add(new Turns.Point(p.lonDeg() - p.sigmaLonDeg(), time.toEpochMilli()));
            high.add(new Turns.Point(p.lonDeg() + p.sigmaLonDeg(), time.toEpochMilli()));
        }
        runs.add(new Track.Run(middle, Track.Style.DASHED));
        bands.add(new Track.Band(low, high));
    }

    /** Planetographic latitudes with their mean and, of four or more, their slope. */
    static Track latitudes(Fitted fitted, double gapDays) {
        List<LongitudePoint> points = fitted.series().points();
        List<Track.Dot> dots = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            LongitudePoint p = points.get(i);
            if (p.latGraphicDeg().isPresent()) {
                dots.add(new Track.Dot(
                        i,
                        p.time(),
                        p.latGraphicDeg().getAsDouble(),
                        p.sigmaLatDeg().orElse(ASSUMED_SIGMA_LAT_DEG),
                        used(fitted, i)));
            }
        }
        List<Track.Run> runs = new ArrayList<>();
        StringBuilder tag = new StringBuilder(brief(fitted.name()));
        fitted.drift().ifPresent(d -> {
            d.meanLatDeg().ifPresent(mean -> {
                runs.add(new Track.Run(
                        List.of(
                                new Turns.Point(mean, d.firstUtc().toEpochMilli()),
                                new Turns.Point(mean, d.lastUtc().toEpochMilli())),
                        Track.Style.THIN));
                tag.append("  ")
                        .append(Figures.withSigma(mean, d.sigmaMeanLatDeg().orElse(0), "°"));
            });
            LatitudeTrend.of(d).ifPresent(trend -> {
                runs.addAll(runs(d, gapDays, trend::latGraphicDegAt, 1));
                tag.append(", ")
                        .append(trend.degPerDay() < 0 ? "" : "+")
                        .append(Figures.withSigma(30 * trend.degPerDay(), 30 * trend.sigmaDegPerDay(), "°/30 d"));
            });
        });
        return new Track(fitted.name(), tag.toString(), dots, runs, List.of());
    }

    /** Observed minus fitted longitudes about zero. */
    static Track residuals(Fitted fitted, double gapDays) {
        Drift drift = fitted.drift().orElseThrow();
        List<LongitudePoint> points = fitted.series().points();
        List<Track.Dot> dots = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            dots.add(new Track.Dot(
                    i,
                    points.get(i).time(),
                    drift.states().get(i).residualDeg(),
                    points.get(i).sigmaDeg(),
                    used(fitted, i)));
        }
        int used = points.size() - drift.rejected();
        String marks = used == 1
                ? TEXTS.text("residuals.marks.one")
                : TEXTS.text("residuals.marks.many", Integer.toString(used));
        String tag = TEXTS.text(
                "residuals.tag",
                brief(fitted.name()),
                motion(drift.model()),
                Figures.fixed(drift.rmsDeg(), 2),
                drift.rejected() > 0 ? TEXTS.text("residuals.left", marks, Integer.toString(drift.rejected())) : marks);
        return new Track(fitted.name(), tag, dots, runs(drift, gapDays, t -> 0, 1), List.of());
    }

    /** A name as there is room for it. */
    static String brief(String name) {
        return name.length() <= LONGEST_NAME ? name : name.substring(0, LONGEST_NAME - 1) + "…";
    }

    /** A kind of motion in words. */
    static String motion(String model) {
        return TEXTS.text("motion." + model);
    }

    private static boolean used(Fitted fitted, int i) {
        return fitted.drift().isEmpty() || fitted.drift().get().states().get(i).used();
    }

    private static double unwrapped(Fitted fitted, int i) {
        return fitted.drift()
                .map(d -> d.states().get(i).unwrappedLonDeg())
                .orElse(fitted.series().points().get(i).lonDeg());
    }

    private static int steps(Drift drift) {
        return drift.motion() instanceof DriftModel.ConstantRate ? 1 : CURVE_STEPS;
    }

    /** The line over the arc, dotted across gaps. */
    private static List<Track.Run> runs(Drift drift, double gapDays, ToDoubleFunction<Instant> value, int steps) {
        List<Track.Run> runs = new ArrayList<>();
        long whole =
                Math.max(1, Duration.between(drift.firstUtc(), drift.lastUtc()).toMillis());
        for (Gaps.Piece piece : Gaps.of(drift, gapDays)) {
            long span = Duration.between(piece.from(), piece.to()).toMillis();
            int n = steps == 1 ? 1 : (int) Math.max(2, steps * span / whole);
            List<Turns.Point> points = new ArrayList<>();
            for (int k = 0; k <= n; k++) {
                Instant time = k == n ? piece.to() : piece.from().plusMillis(span * k / n);
                points.add(new Turns.Point(value.applyAsDouble(time), time.toEpochMilli()));
            }
            runs.add(new Track.Run(points, piece.empty() ? Track.Style.DOTTED : Track.Style.SOLID));
        }
        return runs;
    }
}
