/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
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
import javax.swing.JComponent;
import oblate.drift.Drift;
import oblate.sky.PlanetModel;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;

/** Shows the chart of speeds, drawn in the background, and a ring about the chosen feature's point; a click chooses a feature. */
final class SpeedCanvas extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(SpeedCanvas.class);
    private static final double REACH_PX = 12;
    private final transient PanelContext context;
    private transient Optional<Drawn> drawn = Optional.empty();

    /** A chart as drawn: its pixels and where its points are. */
    private record Drawn(BufferedImage image, double scale, List<Drift> drifts, List<Point2D> places) {}

    /**
     * @param whenResized asks for the chart to be drawn anew
     */
    SpeedCanvas(PanelContext context, Runnable whenResized) {
        this.context = context;
        setName("speed.canvas");
        getAccessibleContext().setAccessibleName(TEXTS.text("speed.name"));
        setToolTipText(TEXTS.text("speed.tip"));
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                whenResized.run();
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

    /** Draws the chart in the background. */
    void draw(PlanetModel planet, List<Drift> drifts, Runnable whenDrawn) {
        ChartWish look = ChartWish.of(context.palette(), List.of());
        int w = getWidth();
        int h = getHeight();
        double scale = getGraphicsConfiguration() == null
                ? 1
                : getGraphicsConfiguration().getDefaultTransform().getScaleX();
        context.background().aside(() -> draw(planet, drifts, look, w, h, scale), result -> {
            drawn = Optional.of(result);
            repaint();
            whenDrawn.run();
        });
    }

    /** The chart as drawn. */
    Optional<BufferedImage> image() {
        return drawn.map(Drawn::image);
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
                Optional<String> name = Optional.of(d.drifts().get(i).series().feature());
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
