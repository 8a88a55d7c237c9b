/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.BorderLayout;
import java.awt.event.HierarchyEvent;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSplitPane;
import oblate.archive.ArchivedPicture;
import oblate.archive.Site;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.workbench.Job;
import oblate.workbench.NewestOnly;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** Planet and moons at an instant above, the span's events as bands and as a table below, the chosen event and the instant's figures in the inspector. */
final class MoonsView extends JPanel implements MoonsBar.Listener, EventBands.Listener {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(MoonsView.class);
    private final transient PanelContext context;
    private final MoonsBar bar;
    private final InstantPane pane;
    private final MoonSheets sheets;
    private final transient Grounds grounds;
    private final FactsColumn facts;
    private final EventDetails details;
    private final transient NewestOnly<Question, Scene> scenes;
    private final transient NewestOnly<InstantFacts.Question, InstantFacts> figures;
    private transient LocalDate evening;
    private transient UtcTime at;
    private transient Optional<Job> search = Optional.empty();
    private transient Optional<Long> taken = Optional.empty();
    private boolean stale = true;

    /** What the drawing is asked for. */
    private record Question(PlanetModel planet, Optional<Site> site, UtcTime time) {}

    MoonsView(PanelContext context, Clock clock) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        setName("moons.view");
        List<PlanetModel> withMoons = context.workbench().planets().stream()
                .filter(p -> !p.moons().isEmpty())
                .toList();
        at = UtcTime.of(clock.instant());
        evening = Stretch.eveningOf(at, Optional.empty());
        bar = new MoonsBar(withMoons, Facing.like(context.bearing()), this, context::say);
        pane = new InstantPane(context::palette, this::instant, this::enteredTime);
        grounds = new Grounds(context.sky());
        sheets = new MoonSheets(context, this, this::chosen, t -> t.predictedUtc()
                .map(UtcTime::of)
                .ifPresent(this::goTo));
        facts = new FactsColumn(context::palette, context.settings());
        details = new EventDetails(context::palette, context::openPicture, facts);
        scenes = new NewestOnly<>(
                context.background(),
                q -> Scene.at(grounds, q.site(), q.planet(), q.time()),
                pane::show,
                this::noScene);
        figures = new NewestOnly<>(
                context.background(),
                q -> InstantFacts.of(grounds, q),
                f -> facts.show(f, bar.site().map(Site::name)),
                facts::showProblem);
        if (withMoons.isEmpty()) {
            add(new JLabel(TEXTS.text("empty.planets"), JLabel.CENTER), BorderLayout.CENTER);
            return;
        }
        add(bar, BorderLayout.NORTH);
        add(middle(), BorderLayout.CENTER);
        listen();
        context.showInInspector(details);
    }

    private JSplitPane middle() {
        JSplitPane split = new JSplitPane(JSplitPane.VERTICAL_SPLIT, pane, sheets);
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setResizeWeight(0.5);
        split.setDividerLocation(context.settings().number("divider", 330));
        split.addPropertyChangeListener(JSplitPane.DIVIDER_LOCATION_PROPERTY, e -> context.settings()
                .keep("divider", split.getDividerLocation()));
        return split;
    }

    private void listen() {
        facts.whenChanged(this::askFigures);
        context.selection().whenChanged(this::followPicture);
        context.shelf().whenChanged(() -> {
            stale = true;
            refreshIfShowing();
        });
        context.whenLookChanged(() -> {
            pane.followLook();
            if (isShowing()) {
                askFigures();
                showChosen();
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
        String first = found.isEmpty() ? "" : found.get(0).name();
        if (bar.knowsSites()) {
            bar.showSites(found, bar.site().map(Site::name).orElse(""));
        } else {
            bar.showSites(found, context.settings().text("site", first));
            // A picture taken before the sites were known could not say which one was its own.
            taken = Optional.empty();
        }
        if (!anchor().map(ArchivedPicture::id).equals(taken)) {
            // else a person may have gone on to another night
            takePicture(anchor());
        }
        faced();
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
        taken = picture.map(ArchivedPicture::id);
        picture.filter(p -> p.time().isPresent()).ifPresent(p -> {
            at = UtcTime.of(p.time().orElseThrow().midUtc());
            p.planetId().ifPresent(bar::choosePlanet);
            p.site().ifPresent(bar::chooseSite);
            evening = Stretch.eveningOf(at, bar.site());
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

    private Wish wish() {
        return new Wish(bar.planet(), bar.site(), span());
    }

    private TimeSpan span() {
        return bar.stretch().from(evening, bar.site());
    }

    @Override
    public void asked() {
        context.settings().keep("site", bar.site().map(Site::name).orElse(""));
        search();
    }

    @Override
    public void stepped(int direction) {
        dated(evening.plusDays((long) direction * bar.stretch().days()));
    }

    @Override
    public void dated(LocalDate day) {
        evening = day;
        search();
    }

    @Override
    public void faced() {
        pane.face(bar.facing(), bar.isMirrored());
    }

    private void enteredTime(String text) {
        try {
            goTo(UtcTime.parse(text.strip(), context.sky().leapSeconds()));
        } catch (ProblemException e) {
            context.say(e.getMessage());
        }
    }

    /** Goes to a moment, and to its night when it lies outside the span. */
    private void goTo(UtcTime time) {
        if (span().contains(time)) {
            instant(time);
        } else {
            at = time;
            dated(Stretch.eveningOf(time, bar.site()));
        }
    }

    /** The drawing follows the pointer along the bands, and goes back when it has left. */
    @Override
    public void pointed(Optional<UtcTime> time) {
        scenes.ask(new Question(bar.planet(), bar.site(), time.orElse(at)));
    }

    @Override
    public void picked(UtcTime time) {
        instant(time);
    }

    @Override
    public void picked(Happening event) {
        sheets.choose(event);
    }

    private void chosen(Optional<Happening> event) {
        event.ifPresent(e -> instant(e.shown()));
        showChosen();
    }

    /** Asks for the events of the span; a search under way is stopped. */
    private void search() {
        search.ifPresent(Job::stop);
        Wish wish = wish();
        bar.showDate(evening);
        pane.span(wish.span());
        sheets.showSearching(wish, pictures());
        instant(wish.span().contains(at) ? at : wish.span().from().plusClockSeconds(43_200));
        showChosen();
        Job job = context.background()
                .run(
                        TEXTS.text("search.title", wish.planet().label()),
                        progress -> new EventFinder(grounds).find(wish, progress),
                        this::show);
        search = Optional.of(job);
    }

    /** When the planet's pictures of the span were taken. */
    private List<UtcTime> pictures() {
        return context.shelf().pictures().stream()
                .filter(p -> p.planetId().equals(Optional.of(bar.planet().id())))
                .flatMap(p -> p.time().stream())
                .map(t -> UtcTime.of(t.midUtc()))
                .filter(span()::contains)
                .toList();
    }

    private void show(Found found) {
        sheets.show(found);
        showChosen();
    }

    /** Moves the drawing and the figures to an instant. */
    private void instant(UtcTime moment) {
        at = moment;
        pane.instant(moment);
        sheets.instant(moment);
        scenes.ask(new Question(bar.planet(), bar.site(), at));
        askFigures();
    }

    private void askFigures() {
        figures.ask(new InstantFacts.Question(
                wish(), at, facts.captureS(), facts.system(bar.planet()), facts.longitudeDeg()));
    }

    private void noScene(String why) {
        pane.showNothing();
        context.say(why);
    }

    private void showChosen() {
        Optional<Happening> event = sheets.chosen();
        pane.choose(event);
        List<ArchivedPicture> near = event.map(e -> NearPictures.near(
                        context.shelf().pictures(), bar.planet(), e.from().toInstant(), e.to().toInstant()))
                .orElse(List.of());
        details.show(event, bar.site(), near);
    }
}
