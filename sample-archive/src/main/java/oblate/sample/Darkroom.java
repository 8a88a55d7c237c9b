package oblate.sample;

/**
 * Turns the sharp scene into a finished picture: colour spread by the air, seeing, noise, sharpening, black point and stretch. Immutable.
 *
 * @param processing what is done
 * @param blurPx sigma of the seeing (px)
 * @param redShiftXPx how far red stands from green (px); blue stands as far the other way
 * @param redShiftYPx likewise downward
 * @param light brightness of a bright zone before the stretch, as a share of full scale
 * @param seed of the noise
 */
record Darkroom(Kit.Processing processing, double blurPx, double redShiftXPx, double redShiftYPx, double light, long seed) {
    private static final double SKIRT_SHARE = 0.16;
    private static final double SKIRT_WIDTH = 2.3;

    /** Develops planes red, green, blue in place and gives them back, 0…1. */
    float[][] develop(float[][] planes, int width) {
        for (int c = 0; c < planes.length; c++) {
            double away = planes.length == 1 ? 0 : 1 - c;
            planes[c] = developOne(planes[c], width, away, c);
        }
        return planes;
    }

    private float[] developOne(float[] sharp, int width, double away, int channel) {
        float[] seen = new float[sharp.length];
        float[] core = blurred(sharp, width, blurPx, away * redShiftXPx, away * redShiftYPx);
        float[] skirt = blurred(sharp, width, blurPx * SKIRT_WIDTH, away * redShiftXPx, away * redShiftYPx);
        Dice dice = new Dice(seed, channel);
        for (int i = 0; i < seen.length; i++) {
            double value = light * ((1 - SKIRT_SHARE) * core[i] + SKIRT_SHARE * skirt[i]);
            double noise = processing.noise() * Math.sqrt(0.12 + value / light);
            seen[i] = (float) (value + noise * dice.bell());
        }
        float[] fine = blurred(seen, width, 0.9 * blurPx, 0, 0);
        float[] coarse = blurred(seen, width, 2.1 * blurPx, 0, 0);
        double white = 1 - processing.black();
        for (int i = 0; i < seen.length; i++) {
            double value = seen[i]
                    + processing.sharpenFine() * (seen[i] - fine[i])
                    + processing.sharpenCoarse() * (seen[i] - coarse[i]);
            double stretched = Math.max(0, (value - processing.black()) / white);
            seen[i] = (float) Math.min(1, Math.pow(stretched, processing.gamma()));
        }
        return seen;
    }

    /** Gaussian blur whose centre is moved by a part of a pixel. */
    static float[] blurred(float[] plane, int width, double sigmaPx, double shiftXPx, double shiftYPx) {
        int height = plane.length / width;
        float[] across = new float[plane.length];
        float[] kernel = kernel(sigmaPx, shiftXPx);
        int half = kernel.length / 2;
        for (int y = 0; y < height; y++) {
            int row = y * width;
            for (int x = 0; x < width; x++) {
                float sum = 0;
                int from = Math.max(-half, x - width + 1);
                int to = Math.min(half, x);
                for (int k = from; k <= to; k++) {
                    sum += kernel[k + half] * plane[row + x - k];
                }
                across[row + x] = sum;
            }
        }
        float[] out = new float[plane.length];
        kernel = kernel(sigmaPx, shiftYPx);
        half = kernel.length / 2;
        for (int y = 0; y < height; y++) {
            for (int k = Math.max(-half, y - height + 1); k <= Math.min(half, y); k++) {
                float weight = kernel[k + half];
                int from = (y - k) * width;
                int to = y * width;
                for (int x = 0; x < width; x++) {
                    out[to + x] += weight * across[from + x];
                }
            }
        }
        return out;
    }

    private static float[] kernel(double sigmaPx, double shiftPx) {
        int half = (int) Math.ceil(3.6 * sigmaPx + Math.abs(shiftPx));
        double[] weights = new double[2 * half + 1];
        double total = 0;
        for (int k = -half; k <= half; k++) {
            double t = (k - shiftPx) / sigmaPx;
            weights[k + half] = Math.exp(-0.5 * t * t);
            total += weights[k + half];
        }
        float[] kernel = new float[weights.length];
        for (int k = 0; k < kernel.length; k++) {
            kernel[k] = (float) (weights[k] / total);
        }
        return kernel;
    }
}
