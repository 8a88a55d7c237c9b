/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.drift.Drift;
import oblate.drift.LongitudePoint;
import oblate.report.ChartContent;
import oblate.report.ChartOrder;
import oblate.report.SeriesChart;
import oblate.report.ladder.LadderBuilder;
import oblate.report.ladder.LadderChart;
import oblate.report.ladder.LadderFrame;
import oblate.report.ladder.StripCache;
import picocli.CommandLine.Option;

/** The kind of chart that is a ladder of map strips. */
final class LadderCharts implements ChartKind {
    private static final int MARGINS_PX = 170;
    private static final double AIRY = 1.35;
    private static final int LEAST_HEIGHT_PX = 500;
    private static final int MOST_HEIGHT_PX = 6000;

    private final Services services;
    private final Console console;
    private final ChartSource source;

    @Option(
            names = "--rate",
            paramLabel = "DEG_PER_DAY",
            description = "ladder: rate of the frame in the system (default: the first feature's own drift)")
    private Double rateDegPerDay;

    @Option(
            names = "--width-deg",
            paramLabel = "DEG",
            defaultValue = "" + LadderFrame.USUAL_WIDTH_DEG,
            description = "ladder: longitude shown on each strip (default: ${DEFAULT-VALUE})")
    private double widthDeg;

    @Option(
            names = "--lat-from",
            paramLabel = "LAT",
            description = "ladder: one edge of the strips, planetographic (default: 6 degrees beside the features)")
    private Double latFromDeg;

    @Option(names = "--lat-to", paramLabel = "LAT", description = "ladder: the other edge")
    private Double latToDeg;

    @Option(
            names = "--most-strips",
            paramLabel = "N",
            defaultValue = "24",
            description =
                    "ladder: where dates crowd, leave out strips until so many are left (default: ${DEFAULT-VALUE})")
    private int mostStrips;

    @Option(names = "--south-up", description = "ladder: strips south up")
    private boolean southUp;

    private int widthPx;
    private Optional<Integer> heightPx = Optional.empty();

    LadderCharts(Services services, Console console, ChartSource source) {
        this.services = services;
        this.console = console;
        this.source = source;
    }

    /** Told the size asked for, so that no more pictures are read than find room. */
    void room(int width, Optional<Integer> height) {
        widthPx = width;
        heightPx = height;
    }

    private int strips(LadderFrame frame) {
        return heightPx.map(
                        h -> (int) Math.max(1, Math.min(mostStrips, (h - MARGINS_PX) / (stripPx(frame, widthPx) + 3))))
                .orElse(mostStrips);
    }

    private static double stripPx(LadderFrame frame, int widthPx) {
        return Math.max(1, widthPx - MARGINS_PX) * (frame.northDeg() - frame.southDeg()) / frame.widthDeg();
    }

    @Override
    public String word() {
        return "ladder";
    }

    @Override
    public int usualHeightPx(ChartContent content, int width) {
        LadderChart ladder = (LadderChart) content;
        double needed = MARGINS_PX + AIRY * ladder.strips().size() * (stripPx(ladder.frame(), width) + 3);
        int most = Math.min(MOST_HEIGHT_PX, ChartOrder.Size.MOST_PX);
        return (int) Math.max(LEAST_HEIGHT_PX, Math.min(most, needed));
    }

    @Override
    public Optional<ChartContent> content() {
        if (source.archive().isEmpty() || source.hasFile()) {
            throw new UsageException("a ladder is made of an archive's pictures; name it with --archive DIR");
        }
        if (source.features().isEmpty()) {
            throw new UsageException("name the feature the ladder is to follow with --feature NAME");
        }
        if (mostStrips < 1 || mostStrips > 200) {
            throw new UsageException("--most-strips must be between 1 and 200");
        }
        if (!(widthDeg >= 5 && widthDeg <= 360)) {
            throw new UsageException("--width-deg must be between 5 and 360");
        }
        if (rateDegPerDay != null && !(Math.abs(rateDegPerDay) <= 1000)) {
            throw new UsageException("--rate must be between -1000 and 1000 degrees a day");
        }
        List<SeriesChart.Feature> features = source.fitted(source.series());
        if (features.isEmpty()) {
            console.say("There is nothing to draw: no feature has marks here.");
            return Optional.empty();
        }
        checkSystems(features);
        LadderFrame frame = frame(features);
        LadderBuilder.Built built = build(frame);
        built.remarks().forEach(remark -> console.say("Left out: " + remark + "."));
        console.say(frame.words() + ".");
        if (built.strips().isEmpty()) {
            console.say(
                    "There is nothing to draw: no picture with a trusted fit shows the place; fit pictures with oblate fit"
                            + " --archive DIR.");
            return Optional.empty();
        }
        return Optional.of(new LadderChart(
                frame,
                built.strips(),
                features.stream().map(f -> f.series().feature()).toList(),
                LadderChart.marksOf(features),
                built.remarks(),
                southUp));
    }

    private LadderBuilder.Built build(LadderFrame frame) {
        ConsoleProgress progress = new ConsoleProgress(console, "Drawing strips");
        try (Archive open = services.openArchive(source.archive().orElseThrow())) {
            return new LadderBuilder(open, services.sky(), services.reader(), new StripCache())
                    .build(frame, time -> true, strips(frame), progress);
        } finally {
            progress.finish();
        }
    }

    private static void checkSystems(List<SeriesChart.Feature> features) {
        List<String> systems = features.stream()
                .map(f -> f.series().system().id())
                .distinct()
                .sorted()
                .toList();
        if (systems.size() > 1) {
            throw new UsageException("the features' longitudes are in systems " + String.join(", ", systems)
                    + "; choose one for the ladder with --system");
        }
    }

    private LadderFrame frame(List<SeriesChart.Feature> features) {
        SeriesChart.Feature first = features.get(0);
        double[] band = band(features);
        if (rateDegPerDay != null) {
            return LadderFrame.atRate(first.series(), rateDegPerDay, widthDeg, band[0], band[1]);
        }
        Drift drift = first.drift()
                .orElseThrow(() -> new UsageException(first.series().feature()
                        + " has no drift the frame could move with; give one with --rate DEG_PER_DAY"));
        return LadderFrame.movingWith(drift, widthDeg, band[0], band[1]);
    }

    private double[] band(List<SeriesChart.Feature> features) {
        double[] lats = features.stream()
                .flatMap(f -> f.series().points().stream())
                .map(LongitudePoint::latGraphicDeg)
                .filter(java.util.OptionalDouble::isPresent)
                .mapToDouble(java.util.OptionalDouble::getAsDouble)
                .sorted()
                .toArray();
        if (lats.length == 0 && (latFromDeg == null || latToDeg == null)) {
            throw new UsageException("no mark has a latitude; give the strips' edges with --lat-from and --lat-to");
        }
        double middle = lats.length == 0 ? 0 : (lats[lats.length / 2] + lats[(lats.length - 1) / 2]) / 2;
        double a = latFromDeg == null ? middle - LadderFrame.USUAL_HALF_HEIGHT_DEG : latFromDeg;
        double b = latToDeg == null ? middle + LadderFrame.USUAL_HALF_HEIGHT_DEG : latToDeg;
        double south = Math.max(-90, Math.min(a, b));
        double north = Math.min(90, Math.max(a, b));
        if (!(north - south >= 1)) {
            throw new UsageException("--lat-from and --lat-to must be at least 1 degree apart, between -90 and 90");
        }
        return new double[] {south, north};
    }
}
