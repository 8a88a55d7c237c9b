/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import oblate.disc.MapFormat;
import oblate.disc.PlanetMap;

/**
 * Maps as PNG with 16 bits a sample, grey or colour: black at 0, the brightness that 99.9 % of the known pixels stay below at 95 % of the range, the same
 * for all channels; what is not known is black.
 */
public final class PngMap implements MapFormat {
    private static final double BRIGHT_SHARE = 0.999;
    private static final double BRIGHT_LEVEL = 0.95;
    private static final int WHITE = 65_535;

    @Override
    public String id() {
        return "png";
    }

    @Override
    public String label() {
        return "PNG, 16 bits";
    }

    @Override
    public boolean prefersCentric() {
        return false;
    }

    @Override
    public void write(PlanetMap map, Path file) throws IOException {
        int width = map.frame().widthPx();
        int height = map.frame().heightPx();
        int bands = map.planes().size();
        WritableRaster raster = Raster.createInterleavedRaster(DataBuffer.TYPE_USHORT, width, height, bands, null);
        double scale = BRIGHT_LEVEL * WHITE / bright(map.planes());
        int[] row = new int[width * bands];
        for (int y = 0; y < height; y++) {
            for (int i = 0; i < row.length; i++) {
                float v = map.planes().get(i % bands)[y * width + i / bands];
                row[i] = Float.isNaN(v) ? 0 : (int) Math.max(0, Math.min(WHITE, Math.round(v * scale)));
            }
            raster.setPixels(0, y, width, 1, row);
        }
        ComponentColorModel model = new ComponentColorModel(
                ColorSpace.getInstance(bands == 1 ? ColorSpace.CS_GRAY : ColorSpace.CS_sRGB),
                false,
                false,
                Transparency.OPAQUE,
                DataBuffer.TYPE_USHORT);
        if (!ImageIO.write(new BufferedImage(model, raster, false, null), "png", file.toFile())) {
            throw new IOException("PNG cannot be written here");
        }
    }

    private static double bright(List<float[]> planes) {
        float[] known = new float[planes.stream().mapToInt(p -> p.length).sum()];
        int n = 0;
        for (float[] plane : planes) {
            for (float v : plane) {
                if (!Float.isNaN(v)) {
                    known[n++] = v;
                }
            }
        }
        Arrays.sort(known, 0, n);
        float bright = n == 0 ? 1 : known[(int) (BRIGHT_SHARE * (n - 1))];
        return bright > 0 ? bright : 1;
    }
}
