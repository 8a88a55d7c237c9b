/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Places of a planet's moons and their shadows at the moment of one sighting of the planet. */
final class MoonWatch {
    /** Steps of the light-time loops for a shadow; each shrinks the error by v/c. */
    private static final int STEPS = 3;

    private final PlanetModel planet;
    private final Spheroid figure;
    private final Sighting seen;
    private final Ephemeris ephemeris;
    private final Orientation orientation;
    private final SkyPlane plane;
    private final double outlineRatio;
    private final Vec3 planetApparent;

    MoonWatch(PlanetModel planet, Sighting seen, Ephemeris ephemeris) {
        this.planet = planet;
        this.figure = planet.globe().figure();
        this.seen = seen;
        this.ephemeris = ephemeris;
        orientation = Orientation.at(planet.globe(), seen.emittedTdbDays());
        plane = SkyPlane.of(seen.toPlanetKm(), orientation.pole(), figure.equatorialRadiusKm());
        outlineRatio = figure.apparentAxisRatio(
                orientation.latCentricDeg(seen.toPlanetKm().times(-1)));
        planetApparent = seen.earth().apparent(seen.toPlanetKm());
    }

    List<MoonPlace> places() {
        List<MoonPlace> places = new ArrayList<>();
        for (MoonFacts moon : planet.moons()) {
            places.add(place(moon));
        }
        return List.copyOf(places);
    }

    private MoonPlace place(MoonFacts moon) {
        double t = seen.earth().moment().tdbDays();
        Vec3 earth = seen.earth().placeKm();
        Vec3 toMoon = LightPath.seen(earth, t, when -> moonKm(moon, when));
        double emitted = t - toMoon.norm() / Starlight.C_KM_PER_DAY;
        Vec3 inPlane = plane.place(toMoon);
        boolean onOutline = Math.hypot(inPlane.x(), inPlane.y() / outlineRatio) < 1;
        double[] offset = offsetArcsec(toMoon);
        return new MoonPlace(
                moon,
                offset[0],
                offset[1],
                inPlane.x(),
                inPlane.y(),
                inPlane.z(),
                toMoon.norm() / Starlight.AU_KM,
                Math.asin(figure.equatorialRadiusKm() / seen.toPlanetKm().norm()) * Angles.ARCSEC_PER_RAD,
                2 * Math.asin(moon.radiusKm() / toMoon.norm()) * Angles.ARCSEC_PER_RAD,
                onOutline && inPlane.z() > 0,
                onOutline && inPlane.z() < 0,
                isEclipsed(moon, emitted),
                shadow(moon));
    }

    private Vec3 moonKm(MoonFacts moon, double tdbDays) {
        return seen.path().centreKm(tdbDays).plus(moon.motion().fromPlanetKm(tdbDays));
    }

    /** Apparent offset from the planet (arcsec): right ascension on the sky, declination. */
    private double[] offsetArcsec(Vec3 fromEarthKm) {
        Vec3 apparent = seen.earth().apparent(fromEarthKm);
        double dRa = Math.IEEEremainder(apparent.lonDeg() - planetApparent.lonDeg(), 360);
        double dDec = apparent.latDeg() - planetApparent.latDeg();
        return new double[] {dRa * 3600 * Math.cos(Math.toRadians(planetApparent.latDeg())), dDec * 3600};
    }

    /** Whether light that left the Sun's centre for the moon ran into the planet on its way. */
    private boolean isEclipsed(MoonFacts moon, double tdbDays) {
        Vec3 moonPlace = moonKm(moon, tdbDays);
        Vec3 fromPlanet = moon.motion().fromPlanetKm(tdbDays);
        double passedPlanet = tdbDays - fromPlanet.norm() / Starlight.C_KM_PER_DAY;
        Vec3 toSun = LightPath.seen(moonPlace, tdbDays, when -> ephemeris.bodyKm(Ephemeris.SUN, when));
        Vec3 from = moonPlace.minus(seen.path().centreKm(passedPlanet));
        return GlobeHit.first(from, toSun.unit(), orientation.pole(), figure).isPresent();
    }

    /** Light from the Sun's centre past the moon's centre to the globe and on to the Earth, each leg with its own light time. */
    private Optional<ShadowPlace> shadow(MoonFacts moon) {
        double onGlobe = seen.emittedTdbDays();
        double legDays = moon.motion().fromPlanetKm(onGlobe).norm() / Starlight.C_KM_PER_DAY;
        Vec3 point = new Vec3(0, 0, 0);
        for (int i = 0; i < STEPS; i++) {
            Vec3 centre = seen.path().centreKm(onGlobe);
            double atMoon = onGlobe - legDays;
            Vec3 moonPlace = moonKm(moon, atMoon);
            Vec3 toSun = LightPath.seen(moonPlace, atMoon, when -> ephemeris.bodyKm(Ephemeris.SUN, when));
            Vec3 from = moonPlace.minus(centre);
            Optional<Vec3> hit = GlobeHit.first(from, toSun.unit().times(-1), orientation.pole(), figure);
            if (hit.isEmpty()) {
                return Optional.empty();
            }
            point = hit.get();
            legDays = point.minus(from).norm() / Starlight.C_KM_PER_DAY;
            double toEarth = centre.plus(point).minus(seen.earth().placeKm()).norm();
            onGlobe = seen.earth().moment().tdbDays() - toEarth / Starlight.C_KM_PER_DAY;
        }
        Vec3 fromEarth =
                seen.path().centreKm(onGlobe).plus(point).minus(seen.earth().placeKm());
        if (GlobeHit.normal(point, orientation.pole(), figure).dot(fromEarth) >= 0) {
            return Optional.empty();
        }
        // One rotation for the whole disc, as a picture's grid has it; the 0.2 s of light time within the globe are left out.
        SubPoint at = orientation.under(point);
        Vec3 inPlane = plane.place(fromEarth);
        double[] offset = offsetArcsec(fromEarth);
        return Optional.of(
                new ShadowPlace(offset[0], offset[1], inPlane.x(), inPlane.y(), at.iauLonDeg(), at.latGraphicDeg()));
    }
}
