/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Point;
import java.awt.Rectangle;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import oblate.archive.ArchivedPicture;
import oblate.workbench.pictures.NightGroup;

/** The arithmetic of the wall against a plain walk over all tiles. */
class WallLayoutTest {
    private static WallLayout layout(List<Integer> counts, int widthPx, int tilePx) {
        List<ArchivedPicture> all = new ArrayList<>();
        for (int n = 0; n < counts.size(); n++) {
            for (int i = 0; i < counts.get(n); i++) {
                all.add(WallTest.picture(
                        all.size() + 1, Optional.of(LocalDate.of(2031, 3, 1).plusDays(n)), false, 0, List.of()));
            }
        }
        return WallLayout.of(NightGroup.of(all), widthPx, tilePx);
    }

    private static List<WallLayout.Tile> all(WallLayout layout) {
        return layout.bands().stream().flatMap(b -> b.tiles().stream()).toList();
    }

    @Property(tries = 150)
    void whatLiesBetweenTwoHeightsIsWhatAWalkOverAllFinds(
            @ForAll @Size(min = 1, max = 12) List<@IntRange(min = 1, max = 40) Integer> counts,
            @ForAll @IntRange(min = 200, max = 2000) int widthPx,
            @ForAll @IntRange(min = 100, max = 276) int tilePx,
            @ForAll @IntRange(min = -300, max = 20_000) int topPx,
            @ForAll @IntRange(min = 1, max = 3000) int heightPx) {
        WallLayout layout = layout(counts, widthPx, tilePx);
        List<WallLayout.Tile> walked = all(layout).stream()
                .filter(t -> t.bounds().y < topPx + heightPx && t.bounds().y + t.bounds().height > topPx)
                .toList();
        assertThat(layout.tilesBetween(topPx, topPx + heightPx)).isEqualTo(walked);
    }

    @Property(tries = 60)
    void nothingOverlapsAndAllStandsOnTheWall(
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 1, max = 12) Integer> counts,
            @ForAll @IntRange(min = 320, max = 1200) int widthPx,
            @ForAll @IntRange(min = 100, max = 276) int tilePx) {
        WallLayout layout = layout(counts, widthPx, tilePx);
        List<Rectangle> boxes = new ArrayList<>();
        layout.bands().forEach(b -> {
            boxes.add(b.header());
            b.tiles().forEach(t -> boxes.add(t.bounds()));
        });
        Rectangle wall = new Rectangle(0, 0, widthPx, layout.heightPx());
        for (int i = 0; i < boxes.size(); i++) {
            assertThat(wall.contains(boxes.get(i))).isTrue();
            for (int j = i + 1; j < boxes.size(); j++) {
                assertThat(boxes.get(i).intersects(boxes.get(j))).isFalse();
            }
        }
    }

    @Property(tries = 100)
    void everyTileIsFoundByAnyPointInIt(
            @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 1, max = 30) Integer> counts,
            @ForAll @IntRange(min = 320, max = 1600) int widthPx,
            @ForAll @IntRange(min = 0, max = 10_000) int which,
            @ForAll @IntRange(min = 0, max = 99) int dx,
            @ForAll @IntRange(min = 0, max = 99) int dy) {
        WallLayout layout = layout(counts, widthPx, 132);
        List<WallLayout.Tile> all = all(layout);
        WallLayout.Tile tile = all.get(which % all.size());
        assertThat(layout.at(new Point(tile.bounds().x + dx, tile.bounds().y + dy)))
                .contains(tile);
        assertThat(layout.tileOf(tile.picture().id())).contains(tile);
    }

    @Property(tries = 100)
    void goingRightVisitsEveryPictureOnceAndARangeIsThatWalk(
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 1, max = 15) Integer> counts,
            @ForAll @IntRange(min = 320, max = 1600) int widthPx) {
        WallLayout layout = layout(counts, widthPx, 132);
        List<Long> ids = all(layout).stream().map(t -> t.picture().id()).toList();
        List<Long> walked = new ArrayList<>(List.of(ids.get(0)));
        for (int i = 1; i < ids.size(); i++) {
            long next = layout.beside(walked.get(i - 1), 1, 0)
                    .orElseThrow()
                    .picture()
                    .id();
            assertThat(layout.beside(next, -1, 0).orElseThrow().picture().id()).isEqualTo(walked.get(i - 1));
            walked.add(next);
        }
        assertThat(walked).isEqualTo(ids);
        long last = ids.get(ids.size() - 1);
        assertThat(layout.beside(last, 1, 0).orElseThrow().picture().id()).isEqualTo(last);
        assertThat(layout.range(last, ids.get(0))).isEqualTo(ids);
    }

    @Property(tries = 100)
    void goingDownNeverGoesUpAndStaysInTheColumnWhereItCan(
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 1, max = 25) Integer> counts,
            @ForAll @IntRange(min = 320, max = 1600) int widthPx,
            @ForAll @IntRange(min = 0, max = 1000) int which) {
        WallLayout layout = layout(counts, widthPx, 132);
        List<WallLayout.Tile> all = all(layout);
        WallLayout.Tile from = all.get(which % all.size());
        WallLayout.Tile to = layout.beside(from.picture().id(), 0, 1).orElseThrow();
        if (to.bounds().y == from.bounds().y) {
            assertThat(to).isEqualTo(from);
            int lowest = all.get(all.size() - 1).bounds().y;
            assertThat(from.bounds().y).isEqualTo(lowest);
        } else {
            assertThat(to.bounds().y).isGreaterThan(from.bounds().y);
            assertThat(to.bounds().x).isLessThanOrEqualTo(from.bounds().x);
        }
    }
}
