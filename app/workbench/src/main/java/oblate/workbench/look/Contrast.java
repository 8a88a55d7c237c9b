/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.Color;

/** Black or white, whichever reads better on a colour. */
final class Contrast {
    private static final double MIDDLE = 0.4;

    private Contrast() {}

    static Color against(Color colour) {
        double light = (0.2126 * colour.getRed() + 0.7152 * colour.getGreen() + 0.0722 * colour.getBlue()) / 255;
        return light > MIDDLE ? Color.BLACK : Color.WHITE;
    }
}
