/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SmallImageTest {
    private static final String SHA = "ab".repeat(32);

    @TempDir
    Path folder;

    private static BufferedImage spot(int x, int y) {
        BufferedImage image = new BufferedImage(SmallImage.SIDE_PX, SmallImage.SIDE_PX, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(Color.WHITE);
        g.fillOval(x - 20, y - 20, 40, 40);
        g.dispose();
        return image;
    }

    private static int light(BufferedImage image, double acrossShare, double downShare) {
        return image.getRGB((int) (acrossShare * image.getWidth()), (int) (downShare * image.getHeight())) & 0xFF;
    }

    @Test
    void turningIsClockwiseAndResizingKeepsPlaces() {
        int quarter = SmallImage.SIDE_PX / 4;
        BufferedImage up = spot(SmallImage.SIDE_PX / 2, quarter);
        for (int side : new int[] {60, 120, 264}) {
            BufferedImage turned = SmallImage.turned(up, 90, side);
            assertThat(turned.getWidth()).isEqualTo(side);
            assertThat(light(turned, 0.75, 0.5)).isGreaterThan(200);
            assertThat(light(turned, 0.5, 0.25)).isLessThan(30);
            assertThat(light(SmallImage.turned(up, 0, side), 0.5, 0.25)).isGreaterThan(200);
        }
    }

    @Test
    void whatIsKeptIsReadBackByPictureAndFit() {
        ThumbnailStore store = new ThumbnailStore(folder.resolve("thumbnails"));
        assertThat(store.read(SHA, 3)).isEmpty();
        store.keep(SHA, 3, spot(100, 100));
        assertThat(store.read(SHA, 4)).isEmpty();
        BufferedImage back = store.read(SHA, 3).orElseThrow();
        assertThat(back.getWidth()).isEqualTo(SmallImage.SIDE_PX);
        assertThat(light(back, 100.0 / SmallImage.SIDE_PX, 100.0 / SmallImage.SIDE_PX))
                .isGreaterThan(200);
    }

    @Test
    void aBrokenOrForeignFileIsNoImageAndAnUnwritablePlaceCostsNothing() throws IOException {
        ThumbnailStore store = new ThumbnailStore(folder.resolve("thumbnails"));
        store.keep(SHA, 1, spot(9, 9));
        Path kept = folder.resolve("thumbnails/ab/" + SHA + "-1.jpg");
        Files.writeString(kept, "no image");
        assertThat(store.read(SHA, 1)).isEmpty();
        Path inTheWay = Files.writeString(folder.resolve("file"), "a file where the folder should be");
        ThumbnailStore nowhere = new ThumbnailStore(inTheWay);
        nowhere.keep(SHA, 1, spot(9, 9));
        assertThat(nowhere.read(SHA, 1)).isEmpty();
        nowhere.prune(0);
    }

    @Test
    void theOldestGoWhenThereAreTooMany() throws IOException {
        ThumbnailStore store = new ThumbnailStore(folder.resolve("thumbnails"));
        long each = 0;
        for (int i = 0; i < 5; i++) {
            store.keep(SHA, i, spot(50, 50));
            Path file = folder.resolve("thumbnails/ab/" + SHA + "-" + i + ".jpg");
            each = Files.size(file);
            Files.setLastModifiedTime(file, FileTime.from(Instant.ofEpochSecond(1000 + i)));
        }
        store.prune(2 * each);
        try (Stream<Path> left = Files.list(folder.resolve("thumbnails/ab"))) {
            assertThat(left.map(p -> p.getFileName().toString()))
                    .containsExactlyInAnyOrder(SHA + "-3.jpg", SHA + "-4.jpg");
        }
    }
}
