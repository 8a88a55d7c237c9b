/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.awt.geom.Point2D;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import oblate.disc.PixelPoint;
import oblate.workbench.Bearing;
import org.junit.jupiter.api.Test;

class CanvasViewTest {
    @Provide
    Arbitrary<CanvasView> views() {
        return Combinators.combine(
                        Arbitraries.doubles().between(50, 3000),
                        Arbitraries.doubles().between(50, 3000),
                        Arbitraries.doubles().between(-500, 4000),
                        Arbitraries.doubles().between(-500, 4000),
                        Arbitraries.doubles().between(0.05, 40),
                        Arbitraries.doubles().between(-400, 400),
                        Arbitraries.of(true, false))
                .as(CanvasView::new);
    }

    @Property(tries = 300)
    void screenAndPictureAreInverse(
            @ForAll("views") CanvasView view,
            @ForAll @DoubleRange(min = 0, max = 3000) double x,
            @ForAll @DoubleRange(min = 0, max = 3000) double y) {
        Point2D.Double back = view.toScreen(view.toPicture(x, y));
        assertThat(back.x).isEqualTo(x, offset(1e-6));
        assertThat(back.y).isEqualTo(y, offset(1e-6));
    }

    @Property(tries = 300)
    void pictureAndScreenAreInverse(
            @ForAll("views") CanvasView view,
            @ForAll @DoubleRange(min = -500, max = 4500) double x,
            @ForAll @DoubleRange(min = -500, max = 4500) double y) {
        Point2D.Double screen = view.toScreen(new PixelPoint(x, y));
        PixelPoint back = view.toPicture(screen.x, screen.y);
        assertThat(back.xPx()).isEqualTo(x, offset(1e-6));
        assertThat(back.yPx()).isEqualTo(y, offset(1e-6));
    }

    @Property(tries = 200)
    void flippingTwiceIsNothingAndOnceExchangesLeftAndRight(
            @ForAll("views") CanvasView view,
            @ForAll @DoubleRange(min = 0, max = 3000) double x,
            @ForAll @DoubleRange(min = 0, max = 3000) double y) {
        CanvasView flipped = view.flippedTo(!view.flipped());
        assertThat(flipped.flippedTo(view.flipped())).isEqualTo(view);
        Point2D.Double once = view.toScreen(new PixelPoint(x, y));
        Point2D.Double other = flipped.toScreen(new PixelPoint(x, y));
        assertThat(other.x).isEqualTo(view.widthPx() - once.x, offset(1e-6));
        assertThat(other.y).isEqualTo(once.y, offset(1e-6));
    }

    @Property(tries = 300)
    void theTransformForPaintingIsTheOneForHitTesting(
            @ForAll("views") CanvasView view,
            @ForAll @DoubleRange(min = -100, max = 3000) double x,
            @ForAll @DoubleRange(min = -100, max = 3000) double y) {
        Point2D painted = view.transform().transform(new Point2D.Double(x, y), null);
        Point2D.Double hit = view.toScreen(new PixelPoint(x, y));
        assertThat(painted.distance(hit)).isLessThan(1e-6);
    }

    @Property(tries = 300)
    void zoomingKeepsWhatIsUnderThePointer(
            @ForAll("views") CanvasView view,
            @ForAll @DoubleRange(min = 0, max = 3000) double x,
            @ForAll @DoubleRange(min = 0, max = 3000) double y,
            @ForAll @DoubleRange(min = 0.2, max = 5) double factor) {
        PixelPoint before = view.toPicture(x, y);
        PixelPoint after = view.zoomedAt(x, y, factor).toPicture(x, y);
        assertThat(after.xPx()).isEqualTo(before.xPx(), offset(1e-6));
        assertThat(after.yPx()).isEqualTo(before.yPx(), offset(1e-6));
    }

    @Property(tries = 200)
    void draggingMovesThePictureAlong(
            @ForAll("views") CanvasView view,
            @ForAll @DoubleRange(min = -200, max = 200) double dx,
            @ForAll @DoubleRange(min = -200, max = 200) double dy) {
        PixelPoint place = view.toPicture(100, 100);
        Point2D.Double now = view.movedBy(dx, dy).toScreen(place);
        assertThat(now.x).isEqualTo(100 + dx, offset(1e-6));
        assertThat(now.y).isEqualTo(100 + dy, offset(1e-6));
    }

    @Property(tries = 200)
    void northUpBringsThePoleStraightUp(@ForAll @DoubleRange(min = -180, max = 180) double poleAngleDeg) {
        CanvasView view = new CanvasView(800, 600, 50, 60, 3, Bearing.NORTH_UP.turnDeg(poleAngleDeg));
        double a = Math.toRadians(poleAngleDeg);
        // Placement's definition: the north pole is in direction (-sin a, -cos a) of the picture.
        Point2D.Double pole = view.toScreen(new PixelPoint(50 - 10 * Math.sin(a), 60 - 10 * Math.cos(a)));
        assertThat(pole.x).isEqualTo(400, offset(1e-6));
        assertThat(pole.y).isEqualTo(300 - 30, offset(1e-6));
        Point2D.Double south = view.turnedTo(Bearing.SOUTH_UP.turnDeg(poleAngleDeg))
                .toScreen(new PixelPoint(50 - 10 * Math.sin(a), 60 - 10 * Math.cos(a)));
        assertThat(south.y).isEqualTo(300 + 30, offset(1e-6));
    }

    @Property(tries = 200)
    void aStepOnTheScreenIsAsLongInThePicture(@ForAll("views") CanvasView view) {
        PixelPoint step = view.stepInPicture(0.1, 0);
        assertThat(Math.hypot(step.xPx(), step.yPx())).isEqualTo(0.1, offset(1e-6));
    }

    @Test
    void theWholeDiscFits() {
        CanvasView view = CanvasView.showing(800, 600, new PixelPoint(320, 240), 200, 30, false);
        Point2D.Double edge = view.toScreen(new PixelPoint(320 + 200, 240));
        assertThat(edge.distance(400, 300)).isLessThan(300).isGreaterThan(250);
    }

    @Test
    void theScaleStaysInItsRange() {
        CanvasView view = new CanvasView(800, 600, 0, 0, 1, 0);
        assertThat(view.zoomedAt(0, 0, 1e9).scale()).isEqualTo(CanvasView.MOST_SCALE);
        assertThat(view.zoomedAt(0, 0, 1e-9).scale()).isEqualTo(CanvasView.LEAST_SCALE);
    }
}
