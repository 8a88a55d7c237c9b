/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import oblate.drift.LatitudeTrend;
import oblate.drift.LongitudeSeries;
import oblate.report.ChartContent;
import oblate.report.ChartOrder;
import oblate.report.SeriesChart;
import picocli.CommandLine.Option;

/** The kinds of charts of marks and the motions fitted to them. */
final class SeriesCharts {
    private static final int LEAST_HEIGHT_PX = 800;

    private final ChartSource source;
    private final Console console;

    @Option(
            names = "--predict",
            paramLabel = "TIME",
            description = "longitude: draw where each feature is expected up to this instant, with one standard error")
    private String predict;

    @Option(
            names = "--time-axis",
            paramLabel = "WAY",
            description =
                    "down or right: the way time runs (default: down for longitude, right for latitude and residuals)")
    private String timeAxis;

    @Option(
            names = "--gap-days",
            paramLabel = "DAYS",
            defaultValue = "" + SeriesChart.USUAL_GAP_DAYS,
            description = "fitted lines are dotted across longer times without marks (default: ${DEFAULT-VALUE})")
    private double gapDays;

    SeriesCharts(ChartSource source, Console console) {
        this.source = source;
        this.console = console;
    }

    /** One of these kinds. */
    ChartKind kind(SeriesChart.Kind what) {
        return new ChartKind() {
            @Override
            public String word() {
                return what.name().toLowerCase(Locale.ROOT);
            }

            @Override
            public Optional<ChartContent> content() {
                return chart(what);
            }

            @Override
            public int usualHeightPx(ChartContent content, int widthPx) {
                // Each feature's residuals have a plot of their own, one above the other where time runs right.
                boolean stacked = content instanceof SeriesChart chart
                        && chart.kind() == SeriesChart.Kind.RESIDUALS
                        && chart.timeAxis() == SeriesChart.TimeAxis.RIGHT;
                int needed =
                        stacked ? 140 + 130 * ((SeriesChart) content).features().size() : LEAST_HEIGHT_PX;
                return Math.max(LEAST_HEIGHT_PX, Math.min(ChartOrder.Size.MOST_PX, needed));
            }
        };
    }

    private Optional<ChartContent> chart(SeriesChart.Kind what) {
        if (!(gapDays > 0)) {
            throw new UsageException("--gap-days must be a number of days above 0");
        }
        Optional<Instant> until = until(what);
        SeriesChart.TimeAxis way = way(what);
        List<SeriesChart.Feature> features = source.fitted(series(what));
        String nothing = "no feature has marks here.";
        if (what == SeriesChart.Kind.SPEED) {
            features = kept(
                    features,
                    f -> f.drift().filter(d -> d.speedMS().isPresent()).isPresent(),
                    "has no speed (no drift or no latitude)");
            nothing = "no drift has a speed.";
        } else if (what == SeriesChart.Kind.RESIDUALS) {
            features = kept(features, f -> f.drift().isPresent(), "has no drift");
            nothing = "no feature has a drift.";
        } else if (what == SeriesChart.Kind.LATITUDE) {
            features = kept(
                    features,
                    f -> f.series().points().stream()
                            .anyMatch(p -> p.latGraphicDeg().isPresent()),
                    "has no latitude");
            nothing = "no mark has a latitude.";
            sayTrends(features);
        }
        if (features.isEmpty()) {
            console.say("There is nothing to draw: " + nothing);
            return Optional.empty();
        }
        return Optional.of(new SeriesChart(what, features, until, way, gapDays));
    }

    /** A slope of latitude needs more marks than a mean. */
    private void sayTrends(List<SeriesChart.Feature> features) {
        for (SeriesChart.Feature each : features) {
            if (each.drift().flatMap(LatitudeTrend::of).isEmpty()) {
                console.say(each.series().feature() + ": too few latitudes for a slope; drawn without one.");
            }
        }
    }

    private List<SeriesChart.Feature> kept(
            List<SeriesChart.Feature> features, Predicate<SeriesChart.Feature> wanted, String why) {
        List<SeriesChart.Feature> kept = new ArrayList<>();
        for (SeriesChart.Feature each : features) {
            if (wanted.test(each)) {
                kept.add(each);
            } else {
                console.say(each.series().feature() + ": " + why + " and is left out.");
            }
        }
        return kept;
    }

    private SeriesChart.TimeAxis way(SeriesChart.Kind what) {
        if (timeAxis == null) {
            return what == SeriesChart.Kind.LONGITUDE ? SeriesChart.TimeAxis.DOWN : SeriesChart.TimeAxis.RIGHT;
        }
        if (what == SeriesChart.Kind.SPEED) {
            throw new UsageException("--time-axis does not belong to --kind speed, which has no time");
        }
        return ChartKind.choice("--time-axis", timeAxis, SeriesChart.TimeAxis.values());
    }

    private Optional<Instant> until(SeriesChart.Kind what) {
        if (predict == null) {
            return Optional.empty();
        }
        if (what != SeriesChart.Kind.LONGITUDE) {
            throw new UsageException("--predict belongs to --kind longitude");
        }
        try {
            return Optional.of(OffsetDateTime.parse(predict).toInstant());
        } catch (DateTimeException e) {
            UsageException bad =
                    new UsageException("--predict \"" + predict + "\" is no instant; write it as 2024-12-07T20:00:00Z");
            bad.initCause(e);
            throw bad;
        }
    }

    private List<LongitudeSeries> series(SeriesChart.Kind what) {
        List<LongitudeSeries> wanted = source.series();
        List<String> systems =
                wanted.stream().map(s -> s.system().id()).distinct().sorted().toList();
        if (what == SeriesChart.Kind.LONGITUDE && systems.size() > 1) {
            throw new UsageException("the features' longitudes are in systems " + String.join(", ", systems)
                    + "; choose one for the chart with --system");
        }
        return wanted;
    }
}
