/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.HashSet;
import java.util.Set;
import oblate.sky.event.EventKind;
import org.junit.jupiter.api.Test;

class SpanFillTest {
    private static int inked(SpanFill fill) {
        BufferedImage image = new BufferedImage(60, 20, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        fill.paint(g, new Rectangle2D.Double(5, 4, 50, 12), Color.WHITE);
        int count = 0;
        for (int y = 0; y < 20; y++) {
            for (int x = 0; x < 60; x++) {
                boolean ink = (image.getRGB(x, y) & 0xFFFFFF) != 0;
                count += ink ? 1 : 0;
                assertThat(ink && (x < 3 || x > 56 || y < 2 || y > 17))
                        .as("%s at %d, %d", fill, x, y)
                        .isFalse();
            }
        }
        g.dispose();
        return count;
    }

    /** In one colour: from full to empty each kind keeps its own share of ink, and none leaves its box. */
    @Test
    void kindsDifferWithoutColour() {
        assertThat(inked(SpanFill.FILLED)).isEqualTo(600);
        assertThat(inked(SpanFill.HATCHED)).isBetween(inked(SpanFill.HOLLOW) + 30, 450);
        assertThat(inked(SpanFill.DOTTED)).isBetween(inked(SpanFill.HOLLOW) + 30, 450);
        assertThat(inked(SpanFill.HOLLOW)).isLessThan(150);
        Set<SpanFill> used = new HashSet<>();
        for (EventKind kind : EventKind.values()) {
            used.add(SpanFill.of(kind));
        }
        assertThat(used).hasSize(EventKind.values().length);
    }
}
