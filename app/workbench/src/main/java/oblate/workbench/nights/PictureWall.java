/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.event.ActionEvent;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Ellipse2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import javax.swing.Scrollable;
import javax.swing.SwingConstants;
import oblate.archive.ArchivedPicture;
import oblate.image.CaptureTime;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.StateGlyph;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.NightGroup;
import oblate.workbench.pictures.PictureState;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.pictures.Thumbnails;

/** The wall of pictures. Paints only what is seen, so that a hundred thousand pictures scroll as ten do. */
final class PictureWall extends JComponent implements Scrollable {
    private static final long serialVersionUID = 1L;
    private static final int TILE = 132;
    private final transient PanelContext context;
    private final transient Thumbnails thumbnails;
    private final transient LongConsumer whenOpened;
    private transient List<NightGroup> nights = List.of();
    private transient WallLayout layout = WallLayout.of(List.of(), 600, TILE);
    private transient Optional<RotationSystem> system = Optional.empty();
    private transient Optional<Long> hovered = Optional.empty();
    private boolean searched;

    PictureWall(PanelContext context, LongConsumer whenOpened) {
        this.context = context;
        this.whenOpened = whenOpened;
        thumbnails = new Thumbnails(context, this::repaint);
        setName("wall");
        setFocusable(true);
        setToolTipText("");
        Mouse mouse = new Mouse();
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                layAgain();
            }
        });
        step("left", KeyEvent.VK_LEFT, -1, 0);
        step("right", KeyEvent.VK_RIGHT, 1, 0);
        step("up", KeyEvent.VK_UP, 0, -1);
        step("down", KeyEvent.VK_DOWN, 0, 1);
        bind("open", KeyEvent.VK_ENTER, () -> context.selection().pictureId().ifPresent(whenOpened::accept));
        context.selection().whenChanged(this::showChosen);
    }

    private void step(String name, int key, int dx, int dy) {
        bind(name, key, () -> layout.beside(context.selection().pictureId().orElse(-1L), dx, dy)
                .ifPresent(t -> context.selection().choosePicture(t.picture().id())));
    }

    private void bind(String name, int key, Runnable deed) {
        getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(key, 0), name);
        getActionMap().put(name, new AbstractAction() {
            private static final long serialVersionUID = 1L;

            @Override
            public void actionPerformed(ActionEvent e) {
                deed.run();
            }
        });
    }

    void show(List<NightGroup> found, boolean bySearch) {
        nights = found;
        searched = bySearch;
        layAgain();
    }

    void setSystem(RotationSystem chosen) {
        system = Optional.of(chosen);
        repaint();
    }

    private RotationSystem system() {
        return system.filter(s -> context.planet().globe().indexOf(s) >= 0)
                .orElseGet(() -> SystemLabel.usual(context.planet()));
    }

    private void layAgain() {
        layout = WallLayout.of(nights, Math.max(200, getWidth()), TILE);
        revalidate();
        repaint();
    }

    private void showChosen() {
        repaint();
        context.selection().pictureId().flatMap(layout::tileOf).ifPresent(t -> {
            Rectangle wanted = new Rectangle(t.bounds());
            wanted.grow(0, 24);
            if (!getVisibleRect().contains(t.bounds())) {
                scrollRectToVisible(wanted);
            }
        });
    }

    /** Where a picture's tile is, for those who want to point at it. */
    Optional<Rectangle> boundsOf(long pictureId) {
        return layout.tileOf(pictureId).map(WallLayout.Tile::bounds);
    }

    @Override
    public String getToolTipText(MouseEvent event) {
        return layout.at(event.getPoint())
                .map(t -> t.picture().originalName() + " – "
                        + PictureState.of(t.picture()).word() + ". Double-click or Enter measures it.")
                .orElse(null);
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = context.palette();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g2.setColor(colours.ground());
        g2.fillRect(0, 0, getWidth(), getHeight());
        Rectangle clip = g.getClipBounds();
        if (nights.isEmpty()) {
            paintEmpty(g2, colours);
        }
        for (WallLayout.Band band : layout.bands()) {
            if (band.bottom() < clip.y || band.header().y > clip.y + clip.height) {
                continue;
            }
            paintHeader(g2, colours, band);
            for (WallLayout.Tile tile : band.tiles()) {
                if (tile.bounds().intersects(clip)) {
                    paintTile(g2, colours, tile);
                }
            }
        }
        g2.dispose();
    }

    private void paintEmpty(Graphics2D g, Palette colours) {
        Rectangle seen = getVisibleRect();
        double cx = seen.getCenterX();
        double cy = seen.getCenterY() - 30;
        g.setColor(colours.line());
        g.setStroke(new BasicStroke(2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {6, 6}, 0));
        g.draw(new Ellipse2D.Double(cx - 70, cy - 65, 140, 130));
        g.setColor(colours.quietInk());
        String text = !context.shelf().isRead()
                ? "Reading the archive …"
                : searched ? "Nothing matches these words." : "No pictures yet. Drop a night’s folder here.";
        g.setFont(Theme.bodyFont(2));
        FontMetrics m = g.getFontMetrics();
        g.drawString(text, (float) (cx - m.stringWidth(text) / 2.0), (float) cy + 100);
    }

    private void paintHeader(Graphics2D g, Palette colours, WallLayout.Band band) {
        int y = band.header().y;
        g.setFont(Theme.headFont(3));
        g.setColor(colours.ink());
        g.drawString(band.night().title(), WallLayout.MARGIN, y + 32);
        g.setFont(Theme.bodyFont(-1));
        g.setColor(colours.quietInk());
        g.drawString(band.night().summary(), WallLayout.MARGIN, y + 51);
        paintCoverage(g, colours, band);
    }

    private void paintCoverage(Graphics2D g, Palette colours, WallLayout.Band band) {
        List<Double> meridians = band.night().pictures().stream()
                .map(p -> p.centralMeridians().get(system().id()))
                .filter(java.util.Objects::nonNull)
                .toList();
        int width = 240;
        int x = getWidth() - WallLayout.MARGIN - width;
        if (meridians.isEmpty() || x < 420) {
            return;
        }
        int y = band.header().y + 38;
        int[] best = Coverage.bestDistanceDeg(meridians);
        g.setColor(colours.line());
        g.fill(new RoundRectangle2D.Double(x, y, width, 6, 6, 6));
        Color tone = colours.accent();
        for (int px = 0; px < width; px++) {
            int away = best[(int) (px * 360.0 / width)];
            if (away <= Coverage.WITHIN_DEG) {
                int strength = 255 - 130 * away / Coverage.WITHIN_DEG;
                g.setColor(new Color(tone.getRed(), tone.getGreen(), tone.getBlue(), strength));
                g.fillRect(x + px, y, 1, 6);
            }
        }
        g.setFont(Theme.bodyFont(-3));
        g.setColor(colours.quietInk());
        String words = Coverage.seenDeg(best) + "° of 360° in " + system().label();
        g.drawString(words, x + width - g.getFontMetrics().stringWidth(words), y - 6);
        g.drawString("0°", x, y + 18);
        g.drawString("180°", x + width / 2f - 10, y + 18f);
        g.drawString("360°", x + width - 22, y + 18);
    }

    private void paintTile(Graphics2D g, Palette colours, WallLayout.Tile tile) {
        Rectangle b = tile.bounds();
        ArchivedPicture picture = tile.picture();
        boolean chosen = context.selection().pictureId().equals(Optional.of(picture.id()));
        boolean hover = hovered.equals(Optional.of(picture.id()));
        Shape frame = new RoundRectangle2D.Double(b.x, b.y, b.width, b.height, 10, 10);
        g.setColor(colours.raised());
        g.fill(frame);
        Shape dark = new RoundRectangle2D.Double(b.x, b.y, b.width, TILE, 10, 10);
        g.setColor(colours.night());
        g.fill(dark);
        Optional<BufferedImage> image = thumbnails.of(picture);
        if (image.isPresent()) {
            Shape old = g.getClip();
            g.clip(dark);
            g.drawImage(image.get(), b.x + 6, b.y + 6, TILE - 12, TILE - 12, null);
            g.setClip(old);
        } else {
            g.setColor(new Color(colours.nightInk().getRGB() & 0xFFFFFF | 0x30000000, true));
            g.setStroke(new BasicStroke(1.2f));
            g.draw(new Ellipse2D.Double(b.x + 26, b.y + 29, TILE - 52, TILE - 58));
        }
        paintCaption(g, colours, picture, b);
        if (chosen || hover) {
            g.setColor(chosen ? colours.accent() : colours.line());
            g.setStroke(new BasicStroke(chosen ? 2.2f : 1.5f));
            g.draw(new RoundRectangle2D.Double(b.x + 1, b.y + 1, b.width - 2, b.height - 2, 10, 10));
        }
    }

    private void paintCaption(Graphics2D g, Palette colours, ArchivedPicture picture, Rectangle b) {
        int base = b.y + TILE;
        StateGlyph.State state = PictureState.of(picture);
        Color tone =
                switch (state) {
                    case NEW -> colours.quietInk();
                    case FITTED, MEASURED -> colours.accent();
                    case NEEDS_A_LOOK -> colours.alarm();
                };
        StateGlyph.paint(g, state, b.x + b.width - 19.0, base + 5.0, 12, tone);
        g.setFont(Theme.figureFont(-1));
        g.setColor(colours.ink());
        String time =
                picture.time().map(CaptureTime::midUtc).map(Figures::clockUt).orElse("no time");
        g.drawString(time, b.x + 8, base + 16);
        g.setFont(Theme.figureFont(-2));
        g.setColor(colours.quietInk());
        Double lon = picture.centralMeridians().get(system().id());
        String second = lon == null ? "" : "CM " + SystemLabel.brief(system()) + " " + Figures.longitude(lon);
        g.drawString(second, b.x + 8, base + 32);
        picture.filter().ifPresent(f -> {
            g.setFont(Theme.bodyFont(-3));
            g.setColor(colours.nightInk());
            g.drawString(f.length() > 20 ? f.substring(0, 19) + "…" : f, b.x + 8, base - 6);
        });
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(600, nights.isEmpty() ? 300 : layout.heightPx());
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return new Dimension(900, 600);
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return 32;
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
        return orientation == SwingConstants.VERTICAL ? visible.height - 64 : visible.width;
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        return true;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return nights.isEmpty();
    }

    private final class Mouse extends MouseAdapter {
        @Override
        public void mousePressed(MouseEvent e) {
            requestFocusInWindow();
            layout.at(e.getPoint()).ifPresent(t -> context.selection()
                    .choosePicture(t.picture().id()));
        }

        @Override
        public void mouseClicked(MouseEvent e) {
            if (e.getClickCount() == 2) {
                layout.at(e.getPoint())
                        .ifPresent(t -> whenOpened.accept(t.picture().id()));
            }
        }

        @Override
        public void mouseMoved(MouseEvent e) {
            hover(layout.at(e.getPoint()).map(t -> t.picture().id()));
        }

        @Override
        public void mouseExited(MouseEvent e) {
            hover(Optional.empty());
        }

        private void hover(Optional<Long> id) {
            if (!id.equals(hovered)) {
                hovered = id;
                repaint();
            }
        }
    }
}
