/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.image.PixelGrid;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files written by the encoders of the JDK, which are not those of the sample files. */
@Tag("truth")
class ForeignEncodersTest {
    @TempDir
    Path folder;

    private PixelGrid roundTrip(BufferedImage image, String kind) throws IOException {
        Path file = folder.resolve("picture." + kind);
        assertThat(ImageIO.write(image, kind, file.toFile())).isTrue();
        return new PictureReader(List.of(new PngFormat(), new JpegFormat(), new TiffFormat()), PictureLimits.usual())
                .decode(file)
                .pixels();
    }

    private static BufferedImage grey16() {
        BufferedImage image = new BufferedImage(40, 30, BufferedImage.TYPE_USHORT_GRAY);
        for (int y = 0; y < 30; y++) {
            for (int x = 0; x < 40; x++) {
                image.getRaster().setSample(x, y, 0, (x * 1613 + y * 211) % 65536);
            }
        }
        return image;
    }

    @Test
    void sixteenBitGreySurvivesPngAndTiff() throws IOException {
        for (String kind : List.of("png", "tiff")) {
            PixelGrid grid = roundTrip(grey16(), kind);
            for (int y = 0; y < 30; y++) {
                for (int x = 0; x < 40; x++) {
                    assertThat((double) grid.sample(0, x, y))
                            .isCloseTo((x * 1613 + y * 211) % 65536 / 65535.0, within(6e-8));
                }
            }
        }
    }

    /** An even colour is what JPEG keeps to about one step. */
    @Test
    void jpegKeepsAnEvenColour() throws IOException {
        BufferedImage image = new BufferedImage(24, 24, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 24 * 24; i++) {
            image.setRGB(i % 24, i / 24, 0xc08040);
        }
        PixelGrid grid = roundTrip(image, "jpg");
        assertThat((double) grid.sample(0, 11, 11) * 255).isCloseTo(0xc0, within(2.0));
        assertThat((double) grid.sample(1, 11, 11) * 255).isCloseTo(0x80, within(2.0));
        assertThat((double) grid.sample(2, 11, 11) * 255).isCloseTo(0x40, within(2.0));
    }
}
