/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.Optional;
import oblate.sky.PlanetSystem;
import oblate.sky.Vec3;

/**
 * Which part of the globe lies on a line from one viewer past a moon's centre, and whether another body stands above that part's horizon.
 *
 * @param system the planet
 * @param pole unit vector to its pole
 */
record GlobeSide(PlanetSystem system, Vec3 pole) {

    /** The point of the globe (km from its centre) under the moon's centre on the viewer's side; empty off the outline. */
    Optional<Vec3> under(Aspect aspect) {
        double radiusKm = system.planet().globe().figure().equatorialRadiusKm();
        Vec3 inPlane = aspect.west().times(aspect.x() * radiusKm).plus(aspect.y() * radiusKm, aspect.north());
        Vec3 from = inPlane.plus(-10 * radiusKm, aspect.toward());
        return system.firstPointKm(from, aspect.toward(), pole);
    }

    /** The point of the outline (km from the globe's centre) nearest the moon's centre. */
    Vec3 limb(Aspect aspect) {
        double radiusKm = system.planet().globe().figure().equatorialRadiusKm();
        double[] foot = aspect.outline().foot(aspect.x(), aspect.y());
        return aspect.west().times(foot[0] * radiusKm).plus(foot[1] * radiusKm, aspect.north());
    }

    /** Cosine of the angle from the zenith of a point (km from the centre) at which a direction from there stands. */
    double height(Vec3 pointKm, Vec3 direction) {
        return system.normal(pointKm, pole).unit().dot(direction.unit());
    }
}
