/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
public final class GroundSky implements Standpoint {
    /** IERS Conventions (2010), table 1.1: 7.292115e-5 rad/s. */
    private static final double EARTH_SPIN_RAD_PER_DAY = 7.292115e-5 * 86400;

    private final Sky sky;
    private final TimeScale tt;
    private final TimeScalarFunction meanSiderealRad;
    private final Vec3 placeKm;
    private final Vec3 zenith;
    private final Vec3 north;
    private final Vec3 east;
    private final Air air;
    private final GroundSite site;
    private final double spinC;

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
        this.site = site;
        spinC = Math.hypot(placeKm.x(), placeKm.y()) * EARTH_SPIN_RAD_PER_DAY / Starlight.C_KM_PER_DAY;
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

    /** The sky from the Earth's centre. */
    public Sky sky() {
        return sky;
    }

    /** The place. */
    public GroundSite site() {
        return site;
    }

    /**
     * Where a planet stands.
     *
     * @throws oblate.base.ProblemException {@link SkyProblem#OUTSIDE_EPHEMERIS} outside the ephemeris' span
     */
    public GroundView view(PlanetModel planet, UtcTime time) {
        Sighting seen = sky.sighting(planet, time);
        EarthView earth = seen.earth();
        double siderealRad = siderealRad(earth);
        Turn toGround = Turn.NONE.thenZ(siderealRad);
        Vec3 way = fromPlaceKm(toGround.apply(earth.apparent(seen.toPlanetKm())), seen.toPlanetKm());
        Vec3 direction = turningEarth(way.unit());
        Vec3 sun = sunFromPlace(earth, toGround);
        double azimuth = Math.toDegrees(Math.atan2(direction.dot(east), direction.dot(north)));
        // Earth-fixed axes share their pole with the equator of date, so the angle is the same on both.
        double zenithPa = Angles.positionAngleDeg(direction, zenith);
        return new GroundView(
                time,
                Angles.wrapDeg(direction.lonDeg() + Math.toDegrees(siderealRad)),
                direction.latDeg(),
                Math.IEEEremainder(site.lonEastDeg() - direction.lonDeg(), 360),
                way.norm() / Starlight.AU_KM,
                altitudeDeg(direction),
                Angles.wrapDeg(azimuth),
                Math.IEEEremainder(zenithPa, 360),
                altitudeDeg(sun),
                Math.toDegrees(direction.angleRad(sun)),
                air);
    }

    /** The planet's moons and their shadows from the place; light times, too, are those to the place. */
    @Override
    public List<MoonPlace> moons(PlanetModel planet, UtcTime time) {
        return sky.moons(planet, time, Optional.of(this::fromCentreKm));
    }

    @Override
    public PlanetSystem system(PlanetModel planet) {
        return sky.system(planet, Optional.of(this::fromCentreKm));
    }

    /** From the Earth's centre to the place (km, ICRF axes). UT1 is taken for UTC: up to 0.4 km. */
    private Vec3 fromCentreKm(double ttDays) {
        return sky.toDate(ttDays).thenZ(siderealRad(ttDays)).undo(placeKm);
    }

    /**
     * Altitude of the Sun's centre (deg), without refraction.
     *
     * @throws oblate.base.ProblemException {@link SkyProblem#OUTSIDE_EPHEMERIS} outside the ephemeris' span
     */
    public double sunAltitudeDeg(UtcTime time) {
        return altitudeDeg(sunDirection(time));
    }

    /** Direction of the Sun from the place, on Earth-fixed axes (unit vector). */
    Vec3 sunDirection(UtcTime time) {
        EarthView earth = sky.earthView("Sun", time);
        return sunFromPlace(earth, Turn.NONE.thenZ(siderealRad(earth)));
    }

    /** Direction of a planet from the place, on Earth-fixed axes (unit vector). */
    Vec3 direction(PlanetModel planet, UtcTime time) {
        Sighting seen = sky.sighting(planet, time);
        Turn toGround = Turn.NONE.thenZ(siderealRad(seen.earth()));
        return turningEarth(fromPlaceKm(toGround.apply(seen.earth().apparent(seen.toPlanetKm())), seen.toPlanetKm())
                .unit());
    }

    private Vec3 sunFromPlace(EarthView earth, Turn toGround) {
        return turningEarth(fromPlaceKm(toGround.apply(earth.apparentSun()), earth.toSunKm())
                .unit());
    }

    private Vec3 fromPlaceKm(Vec3 direction, Vec3 fromCentreKm) {
        return direction.times(fromCentreKm.norm()).minus(placeKm);
    }

    /** Aberration by the speed with which the turning Earth carries the place eastward, 0.3 arcsec at most. */
    private Vec3 turningEarth(Vec3 direction) {
        return direction.plus(spinC, east).unit();
    }

    /** Altitude (deg) of a direction on Earth-fixed axes. */
    double altitudeDeg(Vec3 fromPlace) {
        return Math.toDegrees(Math.atan2(fromPlace.dot(zenith), Math.hypot(fromPlace.dot(east), fromPlace.dot(north))));
    }

    /** Sine of the altitude of a direction on Earth-fixed axes. */
    double altitudeSine(Vec3 fromPlace) {
        return fromPlace.dot(zenith);
    }

    /** Azimuth from north through east (deg, 0…360) of a direction on Earth-fixed axes. */
    double azimuthDeg(Vec3 fromPlace) {
        return Angles.wrapDeg(Math.toDegrees(Math.atan2(fromPlace.dot(east), fromPlace.dot(north))));
    }

    /** Angle west of the meridian (deg, −180…180) of a direction on Earth-fixed axes. */
    double hourAngleDeg(Vec3 fromPlace) {
        return Math.IEEEremainder(site.lonEastDeg() - fromPlace.lonDeg(), 360);
    }

    /** Apparent sidereal time at longitude 0 (rad): turns the true equator and equinox of date to Earth-fixed axes. */
    private double siderealRad(EarthView earth) {
        return siderealRad(earth.moment().ttDays());
    }

    private double siderealRad(double ttDays) {
        AbsoluteDate date = new AbsoluteDate(DateComponents.J2000_EPOCH, tt).shiftedBy(ttDays * 86400 + 43200);
        return meanSiderealRad.value(date) + sky.equationOfEquinoxesRad(ttDays);
    }
}
