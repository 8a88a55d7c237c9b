/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import java.util.function.Predicate;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import oblate.workbench.actions.ActionFinder;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The window: what its parts share, and what the whole of it can do. On the event thread only. */
final class MainWindow {
    private static final Texts TEXTS = Texts.of(MainWindow.class);
    private static final String FIRST_PANEL = "nights";
    private final WorkbenchContext context;
    private final DeskSettings deskSettings;
    private final PanelSettings settings;
    private final Background background = new Background(this::say, this::heard);
    private final Selection selection = new Selection();
    private final EditHistory edits;
    private final Shelf shelf;
    private final PluginRoll roll;
    private final PluginWatch watch;
    private final Listeners lookListeners = new Listeners();
    private final WindowFrame frame;
    private final Rail rail;
    private final Panels panels;
    private final SeasonRibbon ribbon;
    private final SeasonFollower season;
    private final StatusStrip status = new StatusStrip(background);
    private final Menus menus;
    private final TopSheet sheet;
    private final QuietTime quiet;
    private final Look look;
    private final CountDownLatch closed = new CountDownLatch(1);
    private Optional<ActionFinder> finder = Optional.empty();
    private Optional<Walk> walk = Optional.empty();
    private volatile Leaving leaving = Leaving.DONE;
    private Consumer<List<Path>> dropTaker = files -> {};
    private Bearing bearing;

    /** Installs the look first: components take their colours from it when they are made. */
    static MainWindow make(WorkbenchContext context) {
        DeskSettings kept = new DeskSettings(context.settingsFolder());
        Theme theme = Look.kept(kept);
        theme.install();
        return new MainWindow(context, kept, theme);
    }

    private MainWindow(WorkbenchContext context, DeskSettings deskSettings, Theme theme) {
        this.context = context;
        this.deskSettings = deskSettings;
        settings = deskSettings.forPanel("desk");
        bearing = List.of(Bearing.values()).stream()
                .filter(b -> b.name().equals(settings.text("bearing", "")))
                .findFirst()
                .orElse(Bearing.NORTH_UP);
        frame = new WindowFrame(settings);
        sheet = new TopSheet(frame.frame());
        shelf = new Shelf(context.archive(), background);
        edits = new EditHistory(context.archive(), context.sky(), context.settingsFolder(), background, this::say);
        edits.whenRestored(restored -> shelf.refresh());
        ribbon = new SeasonRibbon(this::palette, selection, this::goTo, Clock.systemUTC());
        season = new SeasonFollower(context, shelf, selection, background, ribbon);
        roll = new PluginRoll(context.plugins(), this::say);
        watch = new PluginWatch(context.plugins(), roll, this::say, status::shout);
        menus = new Menus(this);
        rail = new Rail(this::palette, this::showPanel);
        panels = new Panels(
                roll,
                frame,
                rail,
                panel -> new PanelSlot(panel, this, deskSettings.forPanel("panel." + panel.id())),
                menus::rebuild);
        quiet = new QuietTime(background, () -> closed.getCount() == 0);
        look = new Look(theme, settings, frame.frame(), panels, quiet, this::lookChanged);
    }

    /** Puts the parts together. */
    void assemble() {
        panels.arrange();
        roll.whenChanged(panels::arrange);
        context.plugins().switches().whenChanged(() -> SwingUtilities.invokeLater(this::pluginsTurned));
        String title = TEXTS.text(
                "window.title", String.valueOf(context.archive().folder().getFileName()));
        frame.build(title, rail, ribbon, status, files -> dropTaker.accept(files), this::close);
        frame.frame().setJMenuBar(menus.bar());
        colour();
        shelf.whenChanged(season::follow);
        shelf.whenChanged(this::lookAtWalk);
        selection.whenChanged(() -> ribbon.choose(selection.pictureId().flatMap(shelf::picture)));
        selection.whenChanged(this::lookAtWalk);
        // In the background, which waits until the catalog is open.
        shelf.refresh();
    }

    private Optional<String> heard(Throwable thrown) {
        return roll.heard(thrown, TEXTS.text("doing.background"));
    }

    /** Jars were switched off or on: their listeners are forgotten, their panels taken away, and the newest failure is told. */
    private void pluginsTurned() {
        if (closed.getCount() == 0) {
            return;
        }
        Predicate<Runnable> isOff = listener -> context.plugins()
                .jarOf(listener)
                .filter(jar -> !context.plugins().switches().isOn(jar))
                .isPresent();
        shelf.forget(isOff);
        selection.forget(isOff);
        edits.forget(isOff);
        background.forget(isOff);
        lookListeners.forget(isOff);
        roll.turned();
        roll.untold().forEach(fault -> say(TEXTS.text("plugin.off", fault.sentence())));
    }

    /** Makes the panel that will be shown first. */
    void makeFirstPanel() {
        panels.make(panels.orFirst(settings.text("panel", "")));
    }

    /** Does something when the archive has been read and everything has heard of it. */
    void whenRead(Runnable deed) {
        shelf.whenChanged(deed);
    }

    /** Lays the window out at the size it will have, with the first panel in it. */
    void layOut() {
        panels.show(panels.orFirst(settings.text("panel", "")));
        menus.fill();
        frame.layOut();
    }

    void show() {
        watch.start();
        frame.frame().setVisible(true);
        showPanel(panels.orFirst(settings.text("panel", "")));
        // The nights offer what the archive's menu has and take dropped files.
        SwingUtilities.invokeLater(() -> panels.make(FIRST_PANEL));
        quiet.whenQuiet(panels::makeOneThatShips);
    }

    /** Makes every panel that ships, for those who want to know all that can be done. */
    void makeAllThatShip() {
        while (panels.makeOneThatShips()) {
            // the next one
        }
    }

    void showPanel(String id) {
        look.wear(id);
        String before = shown();
        if (panels.show(id)) {
            if (!before.equals(shown())) {
                status.pageTurned();
            }
            tellLook();
            lookAtWalk();
        }
    }

    void inspectorChanged(PanelSlot slot) {
        panels.inspectorChanged(slot);
    }

    void toggleInspector() {
        panels.toggleInspector();
    }

    void openPicture(long pictureId) {
        selection.choosePicture(pictureId);
        showPanel("measure");
    }

    private void goTo(long pictureId) {
        selection.choosePicture(pictureId);
        if (!shown().equals("measure")) {
            showPanel(FIRST_PANEL);
        }
    }

    PlanetModel planet() {
        return season.planet();
    }

    void setTheme(Theme chosen) {
        look.change(chosen);
    }

    private void lookChanged() {
        colour();
        tellLook();
    }

    void setBearing(Bearing chosen) {
        bearing = chosen;
        settings.keep("bearing", chosen.name());
        tellLook();
    }

    private void colour() {
        status.colour(palette().quietInk());
        status.shoutColours(palette().ground(), palette().alarm());
        walk.ifPresent(Walk::colour);
        frame.colour(palette());
    }

    private void tellLook() {
        lookListeners.tell();
        frame.frame().repaint();
    }

    void close() {
        frame.keepPlaces();
        settings.keep("panel", shown());
        try {
            deskSettings.save();
        } catch (IOException e) {
            System.getLogger(MainWindow.class.getName())
                    .log(System.Logger.Level.WARNING, "layout not kept: " + e.getMessage());
        }
        // Gone at once for the person; the archive is still given what was asked of it last.
        frame.frame().setVisible(false);
        discard();
    }

    /** Closes it without keeping its layout, as for one that was never shown. */
    void discard() {
        background.close();
        watch.close();
        frame.frame().dispose();
        try {
            context.archive().close();
        } catch (ProblemException e) {
            // Everything measured was kept before; what could not be made is the day's copy of the catalog.
            System.getLogger(MainWindow.class.getName()).log(System.Logger.Level.WARNING, e.getMessage());
        } finally {
            closed.countDown();
        }
    }

    CountDownLatch closed() {
        return closed;
    }

    private Palette palette() {
        return look.theme().palette();
    }

    /** Everything that can be done, to be searched. */
    void findAction() {
        ActionFinder found = finder.orElseGet(() -> new ActionFinder(menus::actions, this::palette, sheet::hide));
        finder = Optional.of(found);
        sheet.show(found);
        found.open();
    }

    void walkThrough() {
        showPanel(panels.orFirst(""));
        if (walk.isEmpty()) {
            walk = Optional.of(new Walk(this, this::palette));
            frame.addAbove(walk.get());
        }
        walk.get().begin();
    }

    private void lookAtWalk() {
        walk.ifPresent(Walk::look);
    }

    void openAnother() {
        leaveFor(Leaving.ANOTHER_ARCHIVE);
    }

    void openSample() {
        leaveFor(Leaving.SAMPLE_SEASON);
    }

    private void leaveFor(Leaving next) {
        leaving = next;
        close();
    }

    /** What the person wanted next when the window was closed. */
    Leaving leaving() {
        return leaving;
    }

    void takeDroppedFiles(Consumer<List<Path>> taker) {
        dropTaker = taker;
    }

    void say(String sentence) {
        status.say(sentence);
    }

    void whenLookChanged(Runnable listener) {
        lookListeners.add(listener);
    }

    List<PanelSlot> slots() {
        return panels.slots();
    }

    String shown() {
        return panels.shown();
    }

    JFrame frame() {
        return frame.frame();
    }

    WorkbenchContext context() {
        return context;
    }

    Background background() {
        return background;
    }

    Selection selection() {
        return selection;
    }

    Shelf shelf() {
        return shelf;
    }

    EditHistory edits() {
        return edits;
    }

    PluginRoll roll() {
        return roll;
    }

    Theme theme() {
        return look.theme();
    }

    Bearing bearing() {
        return bearing;
    }
}
