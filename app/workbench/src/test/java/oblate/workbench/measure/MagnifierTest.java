/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Point;
import java.awt.Rectangle;
import java.awt.geom.Point2D;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class MagnifierTest {
    @Property(tries = 300)
    void itStandsInsideAndNeverOverThePointer(@ForAll @IntRange(max = 799) int x, @ForAll @IntRange(max = 599) int y) {
        Rectangle canvas = new Rectangle(0, 0, 800, 600);
        Point corner = Magnifier.corner(new Point2D.Double(x, y), canvas);
        Rectangle glass = new Rectangle(corner.x, corner.y, Magnifier.SIDE, Magnifier.SIDE);
        assertThat(canvas.contains(glass)).isTrue();
        assertThat(glass.contains(x, y)).isFalse();
    }
}
