/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import oblate.report.ladder.LadderChart;
import oblate.report.ladder.LadderStrip;
import oblate.workbench.look.RedLight;

/** A ladder's strips as pictures, turned and tinted as they are to be drawn. Stateless. */
final class StripPictures {
    private StripPictures() {}

    static List<BufferedImage> of(LadderChart ladder, ChartWish wish) {
        List<BufferedImage> pictures = new ArrayList<>();
        for (LadderStrip strip : ladder.strips()) {
            pictures.add(picture(strip, ladder.southUp(), wish.redLight()));
        }
        return pictures;
    }

    private static BufferedImage picture(LadderStrip strip, boolean turned, boolean red) {
        int w = strip.widthPx();
        int h = strip.heightPx();
        int[] rgb = new int[w * h];
        for (int i = 0; i < rgb.length; i++) {
            rgb[i] = strip.rgb()[turned ? rgb.length - 1 - i : i];
        }
        BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
        image.setRGB(0, 0, w, h, rgb, 0, w);
        return red ? RedLight.on(image) : image;
    }
}
