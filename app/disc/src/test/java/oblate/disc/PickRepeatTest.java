/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PickRepeatTest {
    /** Pairs drawn with a known error give it back within its own error, nineteen times in twenty; slips to another spot are left out. */
    @Test
    void theErrorComesBackAndItsErrorIsHonest() {
        Random random = new Random(4);
        int inside = 0;
        for (int trial = 0; trial < 200; trial++) {
            double sigma = 0.3 + random.nextDouble();
            List<PickRepeat.Pair> pairs = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                double x = 400 * random.nextDouble();
                double y = 400 * random.nextDouble();
                pairs.add(new PickRepeat.Pair(
                        new PixelPoint(x + sigma * random.nextGaussian(), y + sigma * random.nextGaussian()),
                        new PixelPoint(x + sigma * random.nextGaussian(), y + sigma * random.nextGaussian())));
            }
            pairs.add(new PickRepeat.Pair(new PixelPoint(10, 10), new PixelPoint(60, 12)));
            PickRepeat repeat = PickRepeat.of(pairs);
            assertThat(repeat.leftOut()).isBetween(1, 2);
            inside += Math.abs(repeat.sigmaPx() - sigma) < 2 * repeat.sigmaOfSigmaPx() ? 1 : 0;
        }
        assertThat(inside).isBetween(180, 200);
    }
}
