/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;

/** What seeing and finishing do to a picture: a Moffat blur, noise, wavelet sharpening, a tone curve, few bits, JPEG. No Gaussian is anywhere in it. */
final class Darkroom {
    private Darkroom() {}

    /** Convolves with an elongated Moffat profile of exponent 3. */
    static double[] blur(double[] in, int width, int height, double fwhm, double elongation, double turn) {
        double alpha = fwhm / (2 * Math.sqrt(Math.pow(2, 1 / 3.0) - 1));
        int reach = (int) Math.ceil(4.5 * fwhm);
        int side = 2 * reach + 1;
        double[] kernel = new double[side * side];
        double total = 0;
        for (int y = -reach; y <= reach; y++) {
            for (int x = -reach; x <= reach; x++) {
                double u = (x * Math.cos(turn) + y * Math.sin(turn)) / elongation;
                double v = -x * Math.sin(turn) + y * Math.cos(turn);
                double value = Math.pow(1 + (u * u + v * v) / (alpha * alpha), -3);
                kernel[(y + reach) * side + x + reach] = value;
                total += value;
            }
        }
        double[] out = new double[in.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double v = in[y * width + x];
                if (v == 0) {
                    continue;
                }
                double share = v / total;
                for (int j = Math.max(-reach, -y); j <= Math.min(reach, height - 1 - y); j++) {
                    int to = (y + j) * width + x;
                    int from = (j + reach) * side + reach;
                    for (int i = Math.max(-reach, -x); i <= Math.min(reach, width - 1 - x); i++) {
                        out[to + i] += share * kernel[from + i];
                    }
                }
            }
        }
        return out;
    }

    /** Boosts the layers of an à trous wavelet (B3 spline), finest first. */
    static double[] sharpen(double[] in, int width, int height, double[] gains) {
        double[] rest = in;
        double[] out = new double[in.length];
        int step = 1;
        for (double gain : gains) {
            double[] smooth = spline(rest, width, height, step);
            for (int i = 0; i < out.length; i++) {
                out[i] += gain * (rest[i] - smooth[i]);
            }
            rest = smooth;
            step *= 2;
        }
        for (int i = 0; i < out.length; i++) {
            out[i] += rest[i];
        }
        return out;
    }

    private static double[] spline(double[] in, int width, int height, int step) {
        double[] weights = {1 / 16.0, 4 / 16.0, 6 / 16.0, 4 / 16.0, 1 / 16.0};
        double[] rows = new double[in.length];
        double[] out = new double[in.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                for (int k = -2; k <= 2; k++) {
                    int xx = Math.max(0, Math.min(width - 1, x + k * step));
                    rows[y * width + x] += weights[k + 2] * in[y * width + xx];
                }
            }
        }
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                for (int k = -2; k <= 2; k++) {
                    int yy = Math.max(0, Math.min(height - 1, y + k * step));
                    out[y * width + x] += weights[k + 2] * rows[yy * width + x];
                }
            }
        }
        return out;
    }

    static void addNoise(double[] image, double sigma, Random random) {
        for (int i = 0; i < image.length; i++) {
            image[i] += sigma * Math.sqrt(0.3 + Math.max(0, image[i])) * random.nextGaussian();
        }
    }

    /** Cuts at black and white, bends the tones and keeps so many levels. */
    static float[] finish(double[] image, double gamma, double bend, int levels) {
        double most = 0;
        for (double v : image) {
            most = Math.max(most, v);
        }
        float[] out = new float[image.length];
        for (int i = 0; i < out.length; i++) {
            double v = Math.max(0, Math.min(1, 0.92 * image[i] / most));
            v = Math.pow(v, gamma);
            v = (1 - bend) * v + bend * v * v * (3 - 2 * v);
            out[i] = (float) (Math.rint(v * levels) / levels);
        }
        return out;
    }

    static float[] jpeg(float[] image, int width, int height, float quality) throws IOException {
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < image.length; i++) {
            picture.getRaster().setSample(i % width, i / width, 0, Math.round(255 * image[i]));
        }
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (var stream = ImageIO.createImageOutputStream(bytes)) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionQuality(quality);
            writer.setOutput(stream);
            writer.write(null, new IIOImage(picture, null, null), how);
        } finally {
            writer.dispose();
        }
        BufferedImage back = ImageIO.read(new ByteArrayInputStream(bytes.toByteArray()));
        float[] out = new float[image.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = back.getRaster().getSample(i % width, i / width, 0) / 255f;
        }
        return out;
    }
}
