/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.function.DoubleFunction;
import oblate.sky.PlanetSystem;
import oblate.sky.Spheroid;
import oblate.sky.Vec3;

/**
 * The line from a viewer to a planet and one of its moons. The viewer is the Sun's centre, or the Earth: its centre
 * or a place on it. Its clock is the viewer's own: for the Earth the moment the light comes in, for the
 * Sun the moment it leaves. Light touches moon and planet at different moments, each solved by itself.
 */
final class Sightline {
    /** Sun's radius (km), IAU 2015 resolution B3. */
    static final double SUN_RADIUS_KM = 695_700;

    /** Steps of a light-time loop; each shrinks the error by v/c, 1e-4: from hours to 0.1 ms of light time, metres of place. */
    private static final int STEPS = 2;

    private final Clockwork clockwork;
    private final boolean fromSun;
    private final Spheroid figure;

    Sightline(Clockwork clockwork, boolean fromSun) {
        this.clockwork = clockwork;
        this.fromSun = fromSun;
        figure = clockwork.system().planet().globe().figure();
    }

    boolean fromSun() {
        return fromSun;
    }

    Clockwork clockwork() {
        return clockwork;
    }

    /** Where the viewer stands (km) at a moment of its clock. */
    Vec3 viewerKm(double day) {
        return fromSun ? clockwork.sunKm(day) : clockwork.viewerKm(day);
    }

    /**
     * When light on this line passes a body.
     *
     * @param day moment of the viewer's clock
     * @param viewerKm place of the viewer then
     * @param bodyKm the body's place at a moment
     * @param guessDay a first guess
     */
    double passingDay(double day, Vec3 viewerKm, DoubleFunction<Vec3> bodyKm, double guessDay) {
        double sign = fromSun ? 1 : -1;
        double passing = guessDay;
        for (int i = 0; i < STEPS; i++) {
            passing = day + sign * bodyKm.apply(passing).minus(viewerKm).norm() / PlanetSystem.C_KM_PER_DAY;
        }
        return passing;
    }

    /** The viewer's moment whose light passes a body at a moment. */
    double clockDay(double passingDay, Vec3 bodyKm) {
        double sign = fromSun ? -1 : 1;
        double day = passingDay;
        for (int i = 0; i <= STEPS; i++) {
            day = passingDay + sign * viewerKm(day).minus(bodyKm).norm() / PlanetSystem.C_KM_PER_DAY;
        }
        return day;
    }

    /**
     * The moon against the planet.
     *
     * @param moon its number in the planet's list
     * @param day moment of the viewer's clock
     * @param pole unit vector to the planet's pole
     */
    Aspect aspect(int moon, double day, Vec3 pole) {
        Vec3 viewer = viewerKm(day);
        double centreDay = passingDay(day, viewer, clockwork::centreKm, day);
        Vec3 centre = clockwork.centreKm(centreDay);
        double moonDay = passingDay(day, viewer, t -> clockwork.moonKm(moon, t), centreDay);
        Vec3 moonKm = clockwork.moonKm(moon, moonDay);
        Vec3 toCentre = centre.minus(viewer);
        double distance = toCentre.norm();
        Vec3 toward = toCentre.times(1 / distance);
        double tilt = pole.dot(toward);
        Vec3 north = pole.plus(-tilt, toward).times(1 / Math.sqrt(1 - tilt * tilt));
        Vec3 west = toward.cross(north);
        Vec3 toMoon = moonKm.minus(viewer);
        double depth = toMoon.dot(toward);
        double radiusKm = figure.equatorialRadiusKm();
        double scale = distance / depth / radiusKm;
        double z = (distance - depth) / radiusKm;
        double q = figure.polarRatio();
        double axisRatio = Math.sqrt(tilt * tilt + q * q * (1 - tilt * tilt));
        double moonRadiusKm = clockwork.system().planet().moons().get(moon).radiusKm();
        double penumbra = fromSun ? SUN_RADIUS_KM * Math.abs(z) / depth : 0;
        return new Aspect(
                toMoon.dot(west) * scale,
                toMoon.dot(north) * scale,
                z,
                new Outline(axisRatio),
                moonRadiusKm * scale,
                penumbra,
                centreDay,
                centre,
                moonDay,
                moonKm,
                toward,
                west,
                north);
    }
}
