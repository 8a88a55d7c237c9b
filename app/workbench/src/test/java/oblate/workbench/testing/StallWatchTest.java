/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.EventQueue;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The watch over the event thread sees what stands still, and where. */
@Tag("window")
class StallWatchTest {
    @Test
    void whatStandsStillIsReportedWithItsPlace() throws Exception {
        StallWatch watch = new StallWatch(Duration.ofMillis(80), Duration.ofSeconds(5));
        watch.start();
        EventQueue.invokeAndWait(StallWatchTest::standStill);
        List<StallWatch.Stall> stalls = watch.stop();
        assertThat(stalls).isNotEmpty().anySatisfy(s -> {
            assertThat(s.ms()).isGreaterThan(80);
            assertThat(s.toString()).contains("StallWatchTest.standStill");
        });
        // Once it has ended, the event thread goes on without it.
        EventQueue.invokeAndWait(StallWatchTest::standStill);
        assertThat(stalls).hasSameSizeAs(watch.stalls());
    }

    private static void standStill() {
        try {
            Thread.sleep(250);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
