/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongConsumer;
import java.util.function.Supplier;
import javax.swing.JComponent;
import oblate.archive.ArchivedPicture;
import oblate.archive.Rating;
import oblate.image.CaptureTime;
import oblate.workbench.look.Figures;
import oblate.workbench.look.NightName;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;

/**
 * The archive's scroll bar in time: one tick per picture, its height how good the seeing was, its tone how far it has come; oppositions and the
 * apparent size behind. Wheel zooms, drag moves, a click goes to the picture nearest.
 */
final class SeasonRibbon extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final int AXIS_PX = 18;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM uuuu", Locale.ENGLISH);
    private final transient Supplier<Palette> palette;
    private final transient LongConsumer whenClicked;
    private transient List<ArchivedPicture> pictures = List.of();
    private transient Season season = Season.none();
    private transient Optional<Long> chosen = Optional.empty();
    private transient RibbonScale scale = new RibbonScale(0, 86_400 * 300, 600);
    private boolean moved;
    private boolean unfitted = true;

    SeasonRibbon(Supplier<Palette> palette, LongConsumer whenClicked) {
        this.palette = palette;
        this.whenClicked = whenClicked;
        setName("ribbon");
        setToolTipText("");
        Mouse mouse = new Mouse();
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
        addMouseWheelListener(mouse);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                resizeScale();
            }
        });
    }

    private void resizeScale() {
        if (getWidth() > 0) {
            scale = unfitted && !times().isEmpty()
                    ? RibbonScale.covering(times(), getWidth())
                    : scale.resized(getWidth());
            repaint();
        }
    }

    private List<Instant> times() {
        return pictures.stream()
                .flatMap(p -> p.time().stream())
                .map(CaptureTime::midUtc)
                .toList();
    }

    void show(List<ArchivedPicture> found) {
        pictures = found.stream().filter(p -> p.time().isPresent()).toList();
        resizeScale();
        repaint();
    }

    void show(Season newSeason) {
        season = newSeason;
        repaint();
    }

    void choose(Optional<Long> pictureId) {
        chosen = pictureId;
        repaint();
    }

    RibbonScale scale() {
        return scale;
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(600, 68);
    }

    @Override
    public String getToolTipText(MouseEvent event) {
        String wheel = "<br>Wheel zooms, drag moves, double-click shows all";
        return nearest(event.getX())
                .map(p -> "<html>" + p.night().map(NightName::of).orElse("") + ", "
                        + Figures.clockUt(p.time().orElseThrow().midUtc()) + wheel)
                .orElse("<html>The season, one tick per picture" + wheel);
    }

    private Optional<ArchivedPicture> nearest(double x) {
        return pictures.stream()
                .min(Comparator.comparingDouble(p -> Math.abs(xOf(p) - x)))
                .filter(p -> Math.abs(xOf(p) - x) < 24);
    }

    private double xOf(ArchivedPicture picture) {
        return scale.xPx(picture.time().orElseThrow().midUtc());
    }

    /** Share of the full tick height, 0.25…1: Antoniadi runs from 1 (best) to 5, Pickering from 1 to 10 (best); a middling one when not known. */
    static double quality(Optional<Rating> seeing) {
        String value = seeing.map(r -> r.value().strip().replace(',', '.')).orElse("");
        int roman = List.of("I", "II", "III", "IV", "V").indexOf(value) + 1;
        boolean plain = value.matches("\\d{1,2}(\\.\\d)?");
        if (roman == 0 && !plain) {
            return 0.6;
        }
        double number = roman > 0 ? roman : Double.parseDouble(value);
        boolean downward = roman > 0
                || seeing.map(r -> r.scale().toLowerCase(Locale.ROOT).contains("antoniadi"))
                        .orElse(false);
        double share = downward ? (5 - number) / 4 : (number - 1) / 9;
        return 0.25 + 0.75 * Math.max(0, Math.min(1, share));
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = palette.get();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g2.setColor(colours.raised());
        g2.fillRect(0, 0, getWidth(), getHeight());
        g2.setColor(colours.line());
        g2.drawLine(0, 0, getWidth(), 0);
        int base = getHeight() - AXIS_PX;
        if (pictures.isEmpty()) {
            g2.setFont(Theme.bodyFont(-1));
            g2.setColor(colours.quietInk());
            g2.drawString("The season will appear here, one tick per picture.", 16, base / 2 + 12);
            g2.dispose();
            return;
        }
        paintSizes(g2, colours, base);
        paintAxis(g2, colours, base);
        paintEvents(g2, colours, base);
        paintTicks(g2, colours, base);
        g2.dispose();
    }

    private void paintSizes(Graphics2D g, Palette colours, int base) {
        if (season.sizes().size() < 2) {
            return;
        }
        double largest = season.sizes().stream()
                .mapToDouble(Season.Size::diameterArcsec)
                .max()
                .orElse(1);
        Path2D curve = new Path2D.Double();
        Path2D edge = new Path2D.Double();
        boolean first = true;
        double x = 0;
        for (Season.Size size : season.sizes()) {
            x = scale.xPx(size.time());
            double y = base - (base - 6) * 0.9 * size.diameterArcsec() / largest;
            if (first) {
                curve.moveTo(x, base);
                edge.moveTo(x, y);
                first = false;
            }
            curve.lineTo(x, y);
            edge.lineTo(x, y);
        }
        curve.lineTo(x, base);
        curve.closePath();
        Color tint = colours.accent();
        g.setColor(new Color(tint.getRed(), tint.getGreen(), tint.getBlue(), 22));
        g.fill(curve);
        g.setColor(new Color(tint.getRed(), tint.getGreen(), tint.getBlue(), 70));
        g.draw(edge);
    }

    private void paintAxis(Graphics2D g, Palette colours, int base) {
        g.setColor(colours.line());
        g.drawLine(0, base, getWidth(), base);
        g.setFont(Theme.bodyFont(-2));
        for (RibbonScale.Notch notch : scale.notches(64)) {
            g.setColor(colours.line());
            g.draw(new Line2D.Double(notch.xPx(), base, notch.xPx(), base + 5));
            g.setColor(colours.quietInk());
            String text =
                    switch (notch.step()) {
                        case DAY, WEEK -> DAY.format(notch.date());
                        case MONTH -> MONTH.format(notch.date());
                        case YEAR -> Integer.toString(notch.date().getYear());
                    };
            g.drawString(text, (float) notch.xPx() + 4, getHeight() - 5f);
        }
    }

    private void paintEvents(Graphics2D g, Palette colours, int base) {
        g.setFont(Theme.bodyFont(-2));
        FontMetrics metrics = g.getFontMetrics();
        for (Season.Event event : season.events()) {
            double x = scale.xPx(event.time());
            if (x < 0 || x > getWidth()) {
                continue;
            }
            g.setColor(colours.quietInk());
            g.setStroke(new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {3, 3}, 0));
            g.draw(new Line2D.Double(x, 4, x, base));
            g.setStroke(new BasicStroke(1));
            g.drawString(
                    event.name(), (float) Math.min(x + 5, getWidth() - metrics.stringWidth(event.name()) - 4.0), 14f);
        }
    }

    private void paintTicks(Graphics2D g, Palette colours, int base) {
        double tallest = base - 10;
        double thick = Math.max(1.2, Math.min(3, scale.widthPx() / scale.spanDays() / 200));
        for (ArchivedPicture picture : pictures) {
            double x = xOf(picture);
            if (x < -2 || x > getWidth() + 2) {
                continue;
            }
            boolean isChosen = chosen.equals(Optional.of(picture.id()));
            Color tone =
                    picture.markCount() > 0 ? colours.accent() : picture.fitted() ? blend(colours) : colours.quietInk();
            g.setColor(isChosen ? colours.alarm() : tone);
            g.setStroke(new BasicStroke((float) (isChosen ? thick + 1.5 : thick)));
            double top = base - tallest * (isChosen ? 1 : quality(picture.seeing()) * 0.85);
            g.draw(new Line2D.Double(x, base, x, top));
        }
        g.setStroke(new BasicStroke(1));
    }

    private static Color blend(Palette colours) {
        Color a = colours.accent();
        Color b = colours.quietInk();
        return new Color(
                (a.getRed() + b.getRed()) / 2, (a.getGreen() + b.getGreen()) / 2, (a.getBlue() + b.getBlue()) / 2);
    }

    private final class Mouse extends MouseAdapter {
        private int lastX;

        @Override
        public void mousePressed(MouseEvent e) {
            lastX = e.getX();
            moved = false;
        }

        @Override
        public void mouseDragged(MouseEvent e) {
            if (moved || Math.abs(e.getX() - lastX) > 3) {
                moved = true;
                unfitted = false;
                scale = scale.movedBy(lastX - e.getX());
                lastX = e.getX();
                repaint();
            }
        }

        @Override
        public void mouseClicked(MouseEvent e) {
            if (e.getClickCount() == 2) {
                unfitted = true;
                resizeScale();
            } else if (!moved) {
                nearest(e.getX()).ifPresent(p -> whenClicked.accept(p.id()));
            }
        }

        @Override
        public void mouseWheelMoved(MouseWheelEvent e) {
            unfitted = false;
            scale = scale.zoomedAt(e.getX(), Math.pow(1.2, -e.getPreciseWheelRotation()));
            repaint();
        }
    }
}
