/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import oblate.workbench.actions.Deed;
import oblate.workbench.words.Texts;

/** Everything that can be done on the measuring desk, with its words and keys from the bundle. Keys that could be meant for a text field work in the picture only. */
final class MeasureActions {
    /** Fine step of marks and outlines (px and deg); Shift makes it ten times as large. */
    static final double STEP = 0.1;

    private static final Texts TEXTS = Texts.of(MeasureActions.class);
    private static final double FAR = 10 * STEP;
    private static final double TURN_DEG = 1;
    private static final double LARGE_TURN_DEG = 15;
    private final List<Deed> all = new ArrayList<>();

    MeasureActions(MeasureView view) {
        going(view);
        marking(view);
        outlining(view);
        looking(view);
        for (Layer layer : Layers.all()) {
            add("layer." + layer.id(), () -> view.settings()
                    .show(layer, !view.settings().shows(layer)));
        }
        add("layer.magnifier", () -> view.settings()
                .setMagnifies(!view.settings().magnifies()));
        add("compare", view::toggleCompare);
        add("season", view::toggleSeason);
    }

    List<Deed> all() {
        return List.copyOf(all);
    }

    Deed deed(String id) {
        return all.stream().filter(d -> d.id().equals(id)).findFirst().orElseThrow();
    }

    private void going(MeasureView view) {
        Desk desk = view.desk();
        add("fit", desk.fits()::fit);
        add("hand", view::toggleHand);
        add("accept", desk::acceptAndGoOn);
        add("next", () -> desk.step(1));
        add("previous", () -> desk.step(-1));
    }

    private void marking(MeasureView view) {
        DeskGestures gestures = view.gestures();
        add("mark", gestures::markAtPointer);
        add("name", gestures::renameChosen);
        add("withdraw", view.desk().hand()::withdraw);
        add("enter", gestures::enter);
        add("none", gestures::escape);
        for (int far = 0; far < 2; far++) {
            double step = far == 0 ? STEP : FAR;
            String more = far == 0 ? "" : ".far";
            add("left" + more, () -> gestures.nudge(-step, 0));
            add("right" + more, () -> gestures.nudge(step, 0));
            add("up" + more, () -> gestures.nudge(0, -step));
            add("down" + more, () -> gestures.nudge(0, step));
        }
    }

    private void outlining(MeasureView view) {
        HandOutline outline = view.outline();
        for (int far = 0; far < 2; far++) {
            double step = far == 0 ? STEP : FAR;
            String more = far == 0 ? "" : ".far";
            add("outline.smaller" + more, () -> outline.grow(-step));
            add("outline.larger" + more, () -> outline.grow(step));
            add("outline.left" + more, () -> outline.turn(step));
            add("outline.right" + more, () -> outline.turn(-step));
        }
        add("outline.mirror", outline::mirror);
        add("outline.fit", outline::fitFromHere);
    }

    private void looking(MeasureView view) {
        DiscCanvas canvas = view.canvas();
        ViewSettings settings = view.settings();
        add("whole", canvas::showWhole);
        add("in", () -> canvas.zoom(1.25));
        add("out", () -> canvas.zoom(0.8));
        add("turn.right", () -> settings.turnBy(TURN_DEG));
        add("turn.left", () -> settings.turnBy(-TURN_DEG));
        add("turn.right.far", () -> settings.turnBy(LARGE_TURN_DEG));
        add("turn.left.far", () -> settings.turnBy(-LARGE_TURN_DEG));
        add("flip", settings::flip);
        add("straight", settings::straighten);
        add("channel", () -> settings.setChannel(settings.channel().next()));
        add("sharpen", settings::nextSharpen);
        add("grid.step", settings::nextGridStep);
        add("grid.system", view::nextSystem);
    }

    private void add(String id, Runnable doing) {
        all.add(Deed.of(TEXTS, id, doing));
    }

    /** Makes the keys work: in the picture, and those that no text field uses in the whole panel. */
    void bind(JComponent picture, JComponent panel) {
        for (Deed deed : all) {
            deed.bind(picture, JComponent.WHEN_FOCUSED);
            if (deed.getValue(javax.swing.Action.ACCELERATOR_KEY) != null) {
                deed.bind(panel, JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
            }
        }
    }
}
