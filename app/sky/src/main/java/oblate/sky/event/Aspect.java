/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import oblate.sky.Vec3;

/**
 * A moon and its planet's outline on one line of sight. Lengths are equatorial radii in the plane through the planet's centre across the line,
 * with perspective.
 *
 * @param x along the planet's equator as seen, to celestial west
 * @param y to the planet's north
 * @param z toward the viewer
 * @param outline the planet's outline
 * @param moonRadius the moon's radius, brought to that plane
 * @param penumbraWidth width of the half-shadow on either side of the shadow's edge, brought to that plane; 0 as seen from the Earth
 * @param centreDay when the light passes the planet's centre (TDB)
 * @param centreKm the planet's centre then
 * @param moonDay when the light passes the moon
 * @param moonKm the moon then
 * @param toward unit vector from the viewer to the planet
 * @param west unit vector of x
 * @param north unit vector of y
 */
record Aspect(
        double x,
        double y,
        double z,
        Outline outline,
        double moonRadius,
        double penumbraWidth,
        double centreDay,
        Vec3 centreKm,
        double moonDay,
        Vec3 moonKm,
        Vec3 toward,
        Vec3 west,
        Vec3 north) {

    /** Distance of the centres. */
    double separation() {
        return Math.hypot(x, y);
    }

    /** Distance of the moon's centre from the outline, negative inside. */
    double fromOutline() {
        return outline.distance(x, y);
    }

    /** Whether the moon's centre is within the outline. */
    boolean inside() {
        return Math.hypot(x, y / outline.axisRatio()) < 1;
    }
}
