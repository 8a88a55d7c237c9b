/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
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
import org.orekit.bodies.CelestialBody;
import org.orekit.data.ClasspathCrawler;
import org.orekit.data.LazyLoadedDataContext;
import org.orekit.frames.Frame;
import org.orekit.frames.StaticTransform;
import org.orekit.time.AbsoluteDate;
import org.orekit.time.DateComponents;
import org.orekit.time.OffsetModel;
import org.orekit.utils.IERSConventions;

/**
 * The core of the same discs by Orekit's own reader of the same ephemeris and its own frames, used as its guide shows: light time, place on the true equator of
 * date, distances, phase, points under Earth and Sun in one system. It does less than a disc: no aberration, no bending, no moons, one rotation system.
 */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 3, time = 1)
@State(Scope.Thread)
public class OrekitBenchmark {
    private static final double C_M_PER_S = 299792458;

    /** Which instants. */
    @Param({"random", "ordered"})
    public String dates;

    /** Planet looked at. */
    @Param({"jupiter", "saturn", "mars"})
    public String planet;

    private Dates times;
    private LazyLoadedDataContext orekit;
    private CelestialBody body;
    private CelestialBody earth;
    private CelestialBody sun;
    private Frame icrf;
    private Frame gcrf;
    private Frame ofDate;
    private Frame turning;
    private AbsoluteDate epoch;

    /** Loads what Orekit needs. */
    @Setup
    public void setUp() {
        orekit = new LazyLoadedDataContext();
        orekit.getDataProvidersManager().addProvider(new ClasspathCrawler("oblate/sky/unxp1959p2060.405.gz"));
        // Leap seconds are asked for but play no part in the speed.
        orekit.getTimeScales()
                .addUTCTAIOffsetsLoader(() -> List.of(new OffsetModel(new DateComponents(2017, 1, 1), 37)));
        body = orekit.getCelestialBodies().getBody(Character.toUpperCase(planet.charAt(0)) + planet.substring(1));
        earth = orekit.getCelestialBodies().getEarth();
        sun = orekit.getCelestialBodies().getSun();
        icrf = orekit.getFrames().getICRF();
        gcrf = orekit.getFrames().getGCRF();
        ofDate = orekit.getFrames().getTOD(IERSConventions.IERS_2010, true);
        turning = body.getBodyOrientedFrame();
        epoch = new AbsoluteDate(
                DateComponents.JAVA_EPOCH, orekit.getTimeScales().getTT());
        times = Dates.named(dates);
    }

    /** One disc's core; TT stands for the clock, which costs nothing. */
    @Benchmark
    public double orekitDisc() {
        var time = times.next();
        AbsoluteDate now = epoch.shiftedBy(time.epochDay() * 86400.0 + time.secondOfDay());
        Vector3D earthPlace = earth.getPosition(now, icrf);
        AbsoluteDate then = now;
        Vector3D toPlanet = body.getPosition(now, icrf).subtract(earthPlace);
        for (int i = 0; i < 3; i++) {
            then = now.shiftedBy(-toPlanet.getNorm() / C_M_PER_S);
            toPlanet = body.getPosition(then, icrf).subtract(earthPlace);
        }
        Vector3D planetToSun = sun.getPosition(then, icrf).subtract(earthPlace.add(toPlanet));
        Vector3D apparent = gcrf.getStaticTransformTo(ofDate, now).transformVector(toPlanet);
        StaticTransform toGlobe = icrf.getStaticTransformTo(turning, then);
        Vector3D underEarth = toGlobe.transformVector(toPlanet.negate());
        Vector3D underSun = toGlobe.transformVector(planetToSun);
        double elongation = Vector3D.angle(sun.getPosition(now, icrf).subtract(earthPlace), toPlanet);
        double phase = Vector3D.angle(toPlanet.negate(), planetToSun);
        return apparent.getAlpha()
                + apparent.getDelta()
                + toPlanet.getNorm()
                + planetToSun.getNorm()
                + elongation
                + phase
                + underEarth.getAlpha()
                + underEarth.getDelta()
                + underSun.getAlpha()
                + underSun.getDelta();
    }
}
