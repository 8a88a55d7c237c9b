/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.workbench.Bearing;
import org.junit.jupiter.api.Test;

class ViewWordsTest {
    private static String words(double poleAngleDeg, boolean mirrored, double turnDeg, boolean flipped) {
        Placement placement = new Placement(50, 50, 20, poleAngleDeg, mirrored);
        return ViewWords.of(Optional.of(placement), new CanvasView(100, 100, 50, 50, 1, turnDeg, flipped));
    }

    @Test
    void whatIsUpAndWhatIsMirroredIsAlwaysSaid() {
        assertThat(words(24, false, Bearing.NORTH_UP.turnDeg(24), false)).isEqualTo("north up   ·   as the sky");
        assertThat(words(24, false, Bearing.SOUTH_UP.turnDeg(24), false)).startsWith("south up");
        assertThat(words(24, false, 0, false)).startsWith("north 24.0° to the left of up");
        assertThat(words(24, true, 24, false)).contains("mirror image: the picture is mirrored");
        assertThat(words(24, true, 24, true)).contains("as the sky: the picture is mirrored, the view flips it back");
        assertThat(words(24, false, 24, true)).contains("mirror image: the view is flipped");
        assertThat(ViewWords.of(Optional.empty(), new CanvasView(1, 1, 0, 0, 1, 0, false)))
                .contains("as taken")
                .contains("not known before the fit");
    }

    /** The words are checked against where the transform really puts the pole. */
    @Property(tries = 200)
    void theWordsAgreeWithWhereThePoleIs(
            @ForAll @DoubleRange(min = -179, max = 179) double pole,
            @ForAll @DoubleRange(min = -179, max = 179) double turn,
            @ForAll boolean flipped) {
        CanvasView view = new CanvasView(100, 100, 50, 50, 1, turn, flipped);
        double a = Math.toRadians(pole);
        var at = view.toScreen(new PixelPoint(50 - 10 * Math.sin(a), 50 - 10 * Math.cos(a)));
        String said = ViewWords.of(Optional.of(new Placement(50, 50, 20, pole, false)), view);
        if (at.x - 50 > 0.1 && said.contains("°")) {
            assertThat(said).contains("to the right");
        } else if (at.x - 50 < -0.1 && said.contains("°")) {
            assertThat(said).contains("to the left");
        }
        double away = Math.toDegrees(Math.atan2(Math.abs(at.x - 50), 50 - at.y));
        if (said.contains("°")) {
            double number = Double.parseDouble(said.replaceAll("^north ([0-9.]+)°.*$", "$1"));
            assertThat(Math.abs(number - away)).isLessThan(0.06);
        }
    }
}
