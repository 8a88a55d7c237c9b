/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.HierarchyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
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
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;

/** Speed against latitude of all features, each in its own system; a click on a point chooses its feature everywhere. */
final class SpeedView extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(SpeedView.class);
    private static final double REACH_PX = 12;
    private final transient PanelContext context;
    private final JPanel cards = new JPanel(new CardLayout());
    private final JLabel empty = new JLabel(TEXTS.text("speed.empty"), JLabel.CENTER);
    private final JLabel notes = new JLabel(" ");
    private final Canvas canvas = new Canvas();
    private final JPanel inspector;
    private final transient ChartKeeping keeping;
    private transient List<Fitted> fits = List.of();
    private transient Optional<Drawn> drawn = Optional.empty();
    private boolean stale = true;

    /** A chart as drawn: its pixels and where its points are. */
    private record Drawn(BufferedImage image, double scale, List<Drift> drifts, List<Point2D> places) {}

    SpeedView(PanelContext context) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        keeping = new ChartKeeping(context);
        inspector = new JPanel(new BorderLayout());
        inspector.setOpaque(false);
        canvas.setName("speed.canvas");
        canvas.getAccessibleContext().setAccessibleName(TEXTS.text("speed.name"));
        canvas.setToolTipText(TEXTS.text("speed.tip"));
        notes.setName("speed.notes");
        cards.setOpaque(false);
        cards.add(empty, "empty");
        cards.add(canvas, "canvas");
        add(cards, BorderLayout.CENTER);
        notes.setBorder(BorderFactory.createEmptyBorder(4, 16, 6, 16));
        add(notes, BorderLayout.SOUTH);
        context.showInInspector(inspector);
        context.offer(Deed.of(TEXTS, "chart.save", this::save));
        context.offer(Deed.of(TEXTS, "chart.copy", () -> drawn.ifPresent(d -> keeping.copy(d.image()))));
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
        ChartWish look = ChartWish.of(context.palette(), List.of());
        int w = canvas.getWidth();
        int h = canvas.getHeight();
        double scale = canvas.getGraphicsConfiguration() == null
                ? 1
                : canvas.getGraphicsConfiguration().getDefaultTransform().getScaleX();
        context.background().aside(() -> draw(planet, drifts, look, w, h, scale), result -> {
            drawn = Optional.of(result);
            canvas.repaint();
            showFigures();
        });
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

    private static Drawn draw(PlanetModel planet, List<Drift> drifts, ChartWish look, int w, int h, double scale) {
        BufferedImage image =
                new BufferedImage((int) Math.ceil(w * scale), (int) Math.ceil(h * scale), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.scale(scale, scale);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        JFreeChart chart = SpeedChart.of(planet, drifts, look);
        ChartRenderingInfo info = new ChartRenderingInfo();
        chart.draw(g, new Rectangle2D.Double(0, 0, w, h), info);
        g.dispose();
        Rectangle2D area = info.getPlotInfo().getDataArea();
        XYPlot plot = chart.getXYPlot();
        List<Point2D> places = drifts.stream()
                .<Point2D>map(d -> new Point2D.Double(
                        plot.getDomainAxis().valueToJava2D(d.speedMS().getAsDouble(), area, RectangleEdge.BOTTOM),
                        plot.getRangeAxis().valueToJava2D(d.meanLatDeg().getAsDouble(), area, RectangleEdge.LEFT)))
                .toList();
        return new Drawn(image, scale, drifts, places);
    }

    private void chosenChanged() {
        canvas.repaint();
        if (isShowing()) {
            showFigures();
        }
    }

    private Optional<Drift> at(Point2D place) {
        Optional<Drift> best = Optional.empty();
        double nearest = REACH_PX;
        if (drawn.isPresent()) {
            for (int i = 0; i < drawn.get().places().size(); i++) {
                double apart = drawn.get().places().get(i).distance(place);
                if (apart < nearest) {
                    nearest = apart;
                    best = Optional.of(drawn.get().drifts().get(i));
                }
            }
        }
        return best;
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

    /** Shows the drawn chart and a ring about the chosen feature's point. */
    private final class Canvas extends JComponent {
        private static final long serialVersionUID = 1L;

        Canvas() {
            addComponentListener(new ComponentAdapter() {
                @Override
                public void componentResized(ComponentEvent e) {
                    redraw();
                }
            });
            addMouseListener(new MouseAdapter() {
                @Override
                public void mouseClicked(MouseEvent e) {
                    at(e.getPoint()).ifPresent(d -> context.selection()
                            .chooseFeature(Optional.of(d.series().feature())));
                }
            });
        }

        @Override
        public AccessibleContext getAccessibleContext() {
            if (accessibleContext == null) {
                accessibleContext = new AccessibleJComponent() {
                    private static final long serialVersionUID = 1L;

                    @Override
                    public AccessibleRole getAccessibleRole() {
                        return AccessibleRole.CANVAS;
                    }
                };
            }
            return accessibleContext;
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            Graphics2D g = (Graphics2D) graphics.create();
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setPaint(context.palette().ground());
            g.fillRect(0, 0, getWidth(), getHeight());
            drawn.ifPresent(d -> {
                g.drawImage(d.image(), AffineTransform.getScaleInstance(1 / d.scale(), 1 / d.scale()), null);
                for (int i = 0; i < d.drifts().size(); i++) {
                    Optional<String> name =
                            Optional.of(d.drifts().get(i).series().feature());
                    if (name.equals(context.selection().featureName())) {
                        Point2D p = d.places().get(i);
                        g.setPaint(context.palette().accent());
                        g.setStroke(new BasicStroke(2.2f));
                        g.draw(new Ellipse2D.Double(p.getX() - 9, p.getY() - 9, 18, 18));
                    }
                }
            });
            g.dispose();
        }
    }
}
