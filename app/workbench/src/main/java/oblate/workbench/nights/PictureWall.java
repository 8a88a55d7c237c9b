/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.MouseEvent;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongConsumer;
import javax.swing.JComponent;
import javax.swing.JViewport;
import javax.swing.Scrollable;
import javax.swing.SwingConstants;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import oblate.archive.ArchivedPicture;
import oblate.workbench.PanelContext;
import oblate.workbench.pictures.NightGroup;
import oblate.workbench.pictures.PictureState;
import oblate.workbench.pictures.Thumbnails;
import oblate.workbench.words.Texts;

/** The wall of pictures. Paints only what is seen, so that a hundred thousand pictures scroll as ten do. */
final class PictureWall extends JComponent implements Scrollable {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(PictureWall.class);
    private static final int SMALLEST_TILE = 100;
    private static final int LARGEST_TILE = 276;
    private static final int USUAL_TILE = 132;
    private final transient PanelContext context;
    private final transient SystemChoice systems;
    private final transient ChosenPictures chosen;
    private final transient Thumbnails thumbnails;
    private final transient Map<NightGroup, NightHeader> headers = new IdentityHashMap<>();
    private final Timer lookingAround;
    private transient List<NightGroup> nights = List.of();
    private transient WallLayout layout;
    private transient Optional<Long> hovered = Optional.empty();
    private String emptySentence = "";
    private String emptyMore = "";
    private boolean severalPlanets;
    private int tilePx;

    PictureWall(PanelContext context, SystemChoice systems, ChosenPictures chosen, LongConsumer whenOpened) {
        this.context = context;
        this.systems = systems;
        this.chosen = chosen;
        tilePx = clamped(context.settings().number("tile", USUAL_TILE));
        layout = WallLayout.of(List.of(), 600, tilePx);
        thumbnails = Thumbnails.named(context, this::repaintTile);
        lookingAround = new Timer(60, e -> lookAround());
        lookingAround.setRepeats(false);
        setName("wall");
        setFocusable(true);
        setToolTipText("");
        new WallInput(this, context, chosen, whenOpened).install();
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                layAgain();
            }
        });
        chosen.whenChanged(this::showChosen);
        context.background()
                .aside(
                        () -> {
                            thumbnails.prune();
                            return true;
                        },
                        done -> {});
    }

    private static int clamped(int px) {
        return Math.max(SMALLEST_TILE, Math.min(LARGEST_TILE, px));
    }

    /**
     * Shows nights.
     *
     * @param sentence said when there are none
     * @param more a second, quieter sentence then
     */
    void show(List<NightGroup> found, String sentence, String more) {
        nights = found;
        emptySentence = sentence;
        emptyMore = more;
        severalPlanets = NightHeader.severalPlanets(context.shelf().pictures());
        layAgain();
    }

    /** The chosen system has changed. */
    void systemChanged() {
        headers.clear();
        repaint();
    }

    /** Makes the tiles larger or smaller, keeping what is under a height where it is. */
    void zoom(int steps) {
        int wanted = clamped((int) Math.round(tilePx * Math.pow(1.15, steps)));
        if (wanted != tilePx) {
            Optional<WallLayout.Tile> top = layout.tilesBetween(getVisibleRect().y, getVisibleRect().y + 1).stream()
                    .findFirst()
                    .or(() ->
                            layout
                                    .tilesBetween(getVisibleRect().y, getVisibleRect().y + getVisibleRect().height)
                                    .stream()
                                    .findFirst());
            tilePx = wanted;
            context.settings().keep("tile", tilePx);
            layAgain();
            SwingUtilities.invokeLater(
                    () -> top.ifPresent(t -> bringToTop(t.picture().id())));
        }
    }

    private void layAgain() {
        headers.clear();
        layout = WallLayout.of(nights, Math.max(200, getWidth()), tilePx);
        revalidate();
        repaint();
        lookingAround.restart();
    }

    WallLayout wallLayout() {
        return layout;
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

    /** Scrolls so that a picture's night stands at the top. */
    void bringToTop(long pictureId) {
        layout.tileOf(pictureId).ifPresent(tile -> {
            JViewport viewport = (JViewport) SwingUtilities.getAncestorOfClass(JViewport.class, this);
            int headed = layout.bands().stream()
                    .filter(b -> b.topPx() <= tile.bounds().y)
                    .reduce((a, b) -> b)
                    .map(WallLayout.Band::topPx)
                    .orElse(0);
            int room = getVisibleRect().height;
            int y = tile.bounds().y + tile.bounds().height - headed > room ? tile.bounds().y : headed;
            if (viewport != null) {
                viewport.setViewPosition(new java.awt.Point(0, Math.max(0, Math.min(y, layout.heightPx() - room))));
            }
        });
    }

    /** Where a picture's tile is, for those who want to point at it. */
    Optional<Rectangle> boundsOf(long pictureId) {
        return layout.tileOf(pictureId).map(WallLayout.Tile::bounds);
    }

    void hover(Optional<Long> id) {
        if (!id.equals(hovered)) {
            hovered.ifPresent(this::repaintTile);
            hovered = id;
            hovered.ifPresent(this::repaintTile);
        }
    }

    private void repaintTile(long pictureId) {
        layout.tileOf(pictureId)
                .map(WallLayout.Tile::bounds)
                .ifPresent(b -> repaint(b.x - 2, b.y - 2, b.width + 4, b.height + 4));
    }

    /** Small images of what is in view first, then a screen below, then one above. */
    private void lookAround() {
        Rectangle seen = getVisibleRect();
        if (seen.isEmpty()) {
            return;
        }
        List<ArchivedPicture> wanted = new ArrayList<>();
        for (int screen : new int[] {0, 1, -1}) {
            int top = seen.y + screen * seen.height;
            layout.tilesBetween(top, top + seen.height).forEach(t -> wanted.add(t.picture()));
        }
        thumbnails.lookAt(wanted, imagePx());
    }

    private int imagePx() {
        double density = getGraphicsConfiguration() == null
                ? 1
                : getGraphicsConfiguration().getDefaultTransform().getScaleX();
        return (int) Math.round((tilePx - 12) * Math.max(1, density));
    }

    @Override
    public String getToolTipText(MouseEvent event) {
        return layout.at(event.getPoint())
                .map(t -> TEXTS.text(
                        "wall.picture.tip",
                        t.picture().originalName(),
                        PictureState.of(t.picture(), context.shelf()).word()))
                .orElseGet(() -> layout.headerAt(event.getPoint())
                        .map(b -> TEXTS.text("wall.night.tip"))
                        .orElse(null));
    }

    @Override
    protected void paintComponent(Graphics g) {
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setColor(context.palette().ground());
        Rectangle clip = g.getClipBounds();
        g2.fill(clip);
        WallPainter painter = new WallPainter(g2, context, systems);
        if (nights.isEmpty()) {
            painter.empty(getVisibleRect(), emptySentence, emptyMore);
        }
        int bottom = clip.y + clip.height;
        for (WallLayout.Band band : layout.between(clip.y, bottom)) {
            if (band.header().intersects(clip)) {
                NightHeader header =
                        headers.computeIfAbsent(band.night(), n -> NightHeader.of(n, systems, severalPlanets));
                painter.header(header, band.header());
            }
        }
        int imagePx = imagePx();
        for (WallLayout.Tile tile : layout.tilesBetween(clip.y, bottom)) {
            if (tile.bounds().intersects(clip)) {
                long id = tile.picture().id();
                painter.tile(
                        tile,
                        thumbnails.of(tile.picture(), imagePx),
                        chosen.contains(id),
                        hovered.equals(Optional.of(id)));
            }
        }
        g2.dispose();
        lookingAround.restart();
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
}
