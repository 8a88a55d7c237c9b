/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.event.HierarchyEvent;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import net.miginfocom.swing.MigLayout;
import oblate.archive.MarkSearch;
import oblate.archive.StoredMark;
import oblate.drift.Drift;
import oblate.drift.DriftModel;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.FoldSection;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.FactList;
import oblate.workbench.pictures.SystemLabel;
import org.jfree.chart.ChartMouseEvent;
import org.jfree.chart.ChartMouseListener;
import org.jfree.chart.entity.XYItemEntity;
import org.jfree.data.xy.XYIntervalSeriesCollection;

/** List of features on the left, chart on the right, the chosen feature's figures in the inspector. */
final class DriftView extends JPanel {
    private static final long serialVersionUID = 1L;
    private final transient PanelContext context;
    private final DriftTable table = new DriftTable();
    private final JComboBox<String> systems = new JComboBox<>();
    private final JCheckBox leftward = new JCheckBox("Longitude grows to the left");
    private final JCheckBox others = new JCheckBox("Also features of other systems");
    private final JCheckBox alone = new JCheckBox("Only the chosen one");
    private final JPanel chartPlace = new JPanel(new BorderLayout());
    private final JPanel inspector = new JPanel(new MigLayout("insets 4 0 4 0, gap 0, wrap 1, fillx", "[grow,fill]"));
    private transient Map<String, Long> pictureOf = Map.of();
    private transient Optional<org.jfree.chart.ChartPanel> chart = Optional.empty();
    private boolean filling;
    private boolean stale = true;
    private String systemsOf = "";

    /** What the background made. */
    private record Result(List<Fitted> fits, Map<String, Long> pictureOf) {}

    DriftView(PanelContext context) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        chartPlace.setOpaque(false);
        chartPlace.setName("chart");
        JScrollPane list = new JScrollPane(table);
        list.setBorder(BorderFactory.createEmptyBorder());
        JSplitPane split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, list, chartPlace);
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setDividerLocation(context.settings().number("list", 300));
        split.addPropertyChangeListener(
                JSplitPane.DIVIDER_LOCATION_PROPERTY, e -> context.settings().keep("list", split.getDividerLocation()));
        add(bar(), BorderLayout.NORTH);
        add(split, BorderLayout.CENTER);
        inspector.setOpaque(false);
        context.showInInspector(inspector);
        table.getSelectionModel().addListSelectionListener(e -> {
            if (!filling && !e.getValueIsAdjusting()) {
                context.selection().chooseFeature(chosen().map(Fitted::name));
                draw();
            }
        });
        context.shelf().whenChanged(this::read);
        context.selection().whenChanged(this::followSelection);
        context.whenLookChanged(this::draw);
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0 && isShowing() && stale) {
                read();
            }
        });
    }

    private JPanel bar() {
        JPanel bar = new JPanel(new MigLayout("insets 8 16 8 16, gap 12", "[][][][]push[]"));
        bar.setOpaque(false);
        bar.add(new JLabel("Longitudes in"), "split 2, gapright 6");
        systems.setName("drift.system");
        bar.add(systems);
        bar.add(others);
        bar.add(alone);
        leftward.setSelected(context.settings().flag("leftward", true));
        others.setSelected(context.settings().flag("others", false));
        alone.setName("drift.alone");
        others.setToolTipText("Draws features whose custom is another system too; they run fast here");
        alone.setToolTipText("Draws only the feature chosen in the list, on a scale of its own");
        leftward.setToolTipText("As on maps with north up; else to the right");
        bar.add(leftward);
        leftward.addActionListener(e -> {
            context.settings().keep("leftward", leftward.isSelected());
            draw();
        });
        others.addActionListener(e -> {
            context.settings().keep("others", others.isSelected());
            read();
        });
        alone.addActionListener(e -> draw());
        systems.addActionListener(e -> {
            if (!filling) {
                context.settings().keep("system." + context.planet().id(), system().id());
                read();
            }
        });
        return bar;
    }

    private RotationSystem system() {
        return context.planet().globe().systems().stream()
                .filter(s -> s.label().equals(systems.getSelectedItem()))
                .findFirst()
                .orElseGet(() -> SystemLabel.usual(context.planet()));
    }

    private void fillSystems() {
        PlanetModel planet = context.planet();
        if (planet.id().equals(systemsOf)) {
            return;
        }
        systemsOf = planet.id();
        filling = true;
        systems.removeAllItems();
        String wish = context.settings()
                .text("system." + planet.id(), SystemLabel.usual(planet).id());
        planet.globe().systems().forEach(s -> systems.addItem(s.label()));
        planet.globe().system(wish).ifPresent(s -> systems.setSelectedItem(s.label()));
        filling = false;
    }

    private void read() {
        if (!isShowing()) {
            stale = true;
            return;
        }
        stale = false;
        fillSystems();
        PlanetModel planet = context.planet();
        RotationSystem system = system();
        boolean all = others.isSelected();
        context.background().promptly(() -> fit(planet, system, all), this::show);
    }

    private Result fit(PlanetModel planet, RotationSystem system, boolean all) {
        List<String> own = new MarkSeries()
                .ofArchive(context.archive(), planet, Optional.empty()).stream()
                        .filter(s -> all
                                || s.system().equals(system)
                                || planet.globe().systems().size() == 1)
                        .map(LongitudeSeries::feature)
                        .toList();
        List<Fitted> fits = new MarkSeries()
                .ofArchive(context.archive(), planet, Optional.of(system)).stream()
                        .filter(s -> own.contains(s.feature()))
                        .map(Fitted::of)
                        .toList();
        Map<String, Long> pictures = new HashMap<>();
        MarkSearch search = new MarkSearch(
                Optional.of(planet.id()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
        for (StoredMark mark : context.archive().marks(search)) {
            mark.featureName()
                    .ifPresent(name ->
                            pictures.put(key(name, mark.midUtc()), mark.mark().pictureId()));
        }
        return new Result(fits, pictures);
    }

    private static String key(String feature, Instant time) {
        return time.toEpochMilli() + " " + feature;
    }

    private void show(Result result) {
        pictureOf = result.pictureOf();
        filling = true;
        table.show(result.fits());
        filling = false;
        followSelection();
        draw();
    }

    private void followSelection() {
        filling = true;
        table.clearSelection();
        for (int i = 0; i < table.fits().size(); i++) {
            if (context.selection()
                    .featureName()
                    .equals(Optional.of(table.fits().get(i).name()))) {
                table.setRowSelectionInterval(i, i);
            }
        }
        filling = false;
    }

    private Optional<Fitted> chosen() {
        int row = table.getSelectedRow();
        return row < 0 || row >= table.fits().size()
                ? Optional.empty()
                : Optional.of(table.fits().get(row));
    }

    private List<Fitted> drawn() {
        Optional<Fitted> one = chosen();
        return alone.isSelected() && one.isPresent() ? List.of(one.get()) : table.fits();
    }

    private void draw() {
        if (!isShowing()) {
            return;
        }
        Palette colours = context.palette();
        chartPlace.removeAll();
        if (table.fits().isEmpty()) {
            JLabel empty = new JLabel(
                    "No named marks yet: name some on the measuring desk, and their drifts appear here.",
                    JLabel.CENTER);
            empty.setForeground(colours.quietInk());
            chartPlace.add(empty, BorderLayout.CENTER);
        } else {
            Optional<String> only = alone.isSelected() ? chosen().map(Fitted::name) : Optional.empty();
            List<Color> inks = colours.picturesRed()
                    ? List.of(colours.accent(), colours.ink(), colours.quietInk())
                    : ChartWish.coloursOn(colours.ground());
            ChartWish wish = new ChartWish(
                    "",
                    system().label(),
                    leftward.isSelected(),
                    only,
                    colours.ground(),
                    colours.quietInk(),
                    colours.line(),
                    Theme.bodyFont(-1),
                    inks);
            org.jfree.chart.ChartPanel panel = new org.jfree.chart.ChartPanel(TimeCharts.longitudes(
                    drawn(),
                    new TimeCharts.Manner(oblate.report.SeriesChart.TimeAxis.DOWN, 14, Optional.empty()),
                    wish));
            panel.setMinimumDrawWidth(100);
            panel.setMinimumDrawHeight(100);
            panel.setMaximumDrawWidth(6000);
            panel.setMaximumDrawHeight(4000);
            panel.setPopupMenu(null);
            panel.setMouseWheelEnabled(true);
            panel.setPreferredSize(new Dimension(700, 600));
            panel.setToolTipText("A click on a point opens its picture; the wheel zooms");
            panel.addChartMouseListener(new Clicks());
            chart = Optional.of(panel);
            chartPlace.add(panel, BorderLayout.CENTER);
        }
        chartPlace.revalidate();
        chartPlace.repaint();
        showFigures();
    }

    /** The chart shown. */
    Optional<org.jfree.chart.ChartPanel> chart() {
        return chart;
    }

    private void showFigures() {
        inspector.removeAll();
        FactList list = new FactList(context::palette);
        if (chosen().isEmpty()) {
            list.remark("Choose a feature in the list for its figures.");
            inspector.add(new FoldSection("Drift", list), "wmin 0");
        } else {
            Fitted one = chosen().get();
            if (one.drift().isPresent()) {
                figures(list, one.drift().get());
            } else {
                list.alarm(one.why());
            }
            inspector.add(new FoldSection(one.name(), list), "wmin 0");
        }
        inspector.revalidate();
        inspector.repaint();
    }

    private static void figures(FactList list, Drift drift) {
        drift.warnings().forEach(list::alarm);
        list.figure(
                "Rate",
                Figures.withSigma(drift.rateDegPer30Days(), drift.sigmaRateDegPer30Days(), "°/30 d") + "\n"
                        + Figures.withSigma(drift.rateDegPerDay(), drift.sigmaRateDegPerDay(), "°/d"));
        motion(list, drift.motion());
        list.figure("Longitude", Figures.longitude(drift.lonDeg(), drift.sigmaLonDeg()));
        list.fact("on", Figures.dayUt(drift.epochUtc()) + ", " + Figures.clockUt(drift.epochUtc()));
        list.fact("System", drift.series().system().label());
        list.figure("Period", Figures.period(drift.periodS(), drift.sigmaPeriodS()));
        drift.speedMS()
                .ifPresent(v -> list.figure(
                        "Speed", Figures.withSigma(v, drift.sigmaSpeedMS().orElse(0), "m/s")));
        drift.meanLatDeg()
                .ifPresent(v -> list.figure(
                        "Latitude",
                        Figures.latitudeGraphic(v, drift.sigmaMeanLatDeg().orElse(0))));
        int all = drift.series().points().size();
        list.fact("Marks", all - drift.rejected() + " used, " + drift.rejected() + " left out (hollow)");
        list.figure("Scatter", Figures.fixed(drift.rmsDeg(), 2) + "°");
    }

    /** The kind of motion with its own numbers. */
    private static void motion(FactList list, DriftModel motion) {
        if (motion instanceof DriftModel.Acceleration a) {
            list.figure(
                    "Rate gains",
                    Figures.withSigma(a.accelerationDegPerDay2(), a.sigmaAccelerationDegPerDay2(), "°/d each day"));
        } else if (motion instanceof DriftModel.RateChange c) {
            list.figure("Before", Figures.withSigma(30 * c.beforeDegPerDay(), 30 * c.sigmaBeforeDegPerDay(), "°/30 d"));
            list.figure("After", Figures.withSigma(30 * c.afterDegPerDay(), 30 * c.sigmaAfterDegPerDay(), "°/30 d"));
            list.figure(
                    "Changed on", Figures.dayUt(c.changeUtc()) + "\n± " + Figures.fixed(c.sigmaChangeDays(), 1) + " d");
        } else if (motion instanceof DriftModel.Oscillation o) {
            list.figure("Swings by", Figures.withSigma(o.amplitudeDeg(), o.sigmaAmplitudeDeg(), "°"));
            list.figure("in", Figures.withSigma(o.periodDays(), o.sigmaPeriodDays(), "d"));
        }
    }

    /** Opens the picture of a point that is clicked. */
    private final class Clicks implements ChartMouseListener {
        @Override
        public void chartMouseClicked(ChartMouseEvent event) {
            if (event.getEntity() instanceof XYItemEntity entity
                    && entity.getDataset() instanceof XYIntervalSeriesCollection points) {
                open(points, entity.getSeriesIndex(), entity.getItem());
            }
        }

        @Override
        public void chartMouseMoved(ChartMouseEvent event) {
            // Nothing follows the pointer here.
        }
    }

    private void open(XYIntervalSeriesCollection points, int series, int item) {
        TimePlot.Key key = (TimePlot.Key) points.getSeriesKey(series);
        Fitted fitted = drawn().get(key.track());
        long time = (long) points.getXValue(series, item);
        context.selection().chooseFeature(Optional.of(fitted.name()));
        fitted.series().points().stream()
                .map(LongitudePoint::time)
                .filter(t -> t.toEpochMilli() == time)
                .findFirst()
                .map(t -> pictureOf.get(key(fitted.name(), t)))
                .ifPresent(context::openPicture);
    }
}
