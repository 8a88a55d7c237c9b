/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Point;
import java.awt.Rectangle;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.archive.ArchivedPicture;
import oblate.archive.Rating;
import oblate.image.CaptureTime;
import oblate.image.TimeMeaning;
import oblate.image.TimeSource;
import oblate.workbench.look.StateGlyph.State;
import oblate.workbench.pictures.NightGroup;
import oblate.workbench.pictures.PictureState;
import org.junit.jupiter.api.Test;

class WallTest {
    static ArchivedPicture picture(
            long id, Optional<LocalDate> night, boolean fitted, int marks, List<String> conflicts) {
        Optional<CaptureTime> time = night.map(n -> new CaptureTime(
                n.atTime(21, 0).toInstant(java.time.ZoneOffset.UTC).plusSeconds(60 * id),
                OptionalDouble.of(120),
                TimeSource.FILE_NAME,
                "file name",
                "",
                TimeMeaning.MIDDLE,
                false,
                false,
                0.5,
                List.of()));
        return new ArchivedPicture(
                id,
                "00",
                "pictures/p" + id + ".png",
                "p" + id + ".png",
                "png",
                640,
                480,
                3,
                Optional.of("jupiter"),
                time,
                night,
                Map.of("2", 10.0),
                Optional.of("garden"),
                Optional.empty(),
                Optional.of("long tube"),
                Optional.empty(),
                Optional.of(new Rating("7", "Pickering")),
                Optional.empty(),
                Optional.empty(),
                conflicts,
                Instant.EPOCH,
                fitted,
                marks);
    }

    private static List<ArchivedPicture> nights(int... counts) {
        List<ArchivedPicture> all = new ArrayList<>();
        for (int n = 0; n < counts.length; n++) {
            for (int i = 0; i < counts[n]; i++) {
                all.add(picture(all.size() + 1, Optional.of(LocalDate.of(2031, 3, 1 + n)), false, 0, List.of()));
            }
        }
        return all;
    }

    @Test
    void nightsComeNewestFirstAndUndatedPicturesBeforeAll() {
        List<ArchivedPicture> all = new ArrayList<>(nights(2, 3));
        all.add(picture(99, Optional.empty(), false, 0, List.of()));
        List<NightGroup> groups = NightGroup.of(all);
        assertThat(groups)
                .extracting(NightGroup::title)
                .containsExactly("Without a time", "2/3 March 2031", "1/2 March 2031");
        assertThat(groups.get(1).pictures()).extracting(ArchivedPicture::id).containsExactly(3L, 4L, 5L);
        assertThat(groups.get(1).summary())
                .contains("3 pictures")
                .contains("garden")
                .contains("long tube")
                .contains("seeing 7 Pickering");
    }

    @Test
    void tilesNeverOverlapAndStayOnTheWall() {
        WallLayout layout = WallLayout.of(NightGroup.of(nights(7, 1, 12)), 700, 132);
        List<Rectangle> boxes = new ArrayList<>();
        layout.bands().forEach(b -> {
            boxes.add(b.header());
            b.tiles().forEach(t -> boxes.add(t.bounds()));
        });
        Rectangle wall = new Rectangle(0, 0, 700, layout.heightPx());
        for (int i = 0; i < boxes.size(); i++) {
            assertThat(wall.contains(boxes.get(i))).isTrue();
            for (int j = i + 1; j < boxes.size(); j++) {
                assertThat(boxes.get(i).intersects(boxes.get(j))).isFalse();
            }
        }
        assertThat(boxes).hasSize(3 + 20);
    }

    @Test
    void everyTileIsFoundByItsMiddle() {
        WallLayout layout = WallLayout.of(NightGroup.of(nights(7, 1, 12)), 700, 132);
        for (WallLayout.Band band : layout.bands()) {
            for (WallLayout.Tile tile : band.tiles()) {
                Point middle = new Point(
                        (int) tile.bounds().getCenterX(), (int) tile.bounds().getCenterY());
                assertThat(layout.at(middle)).contains(tile);
            }
        }
        assertThat(layout.at(new Point(2, 2))).isEmpty();
    }

    @Test
    void arrowsGoToTheNeighbours() {
        // Five columns: the night of seven stands in rows of five and two.
        WallLayout layout =
                WallLayout.of(NightGroup.of(nights(7)), 2 * WallLayout.MARGIN + 5 * 132 + 4 * WallLayout.GAP, 132);
        assertThat(layout.beside(1, 1, 0).orElseThrow().picture().id()).isEqualTo(2);
        assertThat(layout.beside(1, -1, 0).orElseThrow().picture().id()).isEqualTo(1);
        assertThat(layout.beside(2, 0, 1).orElseThrow().picture().id()).isEqualTo(7);
        assertThat(layout.beside(7, 0, -1).orElseThrow().picture().id()).isEqualTo(2);
        assertThat(layout.beside(5, 0, 1).orElseThrow().picture().id()).isEqualTo(7);
    }

    @Test
    void oneMeridianShowsAHundredDegreesAlsoAcrossZero() {
        assertThat(Coverage.seenDeg(Coverage.bestDistanceDeg(List.of(180.0)))).isEqualTo(100);
        int[] acrossZero = Coverage.bestDistanceDeg(List.of(0.0));
        assertThat(Coverage.seenDeg(acrossZero)).isEqualTo(100);
        assertThat(acrossZero[355]).isLessThan(6);
        assertThat(acrossZero[180]).isGreaterThan(170);
        assertThat(Coverage.seenDeg(Coverage.bestDistanceDeg(List.of()))).isZero();
        assertThat(Coverage.seenDeg(Coverage.bestDistanceDeg(List.of(0.0, 90.0, 180.0, 270.0))))
                .isEqualTo(360);
    }

    @Test
    void whatNeedsALookComesBeforeHowFarItIs() {
        Optional<LocalDate> night = Optional.of(LocalDate.of(2031, 3, 1));
        assertThat(PictureState.of(picture(1, night, false, 0, List.of()))).isEqualTo(State.NEW);
        assertThat(PictureState.of(picture(1, night, true, 0, List.of()))).isEqualTo(State.FITTED);
        assertThat(PictureState.of(picture(1, night, true, 2, List.of()))).isEqualTo(State.MEASURED);
        assertThat(PictureState.of(picture(1, night, true, 2, List.of("two times"))))
                .isEqualTo(State.NEEDS_A_LOOK);
        assertThat(PictureState.of(picture(1, Optional.empty(), false, 0, List.of())))
                .isEqualTo(State.NEEDS_A_LOOK);
    }
}
