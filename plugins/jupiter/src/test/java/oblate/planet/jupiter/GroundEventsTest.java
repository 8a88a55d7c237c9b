/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.jupiter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.MoonFacts;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.sky.Vec3;
import oblate.sky.event.Contact;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;
import oblate.sky.event.Passage;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.orekit.bodies.CelestialBody;
import org.orekit.bodies.GeodeticPoint;
import org.orekit.bodies.OneAxisEllipsoid;
import org.orekit.data.ClasspathCrawler;
import org.orekit.data.LazyLoadedDataContext;
import org.orekit.frames.Frame;
import org.orekit.time.AbsoluteDate;
import org.orekit.time.DateComponents;
import org.orekit.time.OffsetModel;
import org.orekit.utils.Constants;
import org.orekit.utils.IERSConventions;

/**
 * Moons seen from a place on the ground, against Orekit: its Earth-fixed frame with full precession and nutation, its WGS 84 ellipsoid, its own reader of the
 * ephemeris. A contact is found there without any outline: as the moment at which the straight line from the place to the moon begins or ceases to run into the
 * planet's ellipsoid.
 */
@Tag("truth")
class GroundEventsTest {
    private static final PlanetModel JUPITER = new Jupiter();
    private static final Sky SKY = Sky.bundled();
    private static final double C_KM_S = 299_792.458;

    private static final GroundSite[] SITES = {
        new GroundSite(48.2, 16.3, 170), new GroundSite(-33.9, 18.5, 15), new GroundSite(1.3, -155.4, 4100)
    };

    private static final LazyLoadedDataContext OREKIT = orekit();
    private static final Frame ICRF = OREKIT.getFrames().getICRF();
    private static final OneAxisEllipsoid EARTH = new OneAxisEllipsoid(
            Constants.WGS84_EARTH_EQUATORIAL_RADIUS,
            Constants.WGS84_EARTH_FLATTENING,
            OREKIT.getFrames().getITRF(IERSConventions.IERS_2010, true));

    private static LazyLoadedDataContext orekit() {
        LazyLoadedDataContext context = new LazyLoadedDataContext();
        context.getDataProvidersManager().addProvider(new ClasspathCrawler("oblate/sky/unxp1959p2060.405.gz"));
        // All that matters to 2027: the last leap second so far, of 2016-12-31.
        context.getTimeScales()
                .addUTCTAIOffsetsLoader(() -> List.of(
                        new OffsetModel(new DateComponents(1972, 1, 1), 10),
                        new OffsetModel(new DateComponents(2017, 1, 1), 37)));
        return context;
    }

    /** The line from a place to a moon, in Orekit's hands; times are seconds from a zero. */
    private static final class Line {
        private final AbsoluteDate zero;
        private final double zeroTdbDays;
        private final GeodeticPoint place;
        private final MoonFacts moon;
        private final Vec3 pole;
        private final CelestialBody barycentre = OREKIT.getCelestialBodies().getBody("Jupiter");

        Line(UtcTime time, GroundSite site, MoonFacts moon) {
            zero = new AbsoluteDate(
                    time.iso(6).replace("Z", ""), OREKIT.getTimeScales().getUTC());
            zeroTdbDays = SKY.system(JUPITER).tdbDays(time);
            place = new GeodeticPoint(Math.toRadians(site.latDeg()), Math.toRadians(site.lonEastDeg()), site.heightM());
            this.moon = moon;
            pole = SKY.system(JUPITER).pole(zeroTdbDays);
        }

        private static Vec3 ours(Vector3D m) {
            return new Vec3(m.getX() / 1000, m.getY() / 1000, m.getZ() / 1000);
        }

        private Vec3 viewer(double s) {
            AbsoluteDate date = zero.shiftedBy(s);
            return ours(
                    EARTH.getBodyFrame().getStaticTransformTo(ICRF, date).transformPosition(EARTH.transform(place)));
        }

        private Vec3 centre(double s) {
            double day = zeroTdbDays + s / 86_400;
            Vec3 at = ours(barycentre.getPosition(zero.shiftedBy(s), ICRF));
            for (MoonFacts each : JUPITER.moons()) {
                at = at.plus(-each.massShare(), each.motion().fromPlanetKm(day));
            }
            return at;
        }

        private Vec3 moon(double s) {
            return centre(s).plus(moon.motion().fromPlanetKm(zeroTdbDays + s / 86_400));
        }

        /** Place to planet and place to moon (km), each where its light left it. */
        private Vec3[] ways(double s) {
            Vec3 viewer = viewer(s);
            Vec3 toCentre = centre(s).minus(viewer);
            Vec3 toMoon = moon(s).minus(viewer);
            for (int i = 0; i < 3; i++) {
                toCentre = centre(s - toCentre.norm() / C_KM_S).minus(viewer);
                toMoon = moon(s - toMoon.norm() / C_KM_S).minus(viewer);
            }
            return new Vec3[] {toCentre, toMoon};
        }

        /** Positive when the line runs into the ellipsoid: the discriminant of where it meets it, with the polar axis stretched to a sphere. */
        double meets(double s) {
            Vec3[] ways = ways(s);
            Vec3 from = stretched(ways[0].times(-1));
            Vec3 along = stretched(ways[1].unit());
            double radius = JUPITER.globe().figure().equatorialRadiusKm();
            double half = from.dot(along);
            return half * half / along.dot(along) - from.dot(from) + radius * radius;
        }

        private Vec3 stretched(Vec3 v) {
            double along = v.dot(pole);
            return v.plus(along / JUPITER.globe().figure().polarRatio() - along, pole);
        }

        /** Where the discriminant changes its sign within some seconds of the zero. */
        double rootS(double reachS) {
            DoubleUnaryOperator f = this::meets;
            double a = -reachS;
            double b = reachS;
            boolean sign = f.applyAsDouble(a) > 0;
            assertThat(f.applyAsDouble(b) > 0)
                    .as("a contact within %f s", reachS)
                    .isNotEqualTo(sign);
            while (b - a > 1e-3) {
                double middle = (a + b) / 2;
                if (f.applyAsDouble(middle) > 0 == sign) {
                    a = middle;
                } else {
                    b = middle;
                }
            }
            return (a + b) / 2;
        }
    }

    private static EventSearch span() {
        return EventSearch.between(UtcTime.parse("2027-02-01T00:00:00Z"), UtcTime.parse("2027-02-19T00:00:00Z"))
                .ofKinds(EnumSet.of(EventKind.TRANSIT, EventKind.OCCULTATION));
    }

    /** 1 ms is what the bisection resolves, and 1 ms what 50 m of Orekit's reading of time within a record do. And some differ by two seconds from the centre's. */
    @Test
    void contactsAreThoseOfAStraightLineFromThePlace() {
        Map<String, Double> most = new HashMap<>();
        List<Passage> central = MoonEvents.of(SKY, JUPITER).passages(span());
        for (GroundSite site : SITES) {
            List<Passage> passages =
                    MoonEvents.of(GroundSky.over(SKY, site), JUPITER).passages(span());
            assertThat(passages).hasSameSizeAs(central).hasSizeGreaterThan(20);
            for (int i = 0; i < passages.size(); i++) {
                Passage p = passages.get(i);
                for (ContactKind which : new ContactKind[] {ContactKind.INGRESS_CENTRE, ContactKind.EGRESS_CENTRE}) {
                    Contact contact = p.contact(which).orElseThrow();
                    assertThat(new Line(contact.time(), site, p.moon()).rootS(20))
                            .as("%s %s of %s, %s", which, p.kind(), p.moon().id(), site)
                            .isCloseTo(0, within(0.003));
                    double shift = contact.time()
                            .clockSecondsSince(
                                    central.get(i).contact(which).orElseThrow().time());
                    most.merge(p.moon().id(), Math.abs(shift), Math::max);
                }
            }
        }
        // The geometry alone: Earth's radius over the planet's distance (4.34 au near that opposition), times the
        // moon's from the planet over its speed, a little
        // more where the limb is crossed aslant. None of the three places was on the Earth's very edge.
        assertThat(most.get("io")).isBetween(0.15, 0.26);
        assertThat(most.get("europa")).isBetween(0.25, 0.55);
        assertThat(most.get("ganymede")).isBetween(0.5, 1.05);
        assertThat(most.get("callisto")).isBetween(1.1, 2.6);
    }

    /** Offsets across the sky, from the two lines alone, to 2 km at the planet. */
    @Test
    void placesOfMoonsAreThoseOfTheTwoLines() {
        UtcTime time = UtcTime.parse("2027-02-05T21:37:12Z");
        for (GroundSite site : SITES) {
            List<MoonPlace> seen = GroundSky.over(SKY, site).moons(JUPITER, time);
            List<MoonPlace> central = SKY.moons(JUPITER, time);
            for (int i = 0; i < seen.size(); i++) {
                MoonPlace moon = seen.get(i);
                Vec3[] ways = new Line(time, site, moon.moon()).ways(0);
                Vec3 toward = ways[0].unit();
                Vec3 pole = SKY.system(JUPITER).pole(SKY.system(JUPITER).tdbDays(time));
                Vec3 north = pole.plus(-pole.dot(toward), toward).unit();
                Vec3 west = toward.cross(north);
                double scale = ways[0].norm()
                        / ways[1].dot(toward)
                        / JUPITER.globe().figure().equatorialRadiusKm();
                assertThat(moon.xWestRadii()).isCloseTo(ways[1].dot(west) * scale, within(3e-6));
                assertThat(moon.yNorthRadii()).isCloseTo(ways[1].dot(north) * scale, within(3e-6));
                double shiftKm = Math.hypot(
                                moon.xWestRadii() - central.get(i).xWestRadii(),
                                moon.yNorthRadii() - central.get(i).yNorthRadii())
                        * JUPITER.globe().figure().equatorialRadiusKm();
                double farthestKm = 6378.2
                        * Math.abs(moon.zTowardEarthRadii())
                        * JUPITER.globe().figure().equatorialRadiusKm()
                        / ways[0].norm();
                assertThat(shiftKm).isLessThan(farthestKm * 1.002 + 0.01);
            }
        }
    }
}
