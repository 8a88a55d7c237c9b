/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Dimension;
import java.util.Arrays;
import javax.swing.JPanel;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class FlowingRowTest {
    private static FlowingRow row(int widthPx) {
        FlowingRow row = new FlowingRow(true);
        for (int wide : new int[] {80, 200, 120, 300, 60}) {
            JPanel part = new JPanel();
            part.setPreferredSize(new Dimension(wide, 22));
            row.add(part);
        }
        row.setSize(widthPx, 10);
        row.setSize(widthPx, row.getPreferredSize().height);
        row.doLayout();
        return row;
    }

    /** At any width all parts lie within the row, none over another, the last at the right. */
    @Property
    void partsNeverOverlapOrLeaveTheRow(@ForAll @IntRange(min = 120, max = 1500) int widthPx) {
        FlowingRow row = row(widthPx);
        Component[] parts = row.getComponents();
        for (int i = 0; i < parts.length; i++) {
            assertThat(parts[i].getX()).isGreaterThanOrEqualTo(16);
            assertThat(parts[i].getX() + parts[i].getWidth()).isLessThanOrEqualTo(widthPx - 16);
            assertThat(parts[i].getY() + parts[i].getHeight()).isLessThanOrEqualTo(row.getHeight());
            for (int j = 0; j < i; j++) {
                assertThat(parts[i].getBounds().intersects(parts[j].getBounds()))
                        .isFalse();
            }
        }
        assertThat(parts[4].getX() + 60).isEqualTo(widthPx - 16);
        boolean oneLine = Arrays.stream(parts).allMatch(p -> p.getY() == parts[0].getY());
        assertThat(oneLine).isEqualTo(widthPx >= 760 + 4 * 8 + 2 * 16);
    }
}
