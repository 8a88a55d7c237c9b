/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** A sky whose data are read when it is first asked. */
class SkyLaterTest {
    @Test
    void theDataAreReadOnceWhenSomethingIsAsked() {
        AtomicInteger reads = new AtomicInteger();
        Sky sky = Sky.later(() -> {
            reads.incrementAndGet();
            return SkyData.bundled();
        });
        assertThat(reads).hasValue(0);
        assertThat(sky.firstInstant()).isEqualTo(Sky.bundled().firstInstant());
        assertThat(sky.ephemeris().name()).isEqualTo(Sky.bundled().ephemeris().name());
        assertThat(reads).hasValue(1);
    }

    @Test
    void whatReadingThrowsComesOutAndIsTriedAgain() {
        AtomicInteger reads = new AtomicInteger();
        Sky sky = Sky.later(() -> {
            if (reads.incrementAndGet() == 1) {
                throw new IllegalStateException("no data today");
            }
            return SkyData.bundled();
        });
        assertThatThrownBy(sky::firstInstant).hasMessage("no data today");
        assertThat(sky.lastInstant()).isEqualTo(Sky.bundled().lastInstant());
    }
}
