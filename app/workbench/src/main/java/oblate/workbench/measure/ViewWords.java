/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.disc.Placement;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/** Says in words what is up and whether what is seen is a mirror image. */
final class ViewWords {
    private static final Texts TEXTS = Texts.of(ViewWords.class);
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
                    ? TEXTS.text("view.as.taken")
                    : TEXTS.text(
                            view.turnDeg() > 0 ? "view.clockwise" : "view.counter.clockwise",
                            Figures.fixed(Math.abs(view.turnDeg()), 1));
            return TEXTS.text(view.flipped() ? "view.unfitted.flipped" : "view.unfitted", turned);
        }
        return up(placement.get(), view) + "   ·   " + sense(placement.get().mirrored(), view.flipped());
    }

    private static String up(Placement placement, CanvasView view) {
        double clockwise = Math.IEEEremainder(view.turnDeg() - placement.poleAngleDeg(), 360);
        double north = view.flipped() ? -clockwise : clockwise;
        if (Math.abs(north) < STRAIGHT_DEG) {
            return TEXTS.text("view.north.up");
        }
        if (180 - Math.abs(north) < STRAIGHT_DEG) {
            return TEXTS.text("view.south.up");
        }
        return TEXTS.text(north > 0 ? "view.north.right" : "view.north.left", Figures.fixed(Math.abs(north), 1));
    }

    private static String sense(boolean mirrored, boolean flipped) {
        if (mirrored) {
            return flipped ? TEXTS.text("view.sky.flipped") : TEXTS.text("view.mirror");
        }
        return flipped ? TEXTS.text("view.mirror.flipped") : TEXTS.text("sense.sky");
    }

    /** The other line: what is done to the picture for the eye only, and what the grid is in. */
    static String looks(Optional<String> grid, Look.Channel channel, boolean stretched, int sharpen) {
        List<String> parts = new ArrayList<>();
        grid.ifPresent(parts::add);
        if (channel != Look.Channel.ALL) {
            parts.add(TEXTS.text("view.channel", channel.words()));
        }
        if (stretched) {
            parts.add(TEXTS.text("view.stretched"));
        }
        if (sharpen > 0) {
            parts.add(TEXTS.text("view.sharpened", Integer.toString(sharpen)));
        }
        return String.join("   ·   ", parts);
    }
}
