/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import oblate.workbench.Background;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Shows a scene of drifts; the picture is drawn in the background, what follows the pointer is painted over it. */
final class DriftCanvas extends JComponent implements Accessible {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(DriftCanvas.class);
    private final transient Background background;
    private final transient Supplier<Palette> palette;
    private final transient Supplier<Optional<DriftScene>> scene;
    private final transient DriftPointer pointer;
    private transient Optional<DriftScene.Drawn> drawn = Optional.empty();
    private transient Optional<DriftData.Point> chosen = Optional.empty();
    private transient Optional<Drag> drag = Optional.empty();
    private transient Optional<DriftScene.Range> range = Optional.empty();
    private final transient Events events;
    private int asked;
    private int under;

    /** What a person wants of the canvas. */
    interface Events {
        /** A mark was chosen. */
        void chosen(DriftData.Point point);

        /** A mark's picture is to be opened. */
        void opened(DriftData.Point point);

        /** A mark was dragged onto another feature's track. */
        void moved(DriftData.Point point, String feature);

        /** What can be done with a mark is to be shown. */
        void menu(DriftData.Point point, int x, int y);

        /** A strip was chosen. */
        void strip(long pictureId, boolean open);

        /** Another stretch of time is shown. */
        void ranged();

        /** A mark in words, for the pointer. */
        String words(DriftData.Point point);

        /** A scene was drawn. */
        void drawn();

        /** The ladder is to be so wide (px); the last call of a drag has {@code settled} set. */
        void ladderWide(int px, boolean settled);

        /** The ladder is to have its usual width again. */
        void ladderUsual();
    }

    /** A mark being dragged. */
    record Drag(DriftData.Point point, Point2D at, Optional<String> onto) {}

    /**
     * @param scene made for the size and scale the canvas has; empty when there is nothing to show
     */
    DriftCanvas(Background background, Supplier<Palette> palette, Supplier<Optional<DriftScene>> scene, Events events) {
        this.background = background;
        this.palette = palette;
        this.scene = scene;
        this.events = events;
        setName("drift.canvas");
        setFocusable(true);
        pointer = new DriftPointer(this, events);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                redraw();
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

                @Override
                public String getAccessibleName() {
                    return chosen.map(p -> TEXTS.text("canvas.name.chosen", events.words(p)))
                            .orElse(TEXTS.text("canvas.name"));
                }
            };
        }
        return accessibleContext;
    }

    /** Scale of the screen the canvas is on. */
    double scale() {
        return getGraphicsConfiguration() == null
                ? 1
                : getGraphicsConfiguration().getDefaultTransform().getScaleX();
    }

    /** Shows more (above 1) or less time. */
    void zoom(double factor) {
        pointer.zoom(factor, Optional.empty());
    }

    /** How many of the ladder's strips find no room now. */
    int ladderLeftOut() {
        return drawn.flatMap(d -> d.ladderSpace()
                        .map(space -> StripsMark.layout(d.scene().ladder().orElseThrow(), space)
                                .leftOut()))
                .orElse(0);
    }

    Optional<DriftScene.Range> range() {
        return range;
    }

    /** Shows another stretch of time; empty for all. */
    void show(Optional<DriftScene.Range> wanted) {
        range = wanted;
        redraw();
    }

    /** Draws the scene anew; while that is under way, only the last wish is kept. */
    void redraw() {
        if (getWidth() < 50 || getHeight() < 50) {
            return;
        }
        asked++;
        if (under == 0) {
            start();
        }
    }

    private void start() {
        int number = asked;
        under = number;
        Optional<DriftScene> wanted = scene.get();
        if (wanted.isEmpty()) {
            under = 0;
            drawn = Optional.empty();
            repaint();
            return;
        }
        background.aside(wanted.get()::draw, result -> {
            drawn = Optional.of(result);
            under = 0;
            repaint();
            if (asked > number) {
                start();
            } else {
                events.drawn();
            }
        });
    }

    /** Where the line between chart and ladder stands (px from the left); empty without a ladder. */
    OptionalInt divider() {
        return drawn.map(DriftScene.Drawn::scene)
                .filter(DriftScene::hasLadder)
                .map(s -> OptionalInt.of(s.widthPx() - s.ladderPx()))
                .orElse(OptionalInt.empty());
    }

    private void paintDivider(Graphics2D g) {
        divider().ifPresent(x -> {
            g.setPaint(palette.get().quietInk());
            int middle = getHeight() / 2;
            for (int dot = -1; dot <= 1; dot++) {
                g.fill(new Ellipse2D.Double(x - 1.5, middle + dot * 6 - 1.5, 3, 3));
            }
        });
    }

    /** What is shown now. */
    Optional<DriftHits> hits() {
        return drawn.map(DriftHits::new);
    }

    Optional<DriftData.Point> chosen() {
        return chosen;
    }

    void choose(Optional<DriftData.Point> point) {
        chosen = point;
        repaint();
    }

    Optional<Drag> drag() {
        return drag;
    }

    void setDrag(Optional<Drag> fresh) {
        drag = fresh;
        repaint();
    }

    @Override
    public String getToolTipText(java.awt.event.MouseEvent e) {
        return pointer.words(e.getPoint());
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setPaint(palette.get().ground());
        g.fillRect(0, 0, getWidth(), getHeight());
        drawn.ifPresent(d -> {
            double scale = d.scene().scale();
            g.drawImage(d.image(), AffineTransform.getScaleInstance(1 / scale, 1 / scale), null);
            DriftHits hits = new DriftHits(d);
            chosen.ifPresent(point -> paintChosen(g, hits, point));
            drag.ifPresent(now -> paintDrag(g, hits, now));
            paintDivider(g);
        });
        if (isFocusOwner()) {
            g.setPaint(palette.get().accent());
            g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
        }
        g.dispose();
    }

    private void paintChosen(Graphics2D g, DriftHits hits, DriftData.Point point) {
        hits.dot(point).ifPresent(dot -> {
            ring(g, hits.place(dot));
            hits.stripOf(dot.time()).ifPresent(box -> frame(g, box));
        });
        hits.residualDot(point).ifPresent(dot -> ring(g, hits.residualPlace(dot)));
    }

    private void frame(Graphics2D g, Rectangle2D box) {
        g.setPaint(palette.get().of(Ink.CHOSEN));
        g.setStroke(new BasicStroke(2));
        g.draw(box);
    }

    private void ring(Graphics2D g, Point2D at) {
        Ellipse2D ring = new Ellipse2D.Double(at.getX() - 8, at.getY() - 8, 16, 16);
        g.setPaint(palette.get().ground());
        g.setStroke(new BasicStroke(4.5f));
        g.draw(ring);
        g.setPaint(palette.get().accent());
        g.setStroke(new BasicStroke(2.2f));
        g.draw(ring);
    }

    private void paintDrag(Graphics2D g, DriftHits hits, Drag now) {
        hits.dot(now.point()).ifPresent(dot -> {
            Point2D from = hits.place(dot);
            g.setPaint(palette.get().accent());
            g.setStroke(new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {4, 3}, 0));
            g.draw(new Line2D.Double(from, now.at()));
            ring(g, now.at());
            String words = now.onto().map(name -> TEXTS.text("drag.to", name)).orElse(TEXTS.text("drag.nowhere"));
            g.setFont(Theme.bodyFont(-1));
            double width = g.getFontMetrics().stringWidth(words) + 12.0;
            double x = Math.min(getWidth() - width, now.at().getX() + 14);
            Color raised = palette.get().raised();
            g.setPaint(raised);
            g.fill(new Rectangle2D.Double(x, now.at().getY() - 24, width, 20));
            g.setPaint(palette.get().ink());
            g.drawString(words, (float) x + 6, (float) now.at().getY() - 10);
        });
    }
}
