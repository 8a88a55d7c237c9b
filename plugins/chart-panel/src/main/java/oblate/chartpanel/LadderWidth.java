/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import oblate.workbench.PanelSettings;

/** How wide the ladder stands beside the chart of longitudes: as a person drew it, or so that the chart keeps the room it needs. */
final class LadderWidth {
    private static final double SHARE = 0.4;
    private static final int CHART_PX = 410;
    private static final int LEAST_PX = 130;
    private static final int LEAST_CHART_PX = 240;
    private static final String KEY = "ladder.width";
    private final PanelSettings settings;

    LadderWidth(PanelSettings settings) {
        this.settings = settings;
    }

    /** Its width (px) in a canvas of this width; 0 where it would leave the chart no room. */
    int within(int canvasPx) {
        if (canvasPx < LEAST_PX + LEAST_CHART_PX) {
            return 0;
        }
        int wished = settings.number(KEY, 0);
        return clamped(wished > 0 ? wished : usual(canvasPx), canvasPx);
    }

    private static int usual(int canvasPx) {
        return (int) Math.min(SHARE * canvasPx, canvasPx - CHART_PX);
    }

    private static int clamped(int px, int canvasPx) {
        return Math.max(LEAST_PX, Math.min(canvasPx - LEAST_CHART_PX, px));
    }

    /** Keeps a width a person drew (px). */
    void keep(int px, int canvasPx) {
        if (canvasPx < LEAST_PX + LEAST_CHART_PX) {
            return;
        }
        settings.keep(KEY, clamped(px, canvasPx));
    }

    /** Goes back to the usual width. */
    void forget() {
        settings.keep(KEY, 0);
    }
}
