/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import oblate.disc.MapFrame;
import oblate.disc.MapProjection;
import oblate.disc.PlanetMap;
import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import oblate.sky.Rings;
import oblate.sky.RotationElements;
import oblate.sky.RotationSystem;
import oblate.sky.Spheroid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PngMapTest {
    @TempDir
    Path folder;

    private record Body(String id, String label, Globe globe, Optional<Rings> rings) implements PlanetModel {}

    private static MapFrame frame() {
        RotationSystem own = new RotationSystem("1", "System I", 0, 350, "test");
        PlanetModel planet = new Body(
                "ball",
                "Ball",
                new Globe(
                        4,
                        new Spheroid(3000, 3000, "test"),
                        new RotationElements(0, 0, 90, 0, List.of(), List.of(), List.of(), "test"),
                        List.of(own),
                        "1",
                        LongitudeSense.WEST),
                Optional.empty());
        return new MapFrame(planet, own, MapProjection.CYLINDRICAL, true, 180, 0, 50, 25, 7.2);
    }

    @Test
    void keepsSixteenBitsInGreyAndColour() throws Exception {
        for (int bands : new int[] {1, 3}) {
            float[] ramp = new float[50 * 25];
            for (int i = 0; i < ramp.length; i++) {
                ramp[i] = i;
            }
            ramp[7] = Float.NaN;
            Path file = folder.resolve(bands + ".png");
            new PngMap()
                    .write(
                            new PlanetMap(frame(), bands == 1 ? List.of(ramp) : List.of(ramp, ramp, ramp), List.of()),
                            file);
            BufferedImage read = ImageIO.read(file.toFile());
            assertThat(read.getColorModel().getComponentSize(0)).isEqualTo(16);
            assertThat(read.getRaster().getNumBands()).isEqualTo(bands);
            assertThat(read.getRaster().getSample(7, 0, 0)).isZero();
            int low = read.getRaster().getSample(100 % 50, 2, 0);
            int high = read.getRaster().getSample(1000 % 50, 20, 0);
            assertThat((double) high / low).isBetween(9.99, 10.01);
            assertThat(high).isBetween(48_000, 52_500);
        }
    }
}
