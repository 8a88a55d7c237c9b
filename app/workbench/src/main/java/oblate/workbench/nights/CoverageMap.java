/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.event.ActionEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.time.LocalDate;
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
    private static final long serialVersionUID = 1L;
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

    private Optional<CoverageScale> scale() {
        return coverage.map(c -> new CoverageScale(c, getWidth(), roomPx));
    }

    /** Where a longitude in a night is painted, for those who want to point at it. */
    Rectangle cell(SeasonCoverage.Night night, int lonDeg) {
        return scale().orElseThrow().cell(night, lonDeg);
    }

    private Optional<Place> at(MouseEvent e) {
        return scale().flatMap(s -> s.at(e.getX(), e.getY()));
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
        return new Dimension(400, scale().map(CoverageScale::height).orElse(roomPx));
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
            new CoveragePainter(scale().orElseThrow(), colours).paint(g2, pointed);
        } else {
            g2.setFont(Theme.bodyFont(2));
            g2.setColor(colours.ink());
            String text = TEXTS.text("coverage.none");
            g2.drawString(text, (getWidth() - g2.getFontMetrics().stringWidth(text)) / 2, getHeight() / 2);
        }
        g2.dispose();
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
