/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.Point;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.workbench.pictures.NightGroup;

/**
 * Where every night's header and every picture's tile stands on the wall. Immutable.
 *
 * @param bands one per night, from the top
 * @param widthPx width laid out for (px)
 * @param heightPx height needed (px)
 */
record WallLayout(List<Band> bands, int widthPx, int heightPx) {
    static final int MARGIN = 16;
    static final int GAP = 8;
    static final int HEADER = 64;
    static final int CAPTION = 40;

    /**
     * A night on the wall.
     *
     * @param night the night
     * @param header its header
     * @param tiles its pictures' tiles, in order
     */
    record Band(NightGroup night, Rectangle header, List<Tile> tiles) {
        int bottom() {
            return tiles.isEmpty()
                    ? header.y + header.height
                    : tiles.get(tiles.size() - 1).bounds().y
                            + tiles.get(tiles.size() - 1).bounds().height;
        }
    }

    /** A picture on the wall. */
    record Tile(ArchivedPicture picture, Rectangle bounds) {}

    /**
     * Lays out nights in rows of tiles.
     *
     * @param tilePx width of a tile (px); its height is {@link #CAPTION} more
     */
    static WallLayout of(List<NightGroup> nights, int widthPx, int tilePx) {
        int columns = Math.max(1, (widthPx - 2 * MARGIN + GAP) / (tilePx + GAP));
        List<Band> bands = new ArrayList<>();
        int y = 0;
        for (NightGroup night : nights) {
            Rectangle header = new Rectangle(0, y, widthPx, HEADER);
            y += HEADER;
            List<Tile> tiles = new ArrayList<>();
            for (int i = 0; i < night.pictures().size(); i++) {
                int x = MARGIN + (i % columns) * (tilePx + GAP);
                int top = y + (i / columns) * (tilePx + CAPTION + GAP);
                tiles.add(new Tile(night.pictures().get(i), new Rectangle(x, top, tilePx, tilePx + CAPTION)));
            }
            int rows = (night.pictures().size() + columns - 1) / columns;
            y += rows * (tilePx + CAPTION + GAP) + GAP;
            bands.add(new Band(night, header, List.copyOf(tiles)));
        }
        return new WallLayout(List.copyOf(bands), widthPx, y + MARGIN);
    }

    /** The tile at a point. */
    Optional<Tile> at(Point point) {
        return bands.stream()
                .filter(b -> point.y >= b.header().y && point.y < b.bottom())
                .flatMap(b -> b.tiles().stream())
                .filter(t -> t.bounds().contains(point))
                .findFirst();
    }

    /** The tile of a picture. */
    Optional<Tile> tileOf(long pictureId) {
        return bands.stream()
                .flatMap(b -> b.tiles().stream())
                .filter(t -> t.picture().id() == pictureId)
                .findFirst();
    }

    /** The tile a step away: to the left or right in order, up or down to the nearest in the next row. */
    Optional<Tile> beside(long pictureId, int dx, int dy) {
        List<Tile> all = bands.stream().flatMap(b -> b.tiles().stream()).toList();
        Optional<Tile> here = tileOf(pictureId);
        if (here.isEmpty()) {
            return all.stream().findFirst();
        }
        int index = all.indexOf(here.get());
        if (dx != 0) {
            int to = index + dx;
            return to < 0 || to >= all.size() ? here : Optional.of(all.get(to));
        }
        Rectangle from = here.get().bounds();
        Optional<Tile> best = here;
        long bestDistance = Long.MAX_VALUE;
        for (Tile tile : all) {
            long down = (long) (tile.bounds().y - from.y) * dy;
            if (down > 0) {
                long distance = down * 10_000 + Math.abs(tile.bounds().x - from.x);
                if (distance < bestDistance) {
                    bestDistance = distance;
                    best = Optional.of(tile);
                }
            }
        }
        return best;
    }
}
