/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.NoninvertibleTransformException;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Optional;
import oblate.image.PixelGrid;

/** Paints what a view shows of a picture from tiles: those of the fitting level where they are there, coarser ones under them till then. */
final class PicturePainter {
    private static final double SQUARES_FROM_SCALE = 5;
    private final TileStore tiles;

    PicturePainter(TileStore tiles) {
        this.tiles = tiles;
    }

    /**
     * Paints through a view.
     *
     * @param density device pixels per screen pixel
     * @param coarsely without smoothing, as long as the view moves
     */
    void paint(Graphics2D g, CanvasView view, double density, boolean coarsely) {
        Optional<Pyramid> pyramid = tiles.pyramid();
        if (pyramid.isEmpty()) {
            return;
        }
        g.setRenderingHint(
                RenderingHints.KEY_INTERPOLATION,
                coarsely || view.scale() >= SQUARES_FROM_SCALE
                        ? RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR
                        : RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        int best = pyramid.get().levelFor(view.scale() * density);
        int top = pyramid.get().levels().size() - 1;
        if (paintLevel(g, view, pyramid.get(), best, true)) {
            return;
        }
        for (int level = top; level >= best; level--) {
            paintLevel(g, view, pyramid.get(), level, level == best || level == top);
        }
    }

    /** Paints the tiles that are there; true when none was missing. Asked with {@code ask}, missing ones are made. */
    private boolean paintLevel(Graphics2D g, CanvasView view, Pyramid pyramid, int level, boolean ask) {
        PixelGrid samples = pyramid.levels().get(level);
        double step = 1 << level;
        Rectangle2D seen = seen(g, view);
        int columns = (samples.widthPx() - 1) / TileToner.SIDE;
        int rows = (samples.heightPx() - 1) / TileToner.SIDE;
        int left = clamp(seen.getMinX() / step / TileToner.SIDE, columns);
        int right = clamp(seen.getMaxX() / step / TileToner.SIDE, columns);
        int topRow = clamp(seen.getMinY() / step / TileToner.SIDE, rows);
        int bottom = clamp(seen.getMaxY() / step / TileToner.SIDE, rows);
        boolean whole = true;
        Shape clip = g.getClip();
        for (int row = topRow; row <= bottom; row++) {
            for (int column = left; column <= right; column++) {
                Optional<BufferedImage> tile = ask ? tiles.tile(level, column, row) : Optional.empty();
                whole &= tile.isPresent();
                int c = column;
                int r = row;
                tile.or(() -> tiles.stale(level, c, r)).ifPresent(image -> draw(g, view, step, c, r, image));
            }
        }
        g.setClip(clip);
        return whole;
    }

    private static int clamp(double at, int most) {
        return (int) Math.max(0, Math.min(most, Math.floor(at)));
    }

    private static Rectangle2D seen(Graphics2D g, CanvasView view) {
        Rectangle clip = g.getClipBounds();
        Rectangle2D screen = clip == null ? new Rectangle2D.Double(0, 0, view.widthPx(), view.heightPx()) : clip;
        try {
            return view.transform()
                    .createInverse()
                    .createTransformedShape(screen)
                    .getBounds2D();
        } catch (NoninvertibleTransformException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void draw(Graphics2D g, CanvasView view, double step, int column, int row, BufferedImage image) {
        AffineTransform t = view.transform();
        // Pixel centres are whole numbers, so that a picture begins half a pixel before 0.
        t.translate(-0.5, -0.5);
        t.scale(step, step);
        t.translate(
                column * TileToner.SIDE - (double) TileToner.BORDER, row * TileToner.SIDE - (double) TileToner.BORDER);
        g.drawImage(image, t, null);
    }
}
