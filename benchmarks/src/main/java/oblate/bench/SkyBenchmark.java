/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench;

import java.util.concurrent.TimeUnit;
import oblate.sky.ApparentDisc;
import oblate.sky.DiscWatch;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Apparent discs per second, every quantity of {@link ApparentDisc} worked out. */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
public class SkyBenchmark {

    /** One sky for all threads, as a program has it. */
    @State(Scope.Benchmark)
    public static class Shared {
        final Sky sky = Sky.bundled();

        /** Planet looked at. */
        @Param({"jupiter", "saturn", "mars"})
        public String planet;

        PlanetModel model;

        /** Finds the planet. */
        @Setup
        public void setUp() {
            model = Planets.named(planet);
        }
    }

    /** Each thread's own walk through the instants, and its own watch. */
    @State(Scope.Thread)
    public static class Walk {
        /** Which instants. */
        @Param({"random", "ordered"})
        public String dates;

        Dates times;
        DiscWatch watch;

        /** Lays out the instants. */
        @Setup
        public void setUp(Shared shared) {
            times = Dates.named(dates);
            watch = shared.sky.watch(shared.model);
        }
    }

    /** One call, one record. */
    @Benchmark
    public ApparentDisc singleDisc(Shared shared, Walk walk) {
        return shared.sky.disc(shared.model, walk.times.next());
    }

    /** A batch that keeps a record of each. */
    @Benchmark
    public ApparentDisc batchOfRecords(Walk walk) {
        return walk.watch.look(walk.times.next()).disc();
    }

    /** A batch that reads every figure in place and keeps none. */
    @Benchmark
    public double batchInPlace(Walk walk) {
        DiscWatch d = walk.watch.look(walk.times.next());
        double sum = d.ttMinusUtcS() + d.raApparentDeg() + d.decApparentDeg() + d.distanceAu() + d.lightTimeS();
        sum += d.sunDistanceAu() + d.elongationDeg() + d.diameterEquatorialArcsec() + d.diameterPolarArcsec();
        sum += d.phaseAngleDeg() + d.illuminatedFraction() + d.northPolePaDeg() + d.northPolePaIcrfDeg();
        sum += d.brightLimbPaDeg() + d.subEarthLatCentricDeg() + d.subEarthLatGraphicDeg();
        sum += d.subSolarLatCentricDeg() + d.subSolarLatGraphicDeg();
        for (int i = 0; i < d.planet().globe().systems().size(); i++) {
            sum += d.subEarthLonDeg(i) + d.subSolarLonDeg(i);
        }
        if (d.planet().rings().isPresent()) {
            sum += d.ringOuterSemiMajorArcsec() + d.ringOuterSemiMinorArcsec();
        }
        return sum;
    }
}
