/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class GeometryTest {
    private static final Spheroid FLAT = new Spheroid(60268, 54364, "invented");

    @Property
    void graphicAndCentricLatitudesAreInverse(
            @ForAll @DoubleRange(min = -90, max = 90) double lat,
            @ForAll @DoubleRange(min = 0.3, max = 1) double ratio) {
        Spheroid figure = new Spheroid(1000, 1000 * ratio, "invented");
        assertThat(figure.graphicFromCentricDeg(figure.centricFromGraphicDeg(lat)))
                .isCloseTo(lat, within(1e-9));
        assertThat(Math.abs(figure.graphicFromCentricDeg(lat))).isGreaterThanOrEqualTo(Math.abs(lat) - 1e-9);
    }

    @Property
    void axisDistanceIsThatOfTheSurfacePoint(@ForAll @DoubleRange(min = -89, max = 89) double graphicDeg) {
        double r = FLAT.axisDistanceKm(graphicDeg);
        double centric = Math.toRadians(FLAT.centricFromGraphicDeg(graphicDeg));
        double z = r * Math.tan(centric);
        assertThat(Math.pow(r / 60268, 2) + Math.pow(z / 54364, 2)).isCloseTo(1, within(1e-12));
    }

    @Property
    void wrappedAngleIsInRangeAndTheSame(@ForAll @DoubleRange(min = -1e7, max = 1e7) double deg) {
        double wrapped = Angles.wrapDeg(deg);
        assertThat(wrapped).isGreaterThanOrEqualTo(0).isLessThan(360);
        assertThat(Math.IEEEremainder(wrapped - deg, 360)).isCloseTo(0, within(1e-8));
    }

    @Test
    void tinyNegativeAngleIsNoFullTurn() {
        assertThat(Angles.wrapDeg(-1e-20)).isZero();
        assertThat(Angles.wrapDeg(360)).isZero();
        assertThat(Angles.wrapDeg(-0.0)).isZero();
    }

    @Property
    void lineMeetsTheEllipsoidOnItsNearSide(
            @ForAll @DoubleRange(min = 0, max = 6.28) double lon,
            @ForAll @DoubleRange(min = -1.5, max = 1.5) double lat,
            @ForAll @DoubleRange(min = -70000, max = 70000) double aside,
            @ForAll @DoubleRange(min = -70000, max = 70000) double above) {
        Vec3 pole = Vec3.toward(1, 1.2);
        Vec3 along = Vec3.toward(lon, lat);
        // Along the pole itself there is no one direction across.
        Assume.that(along.cross(pole).norm() > 1e-6);
        Vec3 across = along.cross(pole).unit();
        Vec3 from = along.times(-1e6).plus(aside, across).plus(above, across.cross(along));
        Optional<Vec3> hit = GlobeHit.first(from, along, pole, FLAT);
        if (hit.isPresent()) {
            Vec3 p = hit.get();
            double z = p.dot(pole);
            double r = p.plus(-z, pole).norm();
            assertThat(Math.pow(r / 60268, 2) + Math.pow(z / 54364, 2)).isCloseTo(1, within(1e-9));
            assertThat(GlobeHit.normal(p, pole, FLAT).dot(along)).isNegative();
            assertThat(p.minus(from).cross(along).norm()).isLessThan(1e-3);
        } else {
            assertThat(Math.hypot(aside, above)).isGreaterThan(54363);
        }
        assertThat(GlobeHit.first(from, along.times(-1), pole, FLAT)).isEmpty();
    }

    @Property
    void longitudesAreInRangeAndFollowTheSense(
            @ForAll @DoubleRange(min = -14600, max = 21900) double tdbDays,
            @ForAll @DoubleRange(min = 0, max = 6.28) double lon,
            @ForAll @DoubleRange(min = -1.5, max = 1.5) double lat) {
        Vec3 direction = Vec3.toward(lon, lat);
        double west = longitude(LongitudeSense.WEST, tdbDays, direction);
        double east = longitude(LongitudeSense.EAST, tdbDays, direction);
        assertThat(west).isGreaterThanOrEqualTo(0).isLessThan(360);
        assertThat(Math.IEEEremainder(west + east, 360)).isCloseTo(0, within(1e-8));
    }

    private static double longitude(LongitudeSense sense, double tdbDays, Vec3 direction) {
        RotationElements elements = new RotationElements(
                40, 0.1, 60, -0.2, List.of(PeriodicTerm.sine(0.3, 20, 700)), List.of(), List.of(), "invented");
        Globe globe = new Globe(
                5, FLAT, elements, List.of(new RotationSystem("iau", "IAU", 12, 870.5, "invented")), "iau", sense);
        return Orientation.at(globe, tdbDays).under(direction).iauLonDeg();
    }

    @Test
    void positionAnglesCountFromNorthThroughEast() {
        Vec3 place = Vec3.toward(Math.toRadians(40), Math.toRadians(20));
        assertThat(Angles.positionAngleDeg(place, new Vec3(0, 0, 1))).isCloseTo(0, within(1e-9));
        assertThat(Angles.positionAngleDeg(place, new Vec3(0, 0, -1))).isCloseTo(180, within(1e-9));
        assertThat(Angles.positionAngleDeg(place, Vec3.toward(Math.toRadians(41), Math.toRadians(20))))
                .isBetween(89.0, 91.0);
    }

    /** Textbook sizes: aberration by 20.5 arcsec at the Earth's mean speed, bending by 1.75 arcsec at the Sun's limb. */
    @Test
    @Tag("truth")
    void lightIsTurnedByTheTextbookAmounts() {
        WorkVec3 ahead = new WorkVec3().set(29.7847 / 299792.458, 0, 0);
        WorkVec3 across = new WorkVec3().set(0, 1, 0);
        WorkVec3 seen = new WorkVec3().set(across);
        Starlight.aberrate(seen, ahead, 1.496e8);
        assertThat(seen.angleRad(across) * Angles.ARCSEC_PER_RAD).isCloseTo(20.4955, within(0.005));
        WorkVec3 toSun = new WorkVec3().set(Starlight.AU_KM, 0, 0);
        double limb = Math.asin(695700 / Starlight.AU_KM);
        WorkVec3 grazing = new WorkVec3().set(Math.cos(limb), Math.sin(limb), 0);
        WorkVec3 bent = new WorkVec3().set(grazing).scale(1e15);
        Starlight.bend(bent, toSun, new WorkVec3());
        assertThat(bent.angleRad(grazing) * Angles.ARCSEC_PER_RAD).isCloseTo(1.75, within(0.01));
        assertThat(bent.y).isGreaterThan(grazing.y);
    }

    @Test
    void lightTimeSatisfiesItsOwnEquation() {
        Vec3 here = new Vec3(0, 0, 0);
        Vec3 seen = LightPath.seen(here, 100, t -> new Vec3(1e9 + 3e6 * t, 2e8, 0));
        double emitted = 100 - seen.norm() / Starlight.C_KM_PER_DAY;
        assertThat(seen.minus(new Vec3(1e9 + 3e6 * emitted, 2e8, 0)).norm()).isLessThan(1e-4);
    }
}
