/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.event.HierarchyEvent;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import oblate.drift.Drift;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.report.SeriesChart;
import oblate.sky.PlanetModel;
import oblate.workbench.PanelContext;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.FoldSection;
import oblate.workbench.pictures.FactList;
import oblate.workbench.words.Texts;

/** Speed against latitude of all features, each in its own system; a click on a point chooses its feature everywhere. */
final class SpeedView extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(SpeedView.class);
    private final transient PanelContext context;
    private final JPanel cards = new JPanel(new CardLayout());
    private final JLabel empty = new JLabel(TEXTS.text("speed.empty"), JLabel.CENTER);
    private final JLabel notes = new JLabel(" ");
    private final SpeedCanvas canvas;
    private final JPanel inspector;
    private final transient ChartKeeping keeping;
    private transient List<Fitted> fits = List.of();
    private boolean stale = true;

    SpeedView(PanelContext context) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        keeping = new ChartKeeping(context);
        inspector = new JPanel(new BorderLayout());
        inspector.setOpaque(false);
        canvas = new SpeedCanvas(context, this::redraw);
        notes.setName("speed.notes");
        cards.setOpaque(false);
        cards.add(empty, "empty");
        cards.add(canvas, "canvas");
        add(cards, BorderLayout.CENTER);
        notes.setBorder(BorderFactory.createEmptyBorder(4, 16, 6, 16));
        add(notes, BorderLayout.SOUTH);
        context.showInInspector(inspector);
        context.offer(Deed.of(TEXTS, "chart.save", this::save));
        context.offer(Deed.of(TEXTS, "chart.copy", () -> canvas.image().ifPresent(keeping::copy)));
        context.offer(Deed.of(TEXTS, "table.copy", this::copyTable));
        context.shelf().whenChanged(this::read);
        context.selection().whenChanged(this::chosenChanged);
        context.whenLookChanged(this::redraw);
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0 && isShowing() && stale) {
                read();
            }
        });
    }

    private void read() {
        if (!isShowing()) {
            stale = true;
            return;
        }
        stale = false;
        PlanetModel planet = context.planet();
        context.background()
                .promptly(
                        () -> {
                            List<LongitudeSeries> series =
                                    new MarkSeries().ofArchive(context.archive(), planet, Optional.empty());
                            return series.stream().map(Fitted::of).toList();
                        },
                        fresh -> {
                            fits = fresh;
                            redraw();
                        });
    }

    private List<Drift> withSpeed() {
        return fits.stream()
                .flatMap(f -> f.drift().stream())
                .filter(d -> d.speedMS().isPresent() && d.meanLatDeg().isPresent())
                .toList();
    }

    private void redraw() {
        if (!isShowing()) {
            stale = true;
            return;
        }
        List<Drift> drifts = withSpeed();
        ((CardLayout) cards.getLayout()).show(cards, drifts.isEmpty() ? "empty" : "canvas");
        empty.setForeground(context.palette().quietInk());
        notes.setForeground(context.palette().quietInk());
        int without = fits.size() - drifts.size();
        notes.setText(drifts.isEmpty() ? " " : foot(without));
        if (drifts.isEmpty() || canvas.getWidth() < 50 || canvas.getHeight() < 50) {
            showFigures();
            return;
        }
        PlanetModel planet = context.planet();
        canvas.draw(planet, drifts, this::showFigures);
    }

    private static String foot(int without) {
        String errors = TEXTS.text("speed.errors");
        if (without == 0) {
            return errors;
        }
        return errors + " "
                + (without == 1
                        ? TEXTS.text("speed.without.one")
                        : TEXTS.text("speed.without.many", Integer.toString(without)));
    }

    private void chosenChanged() {
        canvas.repaint();
        if (isShowing()) {
            showFigures();
        }
    }

    private void showFigures() {
        inspector.removeAll();
        Optional<String> name = context.selection().featureName();
        Optional<Fitted> one =
                fits.stream().filter(f -> name.equals(Optional.of(f.name()))).findFirst();
        if (one.isPresent()) {
            DriftInspector figures = new DriftInspector(context);
            figures.show(one, Optional.empty(), "", List.of());
            inspector.add(figures, BorderLayout.NORTH);
        } else {
            FactList list = new FactList(context::palette);
            list.remark(TEXTS.text("speed.choose"));
            inspector.add(new FoldSection(TEXTS.text("speed.section"), list), BorderLayout.NORTH);
        }
        inspector.revalidate();
        inspector.repaint();
    }

    private void save() {
        List<SeriesChart.Feature> features = fits.stream()
                .filter(f -> f.drift().filter(d -> d.speedMS().isPresent()).isPresent())
                .map(f -> new SeriesChart.Feature(f.series(), f.drift()))
                .toList();
        if (features.isEmpty()) {
            context.say(empty.getText());
            return;
        }
        SeriesChart chart = new SeriesChart(
                SeriesChart.Kind.SPEED,
                features,
                Optional.empty(),
                SeriesChart.TimeAxis.RIGHT,
                SeriesChart.USUAL_GAP_DAYS);
        keeping.save(this, context.planet().id() + "-speeds", chart, 1000, 800);
    }

    private void copyTable() {
        PlanetModel planet = context.planet();
        List<Fitted> of = fits;
        context.background()
                .quietly(() -> DriftCopy.of(planet, of, context.workbench().reportFormats()), keeping::copyTable);
    }
}
