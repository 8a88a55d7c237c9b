/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.orekit.bodies.GeodeticPoint;
import org.orekit.bodies.OneAxisEllipsoid;
import org.orekit.data.LazyLoadedDataContext;
import org.orekit.frames.Frame;
import org.orekit.time.AbsoluteDate;
import org.orekit.time.DateComponents;
import org.orekit.time.OffsetModel;
import org.orekit.time.TimeScalarFunction;
import org.orekit.time.TimeScale;
import org.orekit.time.TimeScales;
import org.orekit.utils.Constants;
import org.orekit.utils.IERSConventions;

/**
 * The sky over one place: where a planet and the Sun stand at an instant. Immutable and safe for many threads.
 *
 * <p>Sidereal time and the ellipsoid are Orekit's, precession and nutation those of {@link EarthAxis}: Orekit's own chain of Earth frames, against
 * which this is tested, costs half a second to set up and milliseconds at a date far from the last one. Polar motion (0.5 arcsec) is left out.
 */
public final class GroundSky {
    private final Sky sky;
    private final TimeScale tt;
    private final TimeScalarFunction meanSiderealRad;
    private final Vec3 placeKm;
    private final Vec3 zenith;
    private final Vec3 north;
    private final Vec3 east;
    private final Air air;

    private GroundSky(Sky sky, TimeScales scales, GroundSite site) {
        this.sky = sky;
        tt = scales.getTT();
        meanSiderealRad =
                IERSConventions.IERS_2010.getGMSTFunction(scales.getUT1(IERSConventions.IERS_2010, true), scales);
        // The frame is not asked where it stands: everything here stays on Earth-fixed axes.
        OneAxisEllipsoid earth = new OneAxisEllipsoid(
                Constants.WGS84_EARTH_EQUATORIAL_RADIUS, Constants.WGS84_EARTH_FLATTENING, Frame.getRoot());
        GeodeticPoint point =
                new GeodeticPoint(Math.toRadians(site.latDeg()), Math.toRadians(site.lonEastDeg()), site.heightM());
        placeKm = ours(earth.transform(point)).times(1e-3);
        zenith = ours(point.getZenith());
        north = ours(point.getNorth());
        east = ours(point.getEast());
        air = Air.standard(site.heightM());
    }

    private static Vec3 ours(Vector3D v) {
        return new Vec3(v.getX(), v.getY(), v.getZ());
    }

    /** Over a place, in standard air. */
    public static GroundSky over(Sky sky, GroundSite site) {
        List<OffsetModel> offsets = new ArrayList<>();
        sky.leapSeconds()
                .wholeSteps()
                .forEach((day, seconds) -> offsets.add(
                        new OffsetModel(new DateComponents(DateComponents.JAVA_EPOCH, Math.toIntExact(day)), seconds)));
        LazyLoadedDataContext context = new LazyLoadedDataContext();
        context.getTimeScales().addUTCTAIOffsetsLoader(() -> offsets);
        return new GroundSky(sky, context.getTimeScales(), site);
    }

    /**
     * Where a planet stands.
     *
     * @throws oblate.base.ProblemException {@link SkyProblem#OUTSIDE_EPHEMERIS} outside the ephemeris' span
     */
    public GroundView view(PlanetModel planet, UtcTime time) {
        Sighting seen = sky.sighting(planet, time);
        EarthView earth = seen.earth();
        Turn toGround = toGround(earth);
        Vec3 direction = toGround.apply(earth.apparent(seen.toPlanetKm()));
        Vec3 fromPlace =
                direction.times(seen.toPlanetKm().norm()).minus(placeKm).unit();
        double azimuth = Math.toDegrees(Math.atan2(fromPlace.dot(east), fromPlace.dot(north)));
        // Earth-fixed axes share their pole with the equator of date, so the angle is the same on both.
        double zenithPa = Angles.positionAngleDeg(direction, zenith);
        return new GroundView(
                altitudeDeg(fromPlace),
                Angles.wrapDeg(azimuth),
                Math.IEEEremainder(zenithPa, 360),
                sunAltitudeDeg(earth, toGround),
                air);
    }

    /**
     * Altitude of the Sun's centre (deg), without refraction.
     *
     * @throws oblate.base.ProblemException {@link SkyProblem#OUTSIDE_EPHEMERIS} outside the ephemeris' span
     */
    public double sunAltitudeDeg(UtcTime time) {
        EarthView earth = sky.earthView("Sun", time);
        return sunAltitudeDeg(earth, toGround(earth));
    }

    private double sunAltitudeDeg(EarthView earth, Turn toGround) {
        Vec3 direction = toGround.apply(earth.apparentSun());
        return altitudeDeg(
                direction.times(earth.toSunKm().norm()).minus(placeKm).unit());
    }

    private double altitudeDeg(Vec3 fromPlace) {
        return Math.toDegrees(Math.atan2(fromPlace.dot(zenith), Math.hypot(fromPlace.dot(east), fromPlace.dot(north))));
    }

    /** From the true equator and equinox of date to Earth-fixed axes: a turn by apparent sidereal time. */
    private Turn toGround(EarthView earth) {
        double ttDays = earth.moment().ttDays();
        AbsoluteDate date = new AbsoluteDate(DateComponents.J2000_EPOCH, tt).shiftedBy(ttDays * 86400 + 43200);
        return Turn.NONE.thenZ(meanSiderealRad.value(date) + sky.equationOfEquinoxesRad(ttDays));
    }
}
