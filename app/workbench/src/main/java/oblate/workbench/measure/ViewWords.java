/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.disc.Placement;
import oblate.workbench.look.Figures;

/** Says in words what is up and whether what is seen is a mirror image. */
final class ViewWords {
    private static final double STRAIGHT_DEG = 0.05;

    private ViewWords() {}

    /**
     * One line for a view.
     *
     * @param placement where the disc lies; empty before the fit
     * @param view how the picture is shown
     */
    static String of(Optional<Placement> placement, CanvasView view) {
        if (placement.isEmpty()) {
            String turned = Math.abs(view.turnDeg()) < STRAIGHT_DEG
                    ? "as taken"
                    : "turned by " + Figures.fixed(Math.abs(view.turnDeg()), 1) + "° "
                            + (view.turnDeg() > 0 ? "clockwise" : "counter-clockwise");
            return turned + (view.flipped() ? ", view flipped" : "")
                    + "; which way is north is not known before the fit";
        }
        return up(placement.get(), view) + "   ·   " + sense(placement.get().mirrored(), view.flipped());
    }

    private static String up(Placement placement, CanvasView view) {
        double clockwise = Math.IEEEremainder(view.turnDeg() - placement.poleAngleDeg(), 360);
        double north = view.flipped() ? -clockwise : clockwise;
        if (Math.abs(north) < STRAIGHT_DEG) {
            return "north up";
        }
        if (180 - Math.abs(north) < STRAIGHT_DEG) {
            return "south up";
        }
        return "north " + Figures.fixed(Math.abs(north), 1) + "° to the " + (north > 0 ? "right" : "left") + " of up";
    }

    private static String sense(boolean mirrored, boolean flipped) {
        if (mirrored) {
            return flipped
                    ? "as the sky: the picture is mirrored, the view flips it back"
                    : "mirror image: the picture is mirrored";
        }
        return flipped ? "mirror image: the view is flipped" : "as the sky";
    }

    /** The other line: what is done to the picture for the eye only, and what the grid is in. */
    static String looks(Optional<String> grid, Look.Channel channel, boolean stretched, int sharpen) {
        List<String> parts = new ArrayList<>();
        grid.ifPresent(parts::add);
        if (channel != Look.Channel.ALL) {
            parts.add("only " + channel.words());
        }
        if (stretched) {
            parts.add("stretched for the eye");
        }
        if (sharpen > 0) {
            parts.add("sharpened for the eye, " + sharpen + " of 3");
        }
        return String.join("   ·   ", parts);
    }
}
