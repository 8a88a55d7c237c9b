/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.base.ProblemException;
import oblate.report.ChartContent;
import oblate.report.ChartOrder;
import oblate.report.ChartWriter;
import oblate.report.SeriesChart;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code oblate chart FILE.csv --out CHART.png}, or with {@code --archive}. */
@Command(
        name = "chart",
        mixinStandardHelpOptions = true,
        description = {
            "Draws longitudes, latitudes or residuals against date, speeds against latitude, or a ladder of map strips, as PNG or SVG.",
            "Marks come from a CSV file as oblate drift takes it, or from an archive; a ladder needs the archive's pictures."
        },
        footer = {
            "",
            "Examples:  oblate chart marks.csv --planet jupiter --system 2 --out drift.png",
            "           oblate chart --archive season --kind residuals --out residuals.svg",
            "           oblate chart --archive season --kind speed --out speeds.svg",
            "           oblate chart --archive season --kind timings --out timings.png",
            "           oblate chart --archive season --kind ladder --feature \"oval A\" --system 2 --out ladder.png"
        })
final class ChartCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Mixin
    private final ChartSource source;

    @Mixin
    private final SeriesCharts series;

    @Mixin
    private final LadderCharts ladder;

    @Mixin
    private final TimingCharts timings;

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            defaultValue = "longitude",
            description = "longitude, latitude or residuals (against date), speed (against latitude), ladder (of map"
                    + " strips) or timings (of moons); default: ${DEFAULT-VALUE}")
    private String kind;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "the chart, .png or .svg")
    private Path out;

    @Option(names = "--width", paramLabel = "PX", defaultValue = "1000", description = "default: ${DEFAULT-VALUE}")
    private int widthPx;

    @Option(names = "--height", paramLabel = "PX", description = "default: as the kind of chart needs, mostly 800")
    private Integer heightPx;

    @Option(names = "--scale", paramLabel = "1|2", defaultValue = "1", description = "2 for dense screens")
    private int scale;

    @Option(
            names = "--theme",
            paramLabel = "THEME",
            defaultValue = "print",
            description = "light, dark, red or print; default: ${DEFAULT-VALUE}")
    private String theme;

    ChartCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
        source = new ChartSource(services, console);
        series = new SeriesCharts(source, console);
        ladder = new LadderCharts(services, console, source);
        timings = new TimingCharts(services, console, source);
    }

    private List<ChartKind> kinds() {
        return List.of(
                series.kind(SeriesChart.Kind.LONGITUDE),
                series.kind(SeriesChart.Kind.LATITUDE),
                series.kind(SeriesChart.Kind.RESIDUALS),
                series.kind(SeriesChart.Kind.SPEED),
                ladder,
                timings);
    }

    @Override
    public Integer call() {
        ChartKind what = wanted();
        ChartOrder.Theme colours = ChartKind.choice("--theme", theme, ChartOrder.Theme.values());
        ChartOrder.Format format = format();
        size(heightPx == null ? ChartOrder.Size.LEAST_PX : heightPx);
        ladder.room(widthPx, Optional.ofNullable(heightPx));
        Optional<ChartContent> content = what.content();
        if (content.isEmpty()) {
            return 1;
        }
        int height = heightPx == null ? what.usualHeightPx(content.get(), widthPx) : heightPx;
        write(new ChartOrder(content.get(), size(height), colours, format));
        return 0;
    }

    private ChartKind wanted() {
        return kinds().stream()
                .filter(k -> k.word().equalsIgnoreCase(kind))
                .findFirst()
                .orElseThrow(() -> new UsageException("--kind \"" + kind + "\" is not known; choose one of "
                        + String.join(
                                ", ", kinds().stream().map(ChartKind::word).toList())));
    }

    private ChartOrder.Format format() {
        String name = out.toString().toLowerCase(Locale.ROOT);
        for (ChartOrder.Format each : ChartOrder.Format.values()) {
            if (name.endsWith("." + each.name().toLowerCase(Locale.ROOT))) {
                return each;
            }
        }
        throw new UsageException("--out \"" + out + "\" has no ending of a chart; let it end in .png or .svg");
    }

    private ChartOrder.Size size(int height) {
        try {
            return new ChartOrder.Size(widthPx, height, scale);
        } catch (IllegalArgumentException e) {
            UsageException bad = new UsageException("a chart of " + widthPx + " x " + height + " px at scale " + scale
                    + " is not possible; give --width and --height of " + ChartOrder.Size.LEAST_PX + " to "
                    + ChartOrder.Size.MOST_PX + " and --scale 1 or 2");
            bad.initCause(e);
            throw bad;
        }
    }

    /** Whole or not at all. */
    private void write(ChartOrder order) {
        ChartWriter writer = services.plugins().load(ChartWriter.class).stream()
                .filter(w -> w.draws(order.content()))
                .findFirst()
                .orElseThrow(() -> new ProblemException(
                        CommandProblem.CANNOT_WRITE, out, "no plug-in here draws charts of this kind"));
        try {
            Path temp = out.resolveSibling("." + out.getFileName() + ".part");
            try {
                try (var stream = Files.newOutputStream(temp)) {
                    writer.write(order, stream);
                }
                Files.move(temp, out, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(temp);
            }
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_WRITE, out, e.getMessage());
        }
    }
}
