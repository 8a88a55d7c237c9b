/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelSettings;
import oblate.workbench.pictures.SystemLabel;

/** How pictures are shown on the desk: layers, grid, colour, sharpening, turning. Kept between sessions but for the turning. On the event thread only. */
final class ViewSettings {
    private static final int[] GRID_STEPS_DEG = {5, 10, 15, 30};
    private static final int USUAL_STEP_DEG = 15;
    private static final int MOST_SHARPEN = 3;
    private final PanelSettings settings;
    private final Runnable whenChanged;
    private double turnDeg;
    private boolean flipped;

    ViewSettings(PanelSettings settings, Runnable whenChanged) {
        this.settings = settings;
        this.whenChanged = whenChanged;
    }

    boolean shows(Layer layer) {
        return settings.flag("layer." + layer.id(), !layer.id().equals("belts"));
    }

    void show(Layer layer, boolean shown) {
        settings.keep("layer." + layer.id(), shown);
        whenChanged.run();
    }

    /** The layers shown, from the lowest up. */
    List<Layer> layers() {
        return Layers.all().stream().filter(this::shows).toList();
    }

    int gridStepDeg() {
        int kept = settings.number("grid.step", USUAL_STEP_DEG);
        for (int step : GRID_STEPS_DEG) {
            if (step == kept) {
                return kept;
            }
        }
        return USUAL_STEP_DEG;
    }

    void nextGridStep() {
        int at = 0;
        while (GRID_STEPS_DEG[at] != gridStepDeg()) {
            at++;
        }
        settings.keep("grid.step", GRID_STEPS_DEG[(at + 1) % GRID_STEPS_DEG.length]);
        whenChanged.run();
    }

    /** The system meridians are drawn in. */
    RotationSystem system(PlanetModel planet) {
        String id = settings.text("system." + planet.id(), "");
        return Optional.of(id).flatMap(planet.globe()::system).orElseGet(() -> SystemLabel.usual(planet));
    }

    void nextSystem(PlanetModel planet) {
        List<RotationSystem> all = new ArrayList<>(planet.globe().systems());
        RotationSystem next = all.get((all.indexOf(system(planet)) + 1) % all.size());
        settings.keep("system." + planet.id(), next.id());
        whenChanged.run();
    }

    Look.Channel channel() {
        String kept = settings.text("channel", "");
        for (Look.Channel channel : Look.Channel.values()) {
            if (channel.name().equals(kept)) {
                return channel;
            }
        }
        return Look.Channel.ALL;
    }

    void setChannel(Look.Channel channel) {
        settings.keep("channel", channel.name());
        whenChanged.run();
    }

    /** Amount of sharpening for the eye, 0…3. */
    int sharpen() {
        return Math.max(0, Math.min(MOST_SHARPEN, settings.number("sharpen", 0)));
    }

    void setSharpen(int amount) {
        settings.keep("sharpen", amount);
        whenChanged.run();
    }

    void nextSharpen() {
        setSharpen((sharpen() + 1) % (MOST_SHARPEN + 1));
    }

    boolean magnifies() {
        return settings.flag("magnifier", true);
    }

    void setMagnifies(boolean on) {
        settings.keep("magnifier", on);
        whenChanged.run();
    }

    /** What the view is turned by beyond the window's choice of what is up, clockwise (deg). */
    double turnDeg() {
        return turnDeg;
    }

    void turnBy(double deg) {
        turnDeg = Math.IEEEremainder(turnDeg + (flipped ? -deg : deg), 360);
        whenChanged.run();
    }

    boolean isFlipped() {
        return flipped;
    }

    void flip() {
        flipped = !flipped;
        whenChanged.run();
    }

    /** Neither turned nor flipped any more. */
    void straighten() {
        turnDeg = 0;
        flipped = false;
        whenChanged.run();
    }
}
