/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.event.HierarchyEvent;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.Timer;
import oblate.archive.Site;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanCautions;
import oblate.drift.plan.PlanItem;
import oblate.workbench.NewestOnly;
import oblate.workbench.PanelContext;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.Palette;
import oblate.workbench.words.Texts;

/** The panel: choices above, a night or a month in the middle, cautions at the foot. */
final class TonightView extends JPanel implements ChoiceBar.Listener {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(TonightView.class);
    private static final int NOW_MS = 30_000;
    private final transient PanelContext context;
    private final transient Clock clock;
    private final transient Followed followed;
    private final transient NightPointer pointer = new NightPointer();
    private final JPanel cards = new JPanel(new CardLayout());
    private final PlaceChoice place;
    private final ChoiceBar bar;
    private final SmearBar smear;
    private final Limits limits;
    private final NightPage night;
    private final MonthPage month;
    private final NightFigures figures;
    private final Sentences cautions;
    private final transient PlanDeeds deeds;
    private final transient NewestOnly<Asked, NightSheet> nights;
    private transient Optional<LocalDate> date = Optional.empty();
    private transient List<String> told = PlanCautions.always();
    private boolean planetTaken;
    private boolean stale = true;

    TonightView(PanelContext context, Clock clock) {
        super(new BorderLayout());
        this.context = context;
        this.clock = clock;
        setOpaque(false);
        cards.setOpaque(false);
        followed = new Followed(context.archive());
        PlanFinder finder = new PlanFinder(context.sky(), followed, clock);
        deeds = new PlanDeeds(context, this, clock, this::plan, this::placeName);
        place = new PlaceChoice(context.settings(), this::ask, context::say);
        smear = new SmearBar(context.settings(), this::ask);
        limits = new Limits(context.settings(), this::ask);
        bar = new ChoiceBar(context.workbench().planets(), place, smear, this, context::say);
        night = new NightPage(context::palette, pointer, clock::instant, smear, this::goTo);
        month = new MonthPage(context::palette, context.background(), finder, this::goTo, this::showCautions);
        figures = new NightFigures(context::palette, limits);
        cautions = new Sentences("tonight.cautions", context::palette, "6 16 6 16");
        nights = new NewestOnly<>(context.background(), finder::night, this::show, this::showProblem);
        if (context.workbench().planets().isEmpty()) {
            add(new JLabel(TEXTS.text("empty.planets"), JLabel.CENTER), BorderLayout.CENTER);
            return;
        }
        cards.add(new PlaceAsked(place::enter), "asked");
        cards.add(night, "night");
        cards.add(month, "month");
        add(bar, BorderLayout.NORTH);
        add(cards, BorderLayout.CENTER);
        add(cautions, BorderLayout.SOUTH);
        offerDeeds();
        listen();
        figures.choose(Optional.empty());
        context.showInInspector(figures);
        showCautions();
    }

    private void offerDeeds() {
        offer("calendar", deeds::saveCalendar);
        offer("copy", deeds::copyText);
        offer("csv", deeds::saveCsv);
        context.offer(Deed.of(TEXTS, "deed.before", () -> stepped(-1)));
        context.offer(Deed.of(TEXTS, "deed.after", () -> stepped(1)));
    }

    private void offer(String key, Runnable what) {
        Deed deed = Deed.of(TEXTS, "deed." + key, what);
        bar.offer("tonight." + key, deed);
        context.offer(deed);
    }

    private void listen() {
        pointer.whenChosen(this::followChoice);
        context.selection().whenChanged(this::followSelection);
        context.shelf().whenChanged(() -> {
            followed.forget();
            stale = true;
            readIfShowing();
        });
        context.whenLookChanged(() -> {
            figures.choose(pointer.chosen());
            showCautions();
            night.sheet().ifPresent(this::showNight);
            month.followLook();
        });
        Timer now = new Timer(NOW_MS, e -> night.repaintNow());
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0) {
                readIfShowing();
                if (isShowing()) {
                    now.start();
                } else {
                    now.stop();
                }
            }
        });
    }

    /** The figures of what is chosen; a feature is chosen for the whole window, the Drift panel too. */
    private void followChoice() {
        figures.choose(pointer.chosen());
        pointer.chosen().filter(i -> i.kind() == PlanItem.Kind.CROSSING).ifPresent(i -> context.selection()
                .chooseFeature(Optional.of(i.subject())));
    }

    /** A feature chosen elsewhere in the window is chosen here too, when the night has it. */
    private void followSelection() {
        Optional<String> feature = context.selection().featureName();
        boolean same = pointer.chosen().map(PlanItem::subject).equals(feature);
        if (feature.isPresent() && !same) {
            List<PlanItem> crossings = night.sheet().stream()
                    .flatMap(s -> s.night().items().stream())
                    .filter(i ->
                            i.kind() == PlanItem.Kind.CROSSING && i.subject().equals(feature.get()))
                    .toList();
            crossings.stream()
                    .filter(PlanItem::isObservable)
                    .findFirst()
                    .or(() -> crossings.stream().findFirst())
                    .ifPresent(i -> pointer.choose(Optional.of(i)));
        }
    }

    private void readIfShowing() {
        if (isShowing() && stale) {
            stale = false;
            context.background().quietly(() -> context.archive().sites(), this::showSites);
        }
    }

    private void showSites(List<Site> sites) {
        place.show(sites);
        if (!context.shelf().isRead()) {
            // the pictures tell the planet; they are being read, and this is called again then
            stale = true;
            return;
        }
        if (!planetTaken) {
            planetTaken = true;
            bar.choose(context.planet());
        }
        ask();
    }

    private Optional<Asked> asked() {
        return place.place()
                .map(p ->
                        new Asked(bar.planet(), p, date, limits.sunBelowDeg(), limits.minAltitudeDeg(), smear.limit()));
    }

    private void ask() {
        Optional<Asked> asked = asked();
        ((CardLayout) cards.getLayout()).show(cards, asked.isEmpty() ? "asked" : bar.isMonth() ? "month" : "night");
        if (asked.isEmpty()) {
            figures.showNothing();
        } else if (bar.isMonth()) {
            YearMonth wanted = YearMonth.from(shownDate());
            bar.showDate(shownDate());
            smear.say(TEXTS.text("longest.month"));
            month.ask(asked.get(), wanted);
        } else {
            nights.ask(asked.get());
        }
    }

    /** The date that is shown: the one chosen, else that of the night shown, else today's. */
    private LocalDate shownDate() {
        return date.or(() -> night.sheet().map(s -> s.night().date())).orElseGet(() -> LocalDate.now(clock));
    }

    private void show(NightSheet sheet) {
        bar.showDate(sheet.night().date());
        showNight(sheet);
        showCautions(sheet.plan());
        if (pointer.chosen().isEmpty()) {
            followSelection();
        }
    }

    private void showNight(NightSheet sheet) {
        night.show(sheet);
        figures.show(sheet);
    }

    private void showProblem(String sentence) {
        night.showProblem(sentence);
        figures.showNothing();
    }

    private void showCautions(Plan plan) {
        told = plan.cautions();
        showCautions();
    }

    /** The Sun first, and so that it is seen. */
    private void showCautions() {
        cautions.show(told.stream().filter(TonightView::isOfTheSun).toList(), Palette::alarm);
        cautions.add(told.stream().filter(c -> !isOfTheSun(c)).toList(), Palette::ink);
    }

    private static boolean isOfTheSun(String caution) {
        return caution.startsWith("THE SUN");
    }

    @Override
    public void changed() {
        ask();
    }

    @Override
    public void stepped(int direction) {
        LocalDate from = shownDate();
        date = Optional.of(bar.isMonth() ? from.plusMonths(direction) : from.plusDays(direction));
        ask();
    }

    @Override
    public void dated(LocalDate evening) {
        date = Optional.of(evening);
        ask();
    }

    @Override
    public void tonight() {
        date = Optional.empty();
        bar.showNight();
        ask();
    }

    private void goTo(LocalDate evening) {
        bar.showNight();
        dated(evening);
    }

    /** What is shown: the night or the month. */
    private Optional<Plan> plan() {
        return bar.isMonth() ? month.plan() : night.sheet().map(NightSheet::plan);
    }

    private String placeName() {
        return place.place().map(Place::name).orElse("");
    }
}
