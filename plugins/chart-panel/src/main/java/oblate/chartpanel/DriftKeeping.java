/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Component;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.Action;
import oblate.report.SeriesChart;
import oblate.sky.PlanetModel;
import oblate.workbench.PanelContext;
import oblate.workbench.actions.Deed;
import oblate.workbench.words.Texts;

/** Saves and copies what the panel of drifts shows. On the event thread. */
final class DriftKeeping {
    private static final Texts TEXTS = Texts.of(DriftKeeping.class);
    private final Component above;
    private final PanelContext context;
    private final DriftBar bar;
    private final DriftCanvas canvas;
    private final LadderWork ladder;
    private final Supplier<DriftData> data;
    private final Supplier<Optional<Fitted>> chosen;
    private final ChartKeeping files;

    /**
     * @param above what dialogs stand above
     * @param data features as last read
     * @param chosen the chosen one
     */
    DriftKeeping(
            Component above,
            PanelContext context,
            DriftBar bar,
            DriftCanvas canvas,
            LadderWork ladder,
            Supplier<DriftData> data,
            Supplier<Optional<Fitted>> chosen) {
        this.above = above;
        this.context = context;
        this.bar = bar;
        this.canvas = canvas;
        this.ladder = ladder;
        this.data = data;
        this.chosen = chosen;
        files = new ChartKeeping(context);
    }

    /** All that can be done. */
    List<Action> actions() {
        return List.of(
                Deed.of(TEXTS, "chart.save", this::saveChart),
                Deed.of(TEXTS, "residuals.save", this::saveResiduals),
                Deed.of(TEXTS, "ladder.save", this::saveLadder),
                Deed.of(TEXTS, "chart.copy", this::copyPicture),
                Deed.of(TEXTS, "table.copy", this::copyTable));
    }

    private Optional<SeriesChart> chart(SeriesChart.Kind kind) {
        boolean residuals = kind == SeriesChart.Kind.RESIDUALS;
        List<SeriesChart.Feature> features = data.get().fits().stream()
                .filter(f -> !bar.alone() || chosen.get().map(Fitted::name).equals(Optional.of(f.name())))
                .filter(f -> !residuals || f.drift().isPresent())
                .map(f -> new SeriesChart.Feature(f.series(), f.drift()))
                .toList();
        TimeCharts.Manner manner = bar.manner();
        return features.isEmpty()
                ? Optional.empty()
                : Optional.of(new SeriesChart(
                        kind,
                        features,
                        residuals ? Optional.empty() : manner.until(),
                        residuals ? SeriesChart.TimeAxis.RIGHT : manner.timeAxis(),
                        manner.gapDays()));
    }

    private void saveChart() {
        chart(SeriesChart.Kind.LONGITUDE)
                .ifPresentOrElse(
                        c -> files.save(above, name("longitudes"), c, 1100, 900),
                        () -> context.say(TEXTS.text("nothing.drawn")));
    }

    private void saveResiduals() {
        chart(SeriesChart.Kind.RESIDUALS)
                .ifPresentOrElse(
                        c -> files.save(
                                above,
                                name("residuals"),
                                c,
                                1000,
                                140 + 150 * c.features().size()),
                        () -> context.say(TEXTS.text("nothing.fitted")));
    }

    private void saveLadder() {
        ladder.ladder()
                .ifPresentOrElse(
                        l -> files.save(above, name("ladder"), l, 1000, 1400),
                        () -> context.say(TEXTS.text("nothing.ladder")));
    }

    private String name(String what) {
        return context.planet().id() + "-" + what;
    }

    private void copyPicture() {
        canvas.hits().ifPresent(h -> files.copy(h.drawn().image()));
    }

    private void copyTable() {
        PlanetModel planet = context.planet();
        List<Fitted> fits = data.get().fits();
        context.background()
                .quietly(() -> DriftCopy.of(planet, fits, context.workbench().reportFormats()), files::copyTable);
    }
}
