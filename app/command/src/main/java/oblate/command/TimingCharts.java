/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.Optional;
import oblate.drift.timing.Timings;
import oblate.report.ChartContent;
import oblate.report.TimingsChart;
import picocli.CommandLine.Option;

/** The kind of chart that shows observed minus predicted times of moon events. */
final class TimingCharts implements ChartKind {
    private final Services services;
    private final Console console;
    private final ChartSource source;

    @Option(
            names = "--observations",
            paramLabel = "FILE",
            description = "timings: CSV of states as oblate timings takes it; --feature names a moon then")
    private String observations;

    TimingCharts(Services services, Console console, ChartSource source) {
        this.services = services;
        this.console = console;
        this.source = source;
    }

    @Override
    public String word() {
        return "timings";
    }

    @Override
    public int usualHeightPx(ChartContent content, int widthPx) {
        return 560;
    }

    @Override
    public Optional<ChartContent> content() {
        if (source.hasFile()) {
            throw new UsageException(
                    "timings are made of an archive's marks or of --observations FILE, not of a file of marks");
        }
        Timings timings = new TimingSource(services, console)
                .timings(new TimingSource.Wish(
                        source.archive(),
                        source.planet(),
                        source.features(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.ofNullable(observations)));
        if (timings.best().isEmpty()) {
            console.say("There is nothing to draw: no moon or shadow of "
                    + timings.planet().label() + " is timed here.");
            return Optional.empty();
        }
        return Optional.of(new TimingsChart(timings.planet(), timings.best(), timings.nights()));
    }
}
