/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.image.BufferedImage;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import oblate.image.PixelGrid;
import oblate.workbench.Background;

/** Tiles of the picture shown, made in the background when they are first asked for and kept while there is room. On the event thread only. */
final class TileStore {
    /** A quarter of a megabyte each. */
    private static final int MOST = 260;

    private final Background background;
    private final Runnable whenReady;
    private final Set<Key> wanted = new HashSet<>();
    private final Map<Key, BufferedImage> kept = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, BufferedImage> eldest) {
            return size() > MOST;
        }
    };

    private Optional<Pyramid> pyramid = Optional.empty();
    // Read by the background, which leaves out what nobody wants to see any more.
    private volatile Look look;
    private volatile long round;

    /** A place in the pyramid in one look. */
    private record Key(int level, int column, int row, Look look) {}

    TileStore(Background background, Runnable whenReady) {
        this.background = background;
        this.whenReady = whenReady;
    }

    /** Shows another picture, or none. */
    void show(Optional<Pyramid> fresh, Look in) {
        pyramid = fresh;
        look = in;
        round++;
        kept.clear();
        wanted.clear();
    }

    /** Shows it in another look; the tiles of the look before stay until these are there. */
    void setLook(Look fresh) {
        look = fresh;
    }

    Optional<Pyramid> pyramid() {
        return pyramid;
    }

    Look look() {
        return look;
    }

    /** A tile in the present look when it is there; else it is asked for. */
    Optional<BufferedImage> tile(int level, int column, int row) {
        Key key = new Key(level, column, row, look);
        BufferedImage known = kept.get(key);
        if (known == null && wanted.add(key)) {
            long asked = round;
            PixelGrid samples = pyramid.orElseThrow().levels().get(level);
            background.promptly(
                    () -> round == asked && key.look().equals(look)
                            ? Optional.of(TileToner.image(samples, 1 << level, column, row, key.look()))
                            : Optional.<BufferedImage>empty(),
                    made -> arrived(asked, key, made));
        }
        return Optional.ofNullable(known);
    }

    /** A tile in any look that is still there. */
    Optional<BufferedImage> stale(int level, int column, int row) {
        return kept.entrySet().stream()
                .filter(e -> e.getKey().level() == level
                        && e.getKey().column() == column
                        && e.getKey().row() == row)
                .map(Map.Entry::getValue)
                .reduce((a, b) -> b);
    }

    private void arrived(long asked, Key key, Optional<BufferedImage> made) {
        if (asked == round) {
            wanted.remove(key);
            made.ifPresent(image -> kept.put(key, image));
            whenReady.run();
        }
    }
}
