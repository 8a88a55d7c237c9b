package oblate.sample;

import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;

/** A picture read back by readers that are not ours: ImageIO, nom-tam-fits. Samples 0…1, rows from the top. */
record Pixels(int width, int height, int channels, float[][] planes) {

    static Pixels read(Path file) throws IOException {
        return file.toString().endsWith(".fits") ? fits(file) : raster(file);
    }

    private static Pixels raster(Path file) throws IOException {
        BufferedImage image = ImageIO.read(file.toFile());
        var raster = image.getRaster();
        float top = raster.getDataBuffer().getDataType() == DataBuffer.TYPE_BYTE ? 255 : 65535;
        float[][] planes = new float[raster.getNumBands()][];
        for (int c = 0; c < planes.length; c++) {
            planes[c] = raster.getSamples(0, 0, image.getWidth(), image.getHeight(), c, (float[]) null);
            for (int i = 0; i < planes[c].length; i++) {
                planes[c][i] /= top;
            }
        }
        return new Pixels(image.getWidth(), image.getHeight(), planes.length, planes);
    }

    private static Pixels fits(Path file) throws IOException {
        try (Fits fits = new Fits(file.toFile())) {
            short[][] rows = (short[][]) fits.readHDU().getKernel();
            int height = rows.length;
            int width = rows[0].length;
            float[] plane = new float[width * height];
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    plane[(height - 1 - y) * width + x] = ((rows[y][x] & 0xffff) ^ 0x8000) / 65535f;
                }
            }
            return new Pixels(width, height, 1, new float[][] {plane});
        } catch (FitsException e) {
            throw new IOException(e);
        }
    }

    /** Green, or the only plane. */
    float[] truthPlane() {
        return planes[channels == 1 ? 0 : 1];
    }

    /** Weighted middle (x, y) of what is brighter (sign 1) or darker (sign −1) than the rim of a square window. */
    double[] middle(double xPx, double yPx, int reach, int sign) {
        float[] plane = truthPlane();
        int cx = (int) Math.round(xPx);
        int cy = (int) Math.round(yPx);
        double rim = 0;
        for (int i = -reach; i < reach; i++) {
            rim += plane[(cy - reach) * width + cx + i]
                    + plane[(cy + reach) * width + cx - i]
                    + plane[(cy - i) * width + cx - reach]
                    + plane[(cy + i) * width + cx + reach];
        }
        rim /= 8.0 * reach;
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        double peak = 0;
        for (int y = cy - reach; y <= cy + reach; y++) {
            for (int x = cx - reach; x <= cx + reach; x++) {
                peak = Math.max(peak, sign * (plane[y * width + x] - rim));
            }
        }
        for (int y = cy - reach; y <= cy + reach; y++) {
            for (int x = cx - reach; x <= cx + reach; x++) {
                double weight = Math.max(0, sign * (plane[y * width + x] - rim) - 0.4 * peak);
                sum += weight;
                sumX += weight * x;
                sumY += weight * y;
            }
        }
        return new double[] {sumX / sum, sumY / sum};
    }
}
