/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.Action;
import javax.swing.Icon;
import javax.swing.JComponent;
import oblate.archive.Archive;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.workbench.look.Palette;

/** One panel with what it was given and what it gave: its component, inspector and actions. */
final class PanelSlot implements PanelContext {
    private final WorkbenchPanel panel;
    private final String id;
    private final String label;
    private final Optional<Icon> icon;
    private final int order;
    private final MainWindow window;
    private final PanelSettings settings;
    private final List<Action> actions = new ArrayList<>();
    private Optional<JComponent> component = Optional.empty();
    private Optional<JComponent> card = Optional.empty();
    private Optional<JComponent> inspector = Optional.empty();

    PanelSlot(WorkbenchPanel panel, MainWindow window, PanelSettings settings) {
        this.panel = panel;
        id = panel.id();
        label = panel.label();
        icon = panel.icon();
        order = panel.order();
        this.window = window;
        this.settings = settings;
    }

    WorkbenchPanel panel() {
        return panel;
    }

    /** What the panel said of itself when it came: it is not asked again, because it may fail or be switched off by then. */
    String id() {
        return id;
    }

    String label() {
        return label;
    }

    Optional<Icon> icon() {
        return icon;
    }

    int order() {
        return order;
    }

    Optional<JComponent> component() {
        return component;
    }

    Optional<JComponent> inspector() {
        return inspector;
    }

    List<Action> actions() {
        return List.copyOf(actions);
    }

    void create() {
        if (component.isEmpty()) {
            JComponent made = panel.create(this);
            if (made == null) {
                throw new IllegalStateException("create returned nothing");
            }
            made.setName("panel." + id);
            component = Optional.of(made);
            card = Optional.of(fenced(made));
        }
    }

    /** What ships needs no fence; a stranger's component stands behind one. */
    private JComponent fenced(JComponent made) {
        return window.roll().isStranger(panel)
                ? new Fence(made, (doing, deed) -> window.roll().tell(panel, doing, deed))
                : made;
    }

    /** The component as it is put into the window. */
    Optional<JComponent> card() {
        return card;
    }

    @Override
    public Archive archive() {
        return window.context().archive();
    }

    @Override
    public Sky sky() {
        return window.context().sky();
    }

    @Override
    public PlanetModel planet() {
        return window.planet();
    }

    @Override
    public Shelf shelf() {
        return window.shelf();
    }

    @Override
    public Selection selection() {
        return window.selection();
    }

    @Override
    public Background background() {
        return window.background();
    }

    @Override
    public Palette palette() {
        return window.theme().palette();
    }

    @Override
    public PanelSettings settings() {
        return settings;
    }

    @Override
    public void openPicture(long pictureId) {
        window.openPicture(pictureId);
    }

    @Override
    public void showInInspector(JComponent shown) {
        boolean same = inspector
                .filter(i -> i == shown || (i instanceof Fence fence && fence.inside() == shown))
                .isPresent();
        inspector = same ? inspector : Optional.of(fenced(shown));
        window.inspectorChanged(this);
    }

    @Override
    public void offer(Action action) {
        actions.add(action);
    }

    @Override
    public EditHistory edits() {
        return window.edits();
    }

    @Override
    public Bearing bearing() {
        return window.bearing();
    }

    @Override
    public void whenLookChanged(Runnable listener) {
        window.whenLookChanged(listener);
    }

    @Override
    public void takeDroppedFiles(Consumer<List<Path>> taker) {
        window.takeDroppedFiles(files -> {
            window.showPanel(id);
            taker.accept(files);
        });
    }

    @Override
    public PluginRoll plugins() {
        return window.roll();
    }

    @Override
    public void say(String sentence) {
        window.say(sentence);
    }

    @Override
    public WorkbenchContext workbench() {
        return window.context();
    }
}
