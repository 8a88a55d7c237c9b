/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class LadderLayoutTest {
    @Test
    void stripsWithRoomStayAtTheirDates() {
        LadderLayout layout = LadderLayout.of(List.of(100.0, 200.0, 320.0), 50, 0, 400);
        assertThat(layout.leftOut()).isZero();
        assertThat(layout.places()).allSatisfy(p -> assertThat(p.middlePx()).isEqualTo(p.datePx()));
    }

    @Test
    void crowdedStripsAreSpreadEvenlyAboutTheirDates() {
        // Three at one date, 50 apart: shifts of -50, 0 and +50 have the least sum of squares.
        LadderLayout layout = LadderLayout.of(List.of(200.0, 200.0, 200.0), 50, 0, 400);
        assertThat(layout.places()).extracting(LadderLayout.Place::middlePx).containsExactly(150.0, 200.0, 250.0);
    }

    @Test
    void whatHasNoRoomIsCounted() {
        LadderLayout layout = LadderLayout.of(List.of(10.0, 12.0, 14.0, 200.0, 390.0), 100, 0, 400);
        assertThat(layout.leftOut()).isEqualTo(1);
        assertThat(layout.places()).hasSize(4);
        assertThat(layout.places().get(0).strip()).isZero();
        assertThat(layout.places().get(3).strip()).isEqualTo(4);
    }

    @Property(tries = 300)
    void noStripLiesOverAnotherOrOutside(
            @ForAll @Size(min = 1, max = 30) List<@DoubleRange(min = 0, max = 700) Double> dates,
            @ForAll @DoubleRange(min = 5, max = 120) double height) {
        LadderLayout layout = LadderLayout.of(dates.stream().sorted().toList(), height, 0, 700);
        assertThat(layout.places().size() + layout.leftOut()).isEqualTo(dates.size());
        double end = 0;
        for (LadderLayout.Place place : layout.places()) {
            assertThat(place.middlePx() - height / 2).isGreaterThanOrEqualTo(end - 1e-6);
            end = place.middlePx() + height / 2;
        }
        assertThat(end).isCloseTo(Math.min(end, 700), offset(1e-6));
    }
}
