/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Dimension;
import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import oblate.archive.ArchivedPicture;
import oblate.base.ProblemException;
import oblate.image.CaptureTime;
import oblate.sky.PlanetModel;
import oblate.workbench.actions.ActionFinder;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The frame: rail, panels, inspector, season ribbon, foot. On the event thread only. */
final class MainWindow {
    private static final Texts TEXTS = Texts.of(MainWindow.class);
    private static final int INSPECTOR_PX = 408;
    private static final int QUIET_MS = 500;
    private final WorkbenchContext context;
    private final DeskSettings deskSettings;
    private final PanelSettings settings;
    private final Background background = new Background(this::say, this::heard);
    private final Selection selection = new Selection();
    private final EditHistory edits;
    private final Shelf shelf;
    private final PluginRoll roll;
    private final PluginWatch watch;
    private final Map<String, PanelSlot> slots = new LinkedHashMap<>();
    private final Listeners lookListeners = new Listeners();
    private final JFrame frame = new JFrame();
    private final JPanel cards = new JPanel(new CardLayout());
    private final InspectorCards inspectorCards = new InspectorCards();
    private final JScrollPane inspectorScroll = new JScrollPane(inspectorCards);
    private final JSplitPane split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT);
    private final Rail rail = new Rail(this::palette, this::showPanel);
    private final SeasonRibbon ribbon = new SeasonRibbon(this::palette, selection, this::goTo, Clock.systemUTC());
    private final StatusStrip status = new StatusStrip(background);
    private final JPanel root = new JPanel(new BorderLayout());
    private final Menus menus;
    private final TopSheet sheet = new TopSheet(frame);
    private final ActionFinder finder;
    private final Walk walk;
    private final CountDownLatch closed = new CountDownLatch(1);
    private volatile Leaving leaving = Leaving.DONE;
    private Consumer<List<Path>> dropTaker = files -> {};
    private Theme theme;
    private Bearing bearing;
    private String shown = "";
    private String seasonOf = "";

    /** Installs the look first: components take their colours from it when they are made. */
    static MainWindow make(WorkbenchContext context) {
        DeskSettings kept = new DeskSettings(context.settingsFolder());
        Theme theme = keptTheme(kept);
        theme.install();
        return new MainWindow(context, kept, theme);
    }

    private MainWindow(WorkbenchContext context, DeskSettings deskSettings, Theme theme) {
        this.context = context;
        this.deskSettings = deskSettings;
        this.theme = theme;
        settings = deskSettings.forPanel("desk");
        bearing = List.of(Bearing.values()).stream()
                .filter(b -> b.name().equals(settings.text("bearing", "")))
                .findFirst()
                .orElse(Bearing.NORTH_UP);
        shelf = new Shelf(context.archive(), background);
        edits = new EditHistory(context.archive(), context.sky(), context.settingsFolder(), background, this::say);
        edits.whenRestored(restored -> shelf.refresh());
        roll = new PluginRoll(context.plugins(), this::say);
        watch = new PluginWatch(context.plugins(), roll, this::say, status::shout);
        menus = new Menus(this);
        finder = new ActionFinder(menus::actions, this::palette, sheet::hide);
        walk = new Walk(this, this::palette);
        arrangePanels();
        roll.whenChanged(this::arrangePanels);
        context.plugins().switches().whenChanged(() -> SwingUtilities.invokeLater(this::pluginsTurned));
        buildFrame();
        shelf.whenChanged(this::shelfChanged);
        selection.whenChanged(() -> ribbon.choose(selection.pictureId().flatMap(shelf::picture)));
        selection.whenChanged(walk::look);
    }

    static Theme keptTheme(DeskSettings kept) {
        String name = kept.forPanel("desk").text("theme", Theme.DUSK.name());
        return List.of(Theme.values()).stream()
                .filter(t -> t.name().equals(name))
                .findFirst()
                .orElse(Theme.DUSK);
    }

    /** Gives every panel that is switched on its slot and its place in the rail, and takes away those that are not. */
    private void arrangePanels() {
        Map<String, PanelSlot> before = new LinkedHashMap<>(slots);
        slots.clear();
        for (WorkbenchPanel panel : roll.panels()) {
            roll.ask(panel, TEXTS.text("doing.asked"), () -> slotOf(panel, before))
                    .ifPresent(s -> slots.put(s.id(), s));
        }
        rail.clear();
        for (PanelSlot slot : slots.values()) {
            rail.add(slot.id(), slot.label(), slot.icon(), slot.order() >= 900);
        }
        before.values().stream().filter(s -> !slots.containsValue(s)).forEach(this::takeAway);
        menus.rebuild();
        if (slots.containsKey(shown)) {
            rail.show(shown);
        } else if (!shown.isEmpty()) {
            showPanel(slots.containsKey("plug-ins") ? "plug-ins" : firstPanel());
        }
    }

    private PanelSlot slotOf(WorkbenchPanel panel, Map<String, PanelSlot> before) {
        Optional<PanelSlot> known =
                before.values().stream().filter(s -> s.panel().equals(panel)).findFirst();
        return known.orElseGet(() -> new PanelSlot(panel, this, deskSettings.forPanel("panel." + panel.id())));
    }

    private void takeAway(PanelSlot slot) {
        slot.card().ifPresent(cards::remove);
        slot.inspector().ifPresent(inspectorCards::remove);
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

    private void buildFrame() {
        frame.setTitle(TEXTS.text(
                "window.title", String.valueOf(context.archive().folder().getFileName())));
        frame.setIconImages(AppIcon.images());
        frame.setDefaultCloseOperation(JFrame.DO_NOTHING_ON_CLOSE);
        frame.setName("oblate");
        inspectorScroll.setBorder(BorderFactory.createEmptyBorder());
        inspectorScroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        inspectorScroll.getVerticalScrollBar().setUnitIncrement(16);
        inspectorScroll.setMinimumSize(new Dimension(240, 100));
        cards.setMinimumSize(new Dimension(480, 300));
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setLeftComponent(cards);
        split.setRightComponent(inspectorScroll);
        split.setResizeWeight(1);
        split.setDividerSize(6);
        JPanel foot = new JPanel(new BorderLayout());
        foot.add(ribbon, BorderLayout.CENTER);
        foot.add(status, BorderLayout.SOUTH);
        root.add(rail, BorderLayout.WEST);
        root.add(split, BorderLayout.CENTER);
        root.add(walk, BorderLayout.NORTH);
        root.add(foot, BorderLayout.SOUTH);
        FileDrop.everywhere(root, files -> dropTaker.accept(files));
        frame.setContentPane(root);
        frame.setJMenuBar(menus.bar());
        frame.setBounds(bounds());
        frame.addWindowListener(new java.awt.event.WindowAdapter() {
            @Override
            public void windowClosing(java.awt.event.WindowEvent e) {
                close();
            }
        });
        colour();
    }

    private Rectangle bounds() {
        Rectangle screen = frame.getGraphicsConfiguration().getBounds();
        int width = Math.min(settings.number("width", 1440), screen.width);
        int height = Math.min(settings.number("height", 900), screen.height);
        int x = settings.number("x", screen.x + (screen.width - width) / 2);
        int y = settings.number("y", screen.y + (screen.height - height) / 2);
        Rectangle wish = new Rectangle(x, y, width, height);
        return screen.intersects(wish) ? wish : new Rectangle(screen.x, screen.y, width, height);
    }

    void show() {
        watch.start();
        frame.setVisible(true);
        int inspectorPx = Math.max(240, Math.min(700, settings.number("inspector", INSPECTOR_PX)));
        split.setDividerLocation(Math.max(480, split.getWidth() - inspectorPx - split.getDividerSize()));
        String first = slots.containsKey(settings.text("panel", "")) ? settings.text("panel", "") : firstPanel();
        showPanel(first);
        shelf.refresh();
        // The nights offer what the archive's menu has and take dropped files. The others are made when they are first
        // shown, or in a
        // quiet moment: what ships so that showing it is quick, and never a stranger's before a person asks for it.
        SwingUtilities.invokeLater(
                () -> Optional.ofNullable(slots.get("nights")).ifPresent(this::make));
        Timer quiet = new Timer(QUIET_MS, e -> {
            if (closed.getCount() == 0 || (background.isIdle() && !makeOneThatShips())) {
                ((Timer) e.getSource()).stop();
            }
        });
        quiet.setInitialDelay(4 * QUIET_MS);
        quiet.start();
    }

    private boolean makeOneThatShips() {
        Optional<PanelSlot> next = slots.values().stream()
                .filter(s -> s.component().isEmpty() && !roll.isStranger(s.panel()))
                .findFirst();
        return next.isPresent() && make(next.get());
    }

    /** Makes every panel that ships, for those who want to know all that can be done. */
    void makeAllThatShip() {
        while (makeOneThatShips()) {
            // the next one
        }
    }

    private String firstPanel() {
        return slots.keySet().stream().findFirst().orElse("");
    }

    private boolean make(PanelSlot slot) {
        if (slot.component().isPresent()) {
            return true;
        }
        if (!slots.containsValue(slot)) {
            return false;
        }
        Optional<PanelSlot> made = roll.ask(slot.panel(), TEXTS.text("doing.making"), () -> {
            slot.create();
            // While a card is added it would count as showing for a moment, and a panel that is only made ready would
            // begin to work.
            slot.card().orElseThrow().setVisible(false);
            cards.add(slot.card().orElseThrow(), slot.id());
            return slot;
        });
        if (made.isEmpty()) {
            return false;
        }
        inspectorChanged(slot);
        menus.rebuild();
        return true;
    }

    void showPanel(String id) {
        PanelSlot slot = slots.get(id);
        if (slot == null || !make(slot)) {
            if (!id.equals(firstPanel()) && !firstPanel().isEmpty()) {
                showPanel(firstPanel());
            }
            return;
        }
        if (!id.equals(shown)) {
            status.pageTurned();
        }
        shown = id;
        ((CardLayout) cards.getLayout()).show(cards, id);
        rail.show(id);
        inspectorChanged(slot);
        menus.rebuild();
        roll.tell(slot.panel(), TEXTS.text("doing.shown"), () -> slot.component()
                .orElseThrow()
                .requestFocusInWindow());
        tellLook();
        walk.look();
    }

    void inspectorChanged(PanelSlot slot) {
        JComponent fresh = slot.inspector().orElse(null);
        String id = slot.id();
        if (fresh != null && fresh.getParent() != inspectorCards) {
            inspectorCards.add(fresh, id);
        }
        if (!id.equals(shown)) {
            return;
        }
        boolean had = inspectorScroll.isVisible();
        boolean wanted = fresh != null && settings.flag("inspector.shown", true);
        inspectorScroll.setVisible(wanted);
        if (fresh != null) {
            ((CardLayout) inspectorCards.getLayout()).show(inspectorCards, id);
        }
        if (wanted && !had) {
            split.setDividerLocation(Math.max(
                    480, split.getWidth() - settings.number("inspector", INSPECTOR_PX) - split.getDividerSize()));
        }
    }

    void toggleInspector() {
        settings.keep("inspector.shown", !settings.flag("inspector.shown", true));
        PanelSlot slot = slots.get(shown);
        if (slot != null) {
            inspectorChanged(slot);
        }
    }

    void openPicture(long pictureId) {
        selection.choosePicture(pictureId);
        showPanel("measure");
    }

    private void goTo(long pictureId) {
        selection.choosePicture(pictureId);
        if (!shown.equals("measure")) {
            showPanel("nights");
        }
    }

    private void shelfChanged() {
        ribbon.show(shelf);
        walk.look();
        if (selection.pictureId().isEmpty() && !shelf.pictures().isEmpty()) {
            selection.choosePicture(shelf.pictures().get(0).id());
        }
        List<Instant> times = shelf.pictures().stream()
                .flatMap(p -> p.time().stream())
                .map(CaptureTime::midUtc)
                .toList();
        if (times.isEmpty()) {
            return;
        }
        PlanetModel planet = planet();
        Instant first = times.get(0).minus(Duration.ofDays(200));
        Instant last = times.get(times.size() - 1).plus(Duration.ofDays(200));
        String key = planet.id() + first + last;
        if (!key.equals(seasonOf)) {
            seasonOf = key;
            background.aside(() -> Season.of(context.sky(), planet, first, last), ribbon::show);
        }
    }

    PlanetModel planet() {
        Optional<String> ofPicture =
                selection.pictureId().flatMap(shelf::picture).flatMap(ArchivedPicture::planetId);
        String id = ofPicture.orElseGet(this::mostFrequentPlanet);
        return context.planets().stream()
                .filter(p -> p.id().equals(id))
                .findFirst()
                .orElseGet(() -> context.planets().get(0));
    }

    private String mostFrequentPlanet() {
        return shelf.pictures().stream()
                .flatMap(p -> p.planetId().stream())
                .collect(Collectors.groupingBy(p -> p, Collectors.counting()))
                .entrySet()
                .stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("jupiter");
    }

    void setTheme(Theme chosen) {
        theme = chosen;
        settings.keep("theme", chosen.name());
        chosen.install();
        colour();
        tellLook();
    }

    void setBearing(Bearing chosen) {
        bearing = chosen;
        settings.keep("bearing", chosen.name());
        tellLook();
    }

    private void colour() {
        root.setBackground(palette().ground());
        status.colour(palette().quietInk());
        status.shoutColours(palette().ground(), palette().alarm());
        walk.colour();
        frame.repaint();
    }

    private void tellLook() {
        lookListeners.tell();
        frame.repaint();
    }

    void close() {
        settings.keep("width", frame.getWidth());
        settings.keep("height", frame.getHeight());
        settings.keep("x", frame.getX());
        settings.keep("y", frame.getY());
        settings.keep("panel", shown);
        if (inspectorScroll.isVisible()) {
            settings.keep("inspector", inspectorScroll.getWidth());
        }
        try {
            deskSettings.save();
        } catch (IOException e) {
            System.getLogger(MainWindow.class.getName())
                    .log(System.Logger.Level.WARNING, "layout not kept: " + e.getMessage());
        }
        // Gone at once for the person; the archive is still given what was asked of it last.
        frame.setVisible(false);
        background.close();
        watch.close();
        frame.dispose();
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

    private oblate.workbench.look.Palette palette() {
        return theme.palette();
    }

    /** Everything that can be done, to be searched. */
    void findAction() {
        sheet.show(finder);
        finder.open();
    }

    void walkThrough() {
        showPanel(firstPanel());
        walk.begin();
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
        return List.copyOf(slots.values());
    }

    String shown() {
        return shown;
    }

    JFrame frame() {
        return frame;
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
        return theme;
    }

    Bearing bearing() {
        return bearing;
    }
}
