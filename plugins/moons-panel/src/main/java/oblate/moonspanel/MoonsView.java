/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.BorderLayout;
import java.awt.event.HierarchyEvent;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSlider;
import javax.swing.JSplitPane;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.archive.Site;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.workbench.Job;
import oblate.workbench.NewestOnly;
import oblate.workbench.PanelContext;

/** Events on the left, planet and moons at an instant on the right, the instant's figures in the inspector. */
final class MoonsView extends JPanel {
    private static final long serialVersionUID = 1L;
    /** Half the width of the near drawing (equatorial radii). */
    private static final double NEAR_RADII = 1.75;
    /** The same for a planet with rings. */
    private static final double NEAR_RINGS_RADII = 2.6;
    /** Step of the slider (s). */
    private static final int SLIDER_S = 30;

    private final transient PanelContext context;
    private final JComboBox<String> planets = new JComboBox<>();
    private final JComboBox<String> sites = new JComboBox<>();
    private final JComboBox<Stretch> stretches = new JComboBox<>(Stretch.values());
    private final JTextField date = new JTextField(9);
    private final JComboBox<Facing> facings = new JComboBox<>(Facing.values());
    private final JCheckBox mirrored = new JCheckBox(Words.of("mirrored"));
    private final EventTable table;
    private final JLabel count = new JLabel(" ");
    private final JLabel picturesTitle = new JLabel(Words.of("pictures.title"));
    private final JLabel said = new JLabel(" ");
    private final NearPictures pictures;
    private final SystemDrawing near;
    private final SystemDrawing wide;
    private final JTextField time = new JTextField(21);
    private final JSlider slider = new JSlider(0, 1, 0);
    private final FactsColumn facts;
    private final transient NewestOnly<Question, Scene> scenes;
    private final transient NewestOnly<InstantFacts.Question, InstantFacts> figures;
    private transient List<Site> known = List.of();
    private transient LocalDate evening;
    private transient UtcTime at;
    private transient Optional<Job> search = Optional.empty();
    private boolean filling;
    private boolean stale = true;

    /** What the drawing is asked for. */
    private record Question(PlanetModel planet, UtcTime time) {}

    MoonsView(PanelContext context, Clock clock) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        setName("moons.view");
        table = new EventTable(context::palette);
        pictures = new NearPictures(context::openPicture);
        near = new SystemDrawing(
                context::palette,
                s -> s.disc().rings().isPresent() && s.disc().planet().rings().isPresent()
                        ? NEAR_RINGS_RADII
                        : NEAR_RADII,
                true);
        wide = new SystemDrawing(context::palette, Scene::reachRadii, false);
        facts = new FactsColumn(context::palette, context.settings());
        scenes = new NewestOnly<>(
                context.background(), q -> Scene.at(context.sky(), q.planet(), q.time()), this::show, this::noScene);
        figures = new NewestOnly<>(
                context.background(),
                q -> InstantFacts.of(context.sky(), q),
                f -> facts.show(f, site().map(Site::name)),
                facts::showProblem);
        List<PlanetModel> withMoons = withMoons();
        if (withMoons.isEmpty()) {
            JLabel empty = new JLabel(Words.of("empty.planets"), JLabel.CENTER);
            add(empty, BorderLayout.CENTER);
            evening = LocalDate.now(clock);
            at = UtcTime.of(clock.instant());
            return;
        }
        evening = Stretch.eveningOf(UtcTime.of(clock.instant()), Optional.empty());
        at = UtcTime.of(clock.instant());
        filling = true;
        withMoons.forEach(p -> planets.addItem(p.label()));
        sites.addItem(Words.of("site.earth"));
        filling = false;
        nameParts();
        add(bar(), BorderLayout.NORTH);
        add(middle(), BorderLayout.CENTER);
        listen();
        context.showInInspector(facts);
    }

    private List<PlanetModel> withMoons() {
        return context.workbench().planets().stream()
                .filter(p -> !p.moons().isEmpty())
                .toList();
    }

    private void nameParts() {
        name(planets, "planet");
        name(sites, "site");
        name(stretches, "stretch");
        name(date, "date");
        name(facings, "facing");
        name(mirrored, "mirrored");
        name(time, "time");
        name(slider, "slider");
        name(near, "near");
        name(wide, "wide");
    }

    private static void name(JComponent part, String key) {
        part.setName("moons." + key);
        part.getAccessibleContext().setAccessibleName(Words.of(key + ".name"));
        part.setToolTipText(Words.of(key + ".tip"));
    }

    private JPanel bar() {
        JPanel bar = new JPanel(new MigLayout("insets 8 16 8 16, gap 8", "[][][][][][]push[][]"));
        bar.setOpaque(false);
        bar.add(planets);
        bar.add(sites, "wmax 160");
        bar.add(stretches);
        bar.add(step("‹", -1));
        bar.add(date);
        bar.add(step("›", 1));
        bar.add(facings);
        bar.add(mirrored);
        return bar;
    }

    private JButton step(String sign, int direction) {
        JButton button = new JButton(sign);
        button.setName(direction < 0 ? "moons.before" : "moons.after");
        button.setToolTipText(Words.of(direction < 0 ? "before.tip" : "after.tip"));
        button.getAccessibleContext().setAccessibleName(button.getToolTipText());
        button.addActionListener(
                e -> goTo(evening.plusDays((long) direction * stretch().days())));
        return button;
    }

    private JSplitPane middle() {
        JSplitPane split = new JSplitPane(JSplitPane.VERTICAL_SPLIT, drawings(), lists());
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setResizeWeight(0.55);
        split.setDividerLocation(context.settings().number("divider", 420));
        split.addPropertyChangeListener(JSplitPane.DIVIDER_LOCATION_PROPERTY, e -> context.settings()
                .keep("divider", split.getDividerLocation()));
        return split;
    }

    /** The planet near by on the left, all moons with the instant on the right. */
    private JPanel drawings() {
        JPanel top = new JPanel(new MigLayout("insets 0, gap 1, fill", "[45%,fill][55%,fill]", "[grow,fill][]"));
        top.setOpaque(false);
        top.add(near, "spany 2, wmin 0, hmin 160");
        top.add(wide, "wmin 0, hmin 60, wrap");
        JPanel instant = new JPanel(new MigLayout("insets 8 12 8 12, gap 8, fillx", "[][grow,fill]"));
        instant.setOpaque(false);
        time.setFont(oblate.workbench.look.Theme.figureFont(-1));
        instant.add(time);
        instant.add(slider, "wmin 0");
        instant.add(new JLabel(Words.of("legend")), "newline, span 2, wmin 0");
        said.setName("moons.said");
        instant.add(said, "newline, span 2, wmin 0");
        top.add(instant, "wmin 0");
        return top;
    }

    /** The events on the left, the pictures about the chosen one on the right. */
    private JPanel lists() {
        JPanel below = new JPanel(new MigLayout("insets 0, gap 1, fill", "[grow,fill][210!,fill]", "[][grow,fill]"));
        below.setOpaque(false);
        count.setName("moons.count");
        below.add(count, "gapleft 16, gaptop 6, gapbottom 6");
        below.add(picturesTitle, "gapleft 8, wmin 0, wrap");
        JScrollPane events = new JScrollPane(table);
        events.setBorder(BorderFactory.createEmptyBorder());
        below.add(events, "wmin 0, hmin 80");
        JScrollPane shown = new JScrollPane(pictures);
        shown.setBorder(BorderFactory.createEmptyBorder());
        below.add(shown, "wmin 0");
        return below;
    }

    private void listen() {
        facings.setSelectedItem(Facing.like(context.bearing()));
        planets.addActionListener(e -> asked());
        sites.addActionListener(e -> asked());
        stretches.addActionListener(e -> asked());
        date.addActionListener(e -> enteredDate());
        facings.addActionListener(e -> face());
        mirrored.addActionListener(e -> face());
        time.addActionListener(e -> enteredTime());
        slider.addChangeListener(e -> {
            if (!filling) {
                instant(span().from().plusClockSeconds((double) slider.getValue() * SLIDER_S));
            }
        });
        table.getSelectionModel().addListSelectionListener(e -> {
            if (!filling && !e.getValueIsAdjusting()) {
                chosen().ifPresent(event -> instant(event.shown()));
                showPictures();
            }
        });
        facts.whenChanged(this::askFigures);
        context.selection().whenChanged(this::followPicture);
        context.shelf().whenChanged(() -> {
            stale = true;
            refreshIfShowing();
        });
        context.whenLookChanged(() -> {
            time.setFont(oblate.workbench.look.Theme.figureFont(-1));
            if (isShowing()) {
                askFigures();
            }
        });
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0) {
                refreshIfShowing();
            }
        });
    }

    private void refreshIfShowing() {
        if (isShowing() && stale) {
            stale = false;
            context.background().quietly(() -> context.archive().sites(), this::showSites);
        }
    }

    private void showSites(List<Site> found) {
        filling = true;
        known = List.copyOf(found);
        sites.removeAllItems();
        sites.addItem(Words.of("site.earth"));
        known.forEach(s -> sites.addItem(s.name()));
        String wish = context.settings()
                .text("site", known.isEmpty() ? "" : known.get(0).name());
        known.stream().filter(s -> s.name().equals(wish)).findFirst().ifPresent(s -> sites.setSelectedItem(s.name()));
        filling = false;
        takePicture(anchor());
        face();
        search();
    }

    /** The picture whose night is shown: the chosen one, else the last. */
    private Optional<ArchivedPicture> anchor() {
        return context.selection()
                .pictureId()
                .flatMap(context.shelf()::picture)
                .or(() -> context.shelf().pictures().stream()
                        .filter(p -> p.time().isPresent())
                        .reduce((a, b) -> b));
    }

    private void takePicture(Optional<ArchivedPicture> picture) {
        picture.filter(p -> p.time().isPresent()).ifPresent(p -> {
            at = UtcTime.of(p.time().orElseThrow().midUtc());
            filling = true;
            withMoons().stream()
                    .filter(m -> p.planetId().equals(Optional.of(m.id())))
                    .findFirst()
                    .ifPresent(m -> planets.setSelectedItem(m.label()));
            p.site()
                    .filter(s -> known.stream().anyMatch(k -> k.name().equals(s)))
                    .ifPresent(sites::setSelectedItem);
            filling = false;
            evening = Stretch.eveningOf(at, site());
        });
    }

    private void followPicture() {
        Optional<ArchivedPicture> picture = context.selection().pictureId().flatMap(context.shelf()::picture);
        if (picture.isEmpty()) {
            return;
        }
        if (!isShowing()) {
            stale = true;
            return;
        }
        takePicture(picture);
        search();
    }

    private PlanetModel planet() {
        return withMoons().get(Math.max(0, planets.getSelectedIndex()));
    }

    private Optional<Site> site() {
        int index = sites.getSelectedIndex() - 1;
        return index >= 0 && index < known.size() ? Optional.of(known.get(index)) : Optional.empty();
    }

    private Stretch stretch() {
        return (Stretch) stretches.getSelectedItem();
    }

    private TimeSpan span() {
        return stretch().from(evening, site());
    }

    private void asked() {
        if (!filling) {
            context.settings().keep("site", site().map(Site::name).orElse(""));
            search();
        }
    }

    private void enteredDate() {
        try {
            goTo(LocalDate.parse(date.getText().strip()));
        } catch (DateTimeException e) {
            context.say(Words.of("date.wrong", date.getText()));
        }
    }

    private void goTo(LocalDate day) {
        evening = day;
        search();
    }

    private void enteredTime() {
        try {
            UtcTime entered =
                    UtcTime.parse(time.getText().strip(), context.sky().leapSeconds());
            if (span().contains(entered)) {
                instant(entered);
            } else {
                at = entered;
                goTo(Stretch.eveningOf(entered, site()));
            }
        } catch (ProblemException e) {
            context.say(e.getMessage());
        }
    }

    private void face() {
        Facing facing = (Facing) facings.getSelectedItem();
        near.face(facing, mirrored.isSelected());
        wide.face(facing, mirrored.isSelected());
    }

    /** Asks for the events of the span; a search under way is stopped. */
    private void search() {
        search.ifPresent(Job::stop);
        TimeSpan span = span();
        date.setText(evening.toString());
        filling = true;
        slider.setMaximum((int) (span.clockSeconds() / SLIDER_S));
        table.show(List.of());
        filling = false;
        count.setText(Words.of("count.searching"));
        instant(span.contains(at) ? at : span.from().plusClockSeconds(43_200));
        showPictures();
        Wish wish = new Wish(planet(), site(), span);
        Job job = context.background()
                .run(
                        Words.of("search.title", wish.planet().label()),
                        progress -> new EventFinder(context.sky()).find(wish, progress),
                        this::show);
        search = Optional.of(job);
    }

    private void show(List<MoonEvent> events) {
        filling = true;
        table.show(events);
        filling = false;
        long seen = events.stream().filter(e -> e.hindrance().isEmpty()).count();
        count.setText(events.isEmpty() ? Words.of("count.none") : Words.of("count", events.size(), seen));
        showPictures();
    }

    /** Moves the drawing and the figures to an instant. */
    private void instant(UtcTime moment) {
        at = moment;
        time.setText(moment.iso(0));
        filling = true;
        slider.setValue((int) Math.round(moment.clockSecondsSince(span().from()) / SLIDER_S));
        filling = false;
        scenes.ask(new Question(planet(), at));
        askFigures();
    }

    private void askFigures() {
        PlanetModel planet = planet();
        figures.ask(new InstantFacts.Question(
                new Wish(planet, site(), span()), at, facts.captureS(), facts.system(planet), facts.longitudeDeg()));
    }

    private void show(Scene scene) {
        near.show(scene);
        wide.show(scene);
    }

    private void noScene(String why) {
        near.showNothing();
        wide.showNothing();
        context.say(why);
    }

    private Optional<MoonEvent> chosen() {
        int row = table.getSelectedRow();
        return row < 0 || row >= table.events().size()
                ? Optional.empty()
                : Optional.of(table.events().get(row));
    }

    private static String sentence(MoonEvent event) {
        String what = Words.of("kind." + event.passage().kind().id()).toLowerCase(Locale.ROOT);
        String moon = event.passage().moon().name();
        return event.words().isEmpty()
                ? Words.of("said", moon, what)
                : Words.of("said.notes", moon, what, event.words());
    }

    private void showPictures() {
        Optional<MoonEvent> event = chosen();
        Optional<String> moon = event.map(e -> e.passage().moon().id());
        near.choose(moon);
        wide.choose(moon);
        said.setText(event.map(MoonsView::sentence).orElse(Words.of("said.choose")));
        List<ArchivedPicture> found = event.map(e -> NearPictures.near(
                        context.shelf().pictures(),
                        planet(),
                        MoonEvent.begin(e.passage()).toInstant(),
                        MoonEvent.end(e.passage()).toInstant()))
                .orElse(List.of());
        pictures.show(found);
        picturesTitle.setText(
                event.isEmpty()
                        ? Words.of("pictures.choose")
                        : found.isEmpty() ? Words.of("pictures.none") : Words.of("pictures.found", found.size()));
    }
}
