/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.List;
import java.util.Optional;
import oblate.sky.ApparentDisc;
import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import oblate.sky.RingAspect;
import oblate.sky.Rings;
import oblate.sky.RotationElements;
import oblate.sky.RotationSystem;
import oblate.sky.Spheroid;
import oblate.sky.SubPoint;
import oblate.sky.UtcTime;

/** Apparent discs built by hand, so that tests of geometry need no ephemeris. */
final class TestDiscs {

    private TestDiscs() {}

    /** A planet with one or two rotation systems; the first is the IAU's. */
    record Planet(String id, Globe globe, Optional<Rings> rings) implements PlanetModel {
        @Override
        public String label() {
            return id;
        }
    }

    static Planet planet(String id, double polarRatio, LongitudeSense sense, double degPerDay) {
        List<RotationSystem> systems = List.of(
                new RotationSystem("iau", "IAU", 0, degPerDay, "test"),
                new RotationSystem("2", "System II", 0, degPerDay - 0.266, "test"));
        RotationElements pole = new RotationElements(0, 0, 90, 0, List.of(), List.of(), List.of(), "test");
        Spheroid figure = new Spheroid(70000, 70000 * polarRatio, "test");
        Optional<Rings> rings =
                id.equals("saturn") ? Optional.of(new Rings(70000 * 1.526, 70000 * 2.269, "test")) : Optional.empty();
        return new Planet(id, new Globe(5, figure, pole, systems, "iau", sense), rings);
    }

    static Planet jupiter() {
        return planet("jupiter", 0.93513, LongitudeSense.WEST, 870.536);
    }

    static ApparentDisc disc(PlanetModel planet, double cm, double subLatCentric, double sunLon, double sunLatCentric) {
        Spheroid figure = planet.globe().figure();
        SubPoint earth = new SubPoint(
                planet.globe(),
                List.of(cm, (cm + 40) % 360),
                subLatCentric,
                figure.graphicFromCentricDeg(subLatCentric));
        SubPoint sun = new SubPoint(
                planet.globe(),
                List.of(sunLon, (sunLon + 40) % 360),
                sunLatCentric,
                figure.graphicFromCentricDeg(sunLatCentric));
        double phase = Math.toDegrees(
                Math.acos(Math.sin(Math.toRadians(subLatCentric)) * Math.sin(Math.toRadians(sunLatCentric))
                        + Math.cos(Math.toRadians(subLatCentric))
                                * Math.cos(Math.toRadians(sunLatCentric))
                                * Math.cos(Math.toRadians(sunLon - cm))));
        Optional<RingAspect> rings = planet.rings()
                .map(r -> new RingAspect(
                        subLatCentric, sunLatCentric, 20, 20 * Math.sin(Math.toRadians(Math.abs(subLatCentric)))));
        return new ApparentDisc(
                planet,
                new UtcTime(14000, 0),
                66,
                "test",
                0,
                0,
                5,
                2495,
                5,
                170,
                40,
                40 * figure.apparentAxisRatio(subLatCentric),
                phase,
                (1 + Math.cos(Math.toRadians(phase))) / 2,
                earth,
                sun,
                0,
                0,
                270,
                rings);
    }
}
