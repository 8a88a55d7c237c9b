/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.Point;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.workbench.pictures.NightGroup;

/**
 * Where every night's header and every picture's tile stands on the wall. Only the top of each night is kept; a tile's place is worked out when it
 * is asked for, so that a hundred thousand pictures cost as little as ten. Immutable.
 */
final class WallLayout {
    static final int MARGIN = 16;
    static final int GAP = 8;
    static final int HEADER = 64;
    static final int CAPTION = 40;
    private final List<Band> bands;
    private final Map<Long, Place> places;
    private final int widthPx;
    private final int heightPx;

    /** A picture on the wall. */
    record Tile(ArchivedPicture picture, Rectangle bounds) {}

    private record Place(int band, int index) {}

    /**
     * A night on the wall.
     *
     * @param night the night
     * @param topPx top of its header (px)
     * @param widthPx width of the wall (px)
     * @param tilePx width of a tile (px)
     * @param columns tiles in a row, at least 1
     */
    record Band(NightGroup night, int topPx, int widthPx, int tilePx, int columns) {
        Rectangle header() {
            return new Rectangle(0, topPx, widthPx, HEADER);
        }

        int count() {
            return night.pictures().size();
        }

        int rows() {
            return (count() + columns - 1) / columns;
        }

        int rowPx() {
            return tilePx + CAPTION + GAP;
        }

        /** Below its last tile (px). */
        int bottom() {
            return topPx + HEADER + Math.max(0, rows() * rowPx() - GAP);
        }

        Rectangle bounds(int index) {
            return new Rectangle(
                    MARGIN + index % columns * (tilePx + GAP),
                    topPx + HEADER + index / columns * rowPx(),
                    tilePx,
                    tilePx + CAPTION);
        }

        Tile tile(int index) {
            return new Tile(night.pictures().get(index), bounds(index));
        }

        /** All tiles, in order. */
        List<Tile> tiles() {
            List<Tile> all = new ArrayList<>(count());
            for (int i = 0; i < count(); i++) {
                all.add(tile(i));
            }
            return all;
        }

        /** Index of the first tile of the row at a height, within the night. */
        int firstOfRowAt(int yPx) {
            int row = Math.floorDiv(yPx - topPx - HEADER, rowPx());
            return Math.max(0, Math.min(Math.max(0, rows() - 1), row)) * columns;
        }
    }

    private WallLayout(List<Band> bands, Map<Long, Place> places, int widthPx, int heightPx) {
        this.bands = bands;
        this.places = places;
        this.widthPx = widthPx;
        this.heightPx = heightPx;
    }

    /**
     * Lays out nights in rows of tiles.
     *
     * @param tilePx width of a tile (px); its height is {@link #CAPTION} more
     */
    static WallLayout of(List<NightGroup> nights, int widthPx, int tilePx) {
        int columns = Math.max(1, (widthPx - 2 * MARGIN + GAP) / (tilePx + GAP));
        List<Band> bands = new ArrayList<>(nights.size());
        Map<Long, Place> places = new HashMap<>();
        int y = 0;
        for (NightGroup night : nights) {
            Band band = new Band(night, y, widthPx, tilePx, columns);
            for (int i = 0; i < band.count(); i++) {
                places.put(night.pictures().get(i).id(), new Place(bands.size(), i));
            }
            bands.add(band);
            y = band.bottom() + 2 * GAP;
        }
        return new WallLayout(List.copyOf(bands), places, widthPx, y + MARGIN);
    }

    /** One per night, from the top. */
    List<Band> bands() {
        return bands;
    }

    /** Width laid out for (px). */
    int widthPx() {
        return widthPx;
    }

    /** Height needed (px). */
    int heightPx() {
        return heightPx;
    }

    /** Bands of which some part lies between two heights (px). */
    List<Band> between(int topPx, int bottomPx) {
        int from = Math.max(0, bandAt(topPx));
        int to = from;
        while (to < bands.size() && bands.get(to).topPx() < bottomPx) {
            to++;
        }
        return bands.subList(Math.min(from, bands.size()), to);
    }

    /** Index of the last band that begins at or above a height; −1 above all. */
    private int bandAt(int yPx) {
        int low = 0;
        int high = bands.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (bands.get(middle).topPx() <= yPx) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low - 1;
    }

    /** Tiles of which some part lies between two heights (px), in order. */
    List<Tile> tilesBetween(int topPx, int bottomPx) {
        List<Tile> found = new ArrayList<>();
        for (Band band : between(topPx, bottomPx)) {
            for (int i = band.firstOfRowAt(topPx); i < band.count(); i++) {
                Rectangle bounds = band.bounds(i);
                if (bounds.y >= bottomPx) {
                    break;
                }
                if (bounds.y + bounds.height > topPx) {
                    found.add(new Tile(band.night().pictures().get(i), bounds));
                }
            }
        }
        return found;
    }

    /** The tile at a point. */
    Optional<Tile> at(Point point) {
        return tilesBetween(point.y, point.y + 1).stream()
                .filter(t -> t.bounds().contains(point))
                .findFirst();
    }

    /** The night whose header is at a point. */
    Optional<Band> headerAt(Point point) {
        int index = bandAt(point.y);
        return index >= 0 && bands.get(index).header().contains(point)
                ? Optional.of(bands.get(index))
                : Optional.empty();
    }

    /** The tile of a picture. */
    Optional<Tile> tileOf(long pictureId) {
        return Optional.ofNullable(places.get(pictureId))
                .map(p -> bands.get(p.band()).tile(p.index()));
    }

    /** The first tile of all. */
    Optional<Tile> first() {
        return bands.stream().filter(b -> b.count() > 0).findFirst().map(b -> b.tile(0));
    }

    /** The last tile of all. */
    Optional<Tile> last() {
        return bands.isEmpty()
                ? Optional.empty()
                : Optional.of(bands.get(bands.size() - 1)).map(b -> b.tile(b.count() - 1));
    }

    /** Pictures from one to another in the order of the wall, both included; empty when one is not on it. */
    List<Long> range(long fromId, long toId) {
        Place from = places.get(fromId);
        Place to = places.get(toId);
        if (from == null || to == null) {
            return List.of();
        }
        boolean forward = from.band() < to.band() || from.band() == to.band() && from.index() <= to.index();
        Place first = forward ? from : to;
        Place last = forward ? to : from;
        List<Long> ids = new ArrayList<>();
        for (int b = first.band(); b <= last.band(); b++) {
            Band band = bands.get(b);
            int begin = b == first.band() ? first.index() : 0;
            int end = b == last.band() ? last.index() : band.count() - 1;
            for (int i = begin; i <= end; i++) {
                ids.add(band.night().pictures().get(i).id());
            }
        }
        return ids;
    }

    /**
     * The tile a step away: to the left or right in order, up or down in the same column or the last of a shorter row. At the edge of the wall, the
     * tile itself; for a picture that is not on it, the first one.
     */
    Optional<Tile> beside(long pictureId, int dx, int dy) {
        Place here = places.get(pictureId);
        if (here == null) {
            return first();
        }
        Place there = dx != 0 ? sideways(here, dx) : upright(here, dy);
        return Optional.of(bands.get(there.band()).tile(there.index()));
    }

    private Place sideways(Place here, int dx) {
        int index = here.index() + dx;
        if (index >= 0 && index < bands.get(here.band()).count()) {
            return new Place(here.band(), index);
        }
        int band = here.band() + dx;
        if (band < 0 || band >= bands.size()) {
            return here;
        }
        return new Place(band, dx > 0 ? 0 : bands.get(band).count() - 1);
    }

    private Place upright(Place here, int dy) {
        Band band = bands.get(here.band());
        int column = here.index() % band.columns();
        int row = here.index() / band.columns() + dy;
        int index = here.band();
        if (row < 0 || row >= band.rows()) {
            index += dy;
            if (index < 0 || index >= bands.size()) {
                return here;
            }
            band = bands.get(index);
            row = dy > 0 ? 0 : band.rows() - 1;
        }
        return new Place(index, Math.min(row * band.columns() + column, band.count() - 1));
    }
}
