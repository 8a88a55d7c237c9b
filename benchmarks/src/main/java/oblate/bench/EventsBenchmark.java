/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench;

import java.util.concurrent.TimeUnit;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A year of events of the Galilean moons. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
@State(Scope.Benchmark)
public class EventsBenchmark {
    private static final EventSearch YEAR =
            EventSearch.between(UtcTime.parse("2026-01-01T00:00:00Z"), UtcTime.parse("2027-01-01T00:00:00Z"));

    private final MoonEvents events = MoonEvents.of(Sky.bundled(), Planets.named("jupiter"));

    /** Transits, shadow transits, occultations and eclipses, every contact. */
    @Benchmark
    public int passagesOfAYear() {
        return events.passages(YEAR).size();
    }

    /** Occultations and eclipses among the moons themselves. */
    @Benchmark
    public int mutualEventsOfAYear() {
        return events.mutual(YEAR).size();
    }
}
