/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.event.ActionEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import java.util.function.Supplier;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Longitude from left to right, date from top to bottom, shaded by how squarely each longitude was seen. */
final class CoverageMap extends JComponent {
    private static final Texts TEXTS = Texts.of(CoverageMap.class);
    static final int LEFT = 128;
    static final int TOP = 58;
    private static final long serialVersionUID = 1L;
    private static final int RIGHT = 24;
    private static final int BOTTOM = 16;
    private static final int STRIP_PX = 12;
    private static final double LEAST_PX_PER_DAY = 3;
    private static final double MOST_PX_PER_DAY = 16;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM uuuu", Locale.ENGLISH);
    private final transient Supplier<Palette> palette;
    private final transient Consumer<Optional<Place>> whenPointed;
    private final transient LongConsumer whenChosen;
    private transient Optional<SeasonCoverage> coverage = Optional.empty();
    private transient Optional<Place> pointed = Optional.empty();
    private int roomPx = 400;

    /** A longitude in a night: the cell under the pointer. */
    record Place(SeasonCoverage.Night night, int lonDeg) {}

    CoverageMap(Supplier<Palette> palette, Consumer<Optional<Place>> whenPointed, LongConsumer whenChosen) {
        this.palette = palette;
        this.whenPointed = whenPointed;
        this.whenChosen = whenChosen;
        setName("coverage.map");
        setFocusable(true);
        Mouse mouse = new Mouse();
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
        key("LEFT", () -> moveBy(-5, 0));
        key("RIGHT", () -> moveBy(5, 0));
        key("UP", () -> moveBy(0, -1));
        key("DOWN", () -> moveBy(0, 1));
        key("ENTER", this::choose);
    }

    private void key(String stroke, Runnable deed) {
        getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(stroke), stroke);
        getActionMap().put(stroke, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    void show(Optional<SeasonCoverage> shown) {
        coverage = shown.filter(c -> !c.nights().isEmpty());
        point(Optional.empty());
        revalidate();
        repaint();
    }

    /** Scrolls to a night, if it is of this season. */
    void bringIntoView(LocalDate evening) {
        coverage.flatMap(c -> c.nights().stream()
                        .filter(n -> n.evening().equals(evening))
                        .findFirst())
                .ifPresent(n -> {
                    // The new height is laid out only after this event.
                    SwingUtilities.invokeLater(() -> {
                        Rectangle row = cell(n, 0);
                        scrollRectToVisible(new Rectangle(0, row.y - roomPx / 2, 1, roomPx));
                    });
                });
    }

    /** Height of the place it is shown in (px): a short season fills it. */
    void setRoom(int heightPx) {
        roomPx = heightPx;
        revalidate();
        repaint();
    }

    private LocalDate first() {
        return coverage.orElseThrow().nights().get(0).evening();
    }

    private long days() {
        var nights = coverage.orElseThrow().nights();
        return ChronoUnit.DAYS.between(first(), nights.get(nights.size() - 1).evening()) + 1;
    }

    private double pxPerDay() {
        double fitting = (roomPx - TOP - BOTTOM) / (double) days();
        return Math.max(LEAST_PX_PER_DAY, Math.min(MOST_PX_PER_DAY, fitting));
    }

    private double yOf(LocalDate evening) {
        return TOP + ChronoUnit.DAYS.between(first(), evening) * pxPerDay();
    }

    private double pxPerDeg() {
        return Math.max(1, getWidth() - LEFT - RIGHT) / 360.0;
    }

    /** Where a longitude in a night is painted, for those who want to point at it. */
    Rectangle cell(SeasonCoverage.Night night, int lonDeg) {
        return new Rectangle(
                (int) (LEFT + lonDeg * pxPerDeg()),
                (int) yOf(night.evening()),
                Math.max(1, (int) Math.ceil(pxPerDeg())),
                Math.max(1, (int) pxPerDay()));
    }

    private Optional<Place> at(MouseEvent e) {
        int lon = (int) Math.floor((e.getX() - LEFT) / pxPerDeg());
        if (coverage.isEmpty() || lon < 0 || lon >= 360 || e.getY() < TOP) {
            return Optional.empty();
        }
        double day = (e.getY() - TOP) / pxPerDay();
        // Nights with pictures are few and thin: the nearest one within a few pixels is meant.
        return coverage.get().nights().stream()
                .map(n -> new Place(n, lon))
                .filter(p -> distance(p, day) * pxPerDay() < 6)
                .min((a, b) -> Double.compare(distance(a, day), distance(b, day)));
    }

    private double distance(Place place, double day) {
        return Math.abs(ChronoUnit.DAYS.between(first(), place.night().evening()) + 0.5 - day);
    }

    private void point(Optional<Place> place) {
        pointed = place;
        whenPointed.accept(place);
        repaint();
    }

    private void moveBy(int byDeg, int byNights) {
        if (coverage.isEmpty()) {
            return;
        }
        var nights = coverage.get().nights();
        int row = pointed.map(p -> nights.indexOf(p.night())).orElse(nights.size() - 1);
        int lon = pointed.map(Place::lonDeg).orElse(180);
        row = pointed.isPresent() ? Math.max(0, Math.min(nights.size() - 1, row + byNights)) : row;
        point(Optional.of(new Place(nights.get(row), Math.floorMod(lon + byDeg, 360))));
        scrollRectToVisible(cell(nights.get(row), lon));
    }

    /** The picture that shows the place best, or else any of that night. */
    private void choose() {
        pointed.ifPresent(p -> {
            long best = p.night().bestPicture()[p.lonDeg()];
            for (int i = 0; best == 0 && i < 360; i++) {
                best = p.night().bestPicture()[i];
            }
            if (best != 0) {
                whenChosen.accept(best);
            }
        });
    }

    @Override
    public Dimension getPreferredSize() {
        int height = coverage.isEmpty() ? roomPx : (int) Math.ceil(TOP + days() * pxPerDay() + BOTTOM);
        return new Dimension(400, height);
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = palette.get();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setColor(colours.ground());
        g2.fillRect(0, 0, getWidth(), getHeight());
        if (coverage.isPresent()) {
            paintMap(g2, colours, coverage.get());
        } else {
            g2.setFont(Theme.bodyFont(2));
            g2.setColor(colours.ink());
            String text = TEXTS.text("coverage.none");
            g2.drawString(text, (getWidth() - g2.getFontMetrics().stringWidth(text)) / 2, getHeight() / 2);
        }
        g2.dispose();
    }

    private void paintMap(Graphics2D g, Palette colours, SeasonCoverage shown) {
        int width = (int) Math.round(360 * pxPerDeg());
        int height = (int) Math.ceil(days() * pxPerDay());
        g.setColor(colours.raised());
        g.fillRect(LEFT, TOP, width, height);
        paintRow(g, colours, shown.bestOfAllDeg(), TOP - STRIP_PX - 8, STRIP_PX);
        for (SeasonCoverage.Night night : shown.nights()) {
            paintRow(g, colours, night.bestDeg(), yOf(night.evening()), Math.max(2, pxPerDay() - 1));
        }
        paintScale(g, colours, width, height);
        paintDates(g, colours, width);
        pointed.ifPresent(p -> {
            g.setColor(colours.alarm());
            g.setStroke(new BasicStroke(1.5f));
            int x = (int) (LEFT + (p.lonDeg() + 0.5) * pxPerDeg());
            int y = (int) yOf(p.night().evening());
            g.drawRect(LEFT - 2, y - 2, width + 3, (int) Math.max(2, pxPerDay() - 1) + 3);
            g.drawLine(x, TOP - STRIP_PX - 12, x, y - 2);
        });
    }

    private void paintRow(Graphics2D g, Palette colours, int[] bestDeg, double y, double height) {
        g.setColor(colours.line());
        g.fill(new Rectangle.Double(LEFT, y, 360 * pxPerDeg(), height));
        int from = 0;
        // Neighbours of one shade are painted as one, so that no seams show between them.
        for (int lon = 1; lon <= 360; lon++) {
            if (lon == 360 || bestDeg[lon] != bestDeg[from]) {
                shade(colours, bestDeg[from]).ifPresent(g::setColor);
                if (bestDeg[from] < SeasonCoverage.UNSEEN_DEG) {
                    int x = (int) Math.round(LEFT + from * pxPerDeg());
                    int end = (int) Math.round(LEFT + lon * pxPerDeg());
                    g.fill(new Rectangle.Double(x, y, end - x, height));
                }
                from = lon;
            }
        }
    }

    /** From full tone where it was seen square on to nearly nothing at the limb; a step where it becomes too slantwise to measure well. */
    static Optional<Color> shade(Palette colours, int emissionDeg) {
        if (emissionDeg >= SeasonCoverage.UNSEEN_DEG) {
            return Optional.empty();
        }
        Color tone = colours.accent();
        int strength = emissionDeg <= Coverage.WITHIN_DEG
                ? 255 - 135 * emissionDeg / Coverage.WITHIN_DEG
                : Math.max(6, 62 - 56 * (emissionDeg - Coverage.WITHIN_DEG) / 30);
        return Optional.of(new Color(tone.getRed(), tone.getGreen(), tone.getBlue(), strength));
    }

    private void paintScale(Graphics2D g, Palette colours, int width, int height) {
        g.setFont(Theme.figureFont(-2));
        int step = width > 700 ? 30 : width > 350 ? 60 : 90;
        for (int lon = 0; lon <= 360; lon += step) {
            int x = (int) Math.round(LEFT + lon * pxPerDeg());
            g.setColor(new Color(colours.quietInk().getRGB() & 0xFFFFFF | 0x30000000, true));
            g.drawLine(x, TOP - 4, x, TOP + height);
            g.setColor(colours.quietInk());
            String text = lon + "°";
            g.drawString(text, x - g.getFontMetrics().stringWidth(text) / 2, TOP - STRIP_PX - 14);
        }
        g.setFont(Theme.bodyFont(-1));
        g.setColor(colours.ink());
        g.drawString(TEXTS.text("coverage.all"), 16, TOP - 9);
    }

    private void paintDates(Graphics2D g, Palette colours, int width) {
        Font day = Theme.bodyFont(-2);
        double free = TOP - 1.0;
        double lineHeight = 15;
        int month = -1;
        for (SeasonCoverage.Night night : coverage.orElseThrow().nights()) {
            double y = yOf(night.evening());
            if (y < free) {
                continue;
            }
            boolean newMonth = night.evening().getMonthValue() != month;
            month = night.evening().getMonthValue();
            g.setFont(newMonth ? Theme.headFont(-2) : day);
            g.setColor(newMonth ? colours.ink() : colours.quietInk());
            String text = newMonth && pxPerDay() * 28 > 3 * lineHeight
                    ? DAY.format(night.evening()) + " " + night.evening().getYear()
                    : newMonth ? MONTH.format(night.evening()) : DAY.format(night.evening());
            float baseline = (float) (y + Math.max(8, pxPerDay() / 2 + 4));
            g.drawString(text, LEFT - 10f - g.getFontMetrics().stringWidth(text), baseline);
            free = y + lineHeight;
        }
    }

    private final class Mouse extends MouseAdapter {
        @Override
        public void mouseMoved(MouseEvent e) {
            point(at(e));
        }

        @Override
        public void mouseExited(MouseEvent e) {
            point(Optional.empty());
        }

        @Override
        public void mousePressed(MouseEvent e) {
            requestFocusInWindow();
            point(at(e));
        }

        @Override
        public void mouseClicked(MouseEvent e) {
            choose();
        }
    }
}
