/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.time.Instant;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.ApparentDisc;
import oblate.sky.Sky;

class OutlineShapeTest {
    private static final double RATIO = 0.935;

    @Provide
    Arbitrary<OutlineShape> shapes() {
        return Combinators.combine(
                        Arbitraries.doubles().between(50, 900),
                        Arbitraries.doubles().between(50, 900),
                        Arbitraries.doubles().between(10, 400),
                        Arbitraries.doubles().between(-179, 179),
                        Arbitraries.of(true, false))
                .as((x, y, r, a, m) -> new OutlineShape(new Placement(x, y, r, a, m), RATIO));
    }

    @Property(tries = 200)
    void aHandleDraggedToWhereItIsChangesNothing(
            @ForAll("shapes") OutlineShape shape, @ForAll OutlineShape.Handle handle) {
        OutlineShape same = shape.moved(handle, shape.at(handle));
        assertThat(same.placement().centreXPx()).isEqualTo(shape.placement().centreXPx(), offset(1e-6));
        assertThat(same.placement().centreYPx()).isEqualTo(shape.placement().centreYPx(), offset(1e-6));
        assertThat(same.placement().equatorialRadiusPx())
                .isEqualTo(shape.placement().equatorialRadiusPx(), offset(1e-6));
        assertThat(Math.abs(Math.IEEEremainder(
                        same.placement().poleAngleDeg() - shape.placement().poleAngleDeg(), 360)))
                .isLessThan(1e-6);
    }

    @Property(tries = 200)
    void anEdgeHandleFollowsTheMouseAlongItsAxis(
            @ForAll("shapes") OutlineShape shape, @ForAll @DoubleRange(min = -5, max = 40) double grow) {
        for (OutlineShape.Handle handle : OutlineShape.Handle.values()) {
            if (handle == OutlineShape.Handle.CENTRE || handle == OutlineShape.Handle.POLE) {
                continue;
            }
            PixelPoint to = shape.grown(grow).at(handle);
            assertThat(shape.moved(handle, to).placement().equatorialRadiusPx())
                    .isEqualTo(shape.placement().equatorialRadiusPx() + grow, offset(1e-6));
        }
    }

    /** The outline of the fit's own frame is independent of how the handles compute theirs. */
    @Property(tries = 50)
    void thePoleHandleLiesBeyondTheNorthPoleOfTheFramesOwnGlobe(@ForAll("shapes") OutlineShape shape) {
        ApparentDisc disc = Sky.bundled().disc(new Jupiter(), Instant.parse("2031-03-24T21:05:30Z"));
        PixelPoint north = new DiscFrame(disc, shape.placement()).placeOffset(0, RATIO);
        PixelPoint edge = shape.at(OutlineShape.Handle.NORTH);
        assertThat(Math.hypot(north.xPx() - edge.xPx(), north.yPx() - edge.yPx()))
                .isLessThan(1e-6);
    }

    @Property(tries = 100)
    void theRadiusNeverVanishes(@ForAll("shapes") OutlineShape shape) {
        OutlineShape small = shape.moved(OutlineShape.Handle.EQUATOR_LEFT, shape.at(OutlineShape.Handle.EQUATOR_RIGHT));
        assertThat(small.placement().equatorialRadiusPx()).isEqualTo(OutlineShape.LEAST_RADIUS_PX);
    }
}
