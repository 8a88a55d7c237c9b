/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class PoolTest {
    private static Pool.Value value(double s, double own, Map<String, Double> shared) {
        return new Pool.Value(s, new ErrorParts(own, shared));
    }

    /** What all share stays, however many there are; what each has of its own falls with the root of their number. */
    @Test
    void aSharedClockIsNotAveragedAway() {
        List<Pool.Value> values = new ArrayList<>();
        for (int i = 0; i < 25; i++) {
            values.add(value(10, 20, Map.of(ErrorParts.CLOCK + "night", 6.0)));
        }
        Pool pool = Pool.of(values);
        assertThat(pool.errors().ownS()).isCloseTo(4, within(1e-9));
        assertThat(pool.errors().partS(ErrorParts.CLOCK)).isCloseTo(6, within(1e-9));
        assertThat(pool.errors().totalS()).isCloseTo(Math.hypot(4, 6), within(1e-9));
    }

    /** A cause that moves two values apart leaves their mean alone. */
    @Test
    void whatMovesValuesApartCancels() {
        Pool pool = Pool.of(List.of(
                value(0, 1, Map.of(ErrorParts.NIGHT_FIT + "n", 5.0)),
                value(0, 1, Map.of(ErrorParts.NIGHT_FIT + "n", -5.0))));
        assertThat(pool.errors().totalS()).isCloseTo(Math.sqrt(0.5), within(1e-9));
    }

    @Test
    void aFalseValueIsNamedAndHardlyMovesTheMean() {
        Random random = new Random(11);
        List<Pool.Value> values = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            values.add(value(10 * random.nextGaussian(), 10, Map.of()));
        }
        double without = Pool.of(values).meanS();
        values.add(value(2000, 10, Map.of()));
        Pool pool = Pool.of(values);
        assertThat(pool.outlying()).containsExactly(9);
        assertThat(pool.meanS()).isCloseTo(without, within(5.0));
        assertThat(pool.errors().totalS()).isGreaterThan(10 / 3.0);
    }

    @Property
    void theMeanLiesAmongItsValuesAndItsErrorIsNoLargerThanTheLargest(
            @ForAll @Size(min = 1, max = 12) List<@DoubleRange(min = -30, max = 30) Double> values) {
        List<Pool.Value> all = values.stream()
                .map(v -> value(v, 15, Map.of(ErrorParts.CLOCK + "n", 3.0)))
                .toList();
        Pool pool = Pool.of(all);
        assertThat(pool.meanS())
                .isBetween(
                        values.stream().min(Double::compare).orElseThrow() - 1e-9,
                        values.stream().max(Double::compare).orElseThrow() + 1e-9);
        assertThat(pool.errors().totalS()).isBetween(3.0, Math.hypot(15, 3) * 3);
    }
}
