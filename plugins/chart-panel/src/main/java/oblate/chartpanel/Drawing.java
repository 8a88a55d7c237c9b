/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import oblate.report.ChartContent;

/** Draws one kind of chart. Stateless; needs no screen. */
interface Drawing {
    /** Whether this is its kind. */
    boolean draws(ChartContent content);

    /**
     * Draws it.
     *
     * @param content of a kind it {@linkplain #draws draws}
     * @param look colours and font
     * @param graphics pixels or SVG
     * @param area to be filled (px)
     */
    void draw(ChartContent content, ChartWish look, Graphics2D graphics, Rectangle2D area);
}
