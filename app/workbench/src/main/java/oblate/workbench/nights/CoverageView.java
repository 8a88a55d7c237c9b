/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BorderLayout;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongConsumer;
import javax.swing.BorderFactory;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import oblate.archive.ArchivedPicture;
import oblate.image.CaptureTime;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.NightName;
import oblate.workbench.words.Texts;

/** The coverage map of one season, with a choice of seasons and words for what is pointed at. */
final class CoverageView extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(CoverageView.class);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM uuuu", Locale.ENGLISH);
    private final transient PanelContext context;
    private final transient SystemChoice systems;
    private final JComboBox<String> seasons = new JComboBox<>();
    private final JLabel sum = new JLabel(" ");
    private final JLabel told = new JLabel(" ");
    private final CoverageMap map;
    private final JScrollPane scroll;
    private transient List<List<LocalDate>> dates = List.of();
    private transient List<ArchivedPicture> pictures = List.of();
    private transient Optional<SeasonCoverage> coverage = Optional.empty();
    private long asked;
    private boolean filling;

    CoverageView(PanelContext context, SystemChoice systems, LongConsumer whenChosen) {
        super(new BorderLayout());
        this.context = context;
        this.systems = systems;
        setOpaque(false);
        map = new CoverageMap(context::palette, this::tell, whenChosen);
        seasons.setName("coverage.season");
        seasons.setToolTipText(TEXTS.text("coverage.season.tip", Integer.toString(SeasonCoverage.SEASON_GAP_DAYS)));
        seasons.addActionListener(e -> {
            if (!filling) {
                compute();
            }
        });
        told.setName("coverage.told");
        sum.setName("coverage.sum");
        JPanel head =
                new JPanel(new MigLayout("insets 0 16 4 16, gap 12, fillx, hidemode 3", "[][grow,fill]", "[28!]"));
        head.setOpaque(false);
        head.add(seasons);
        head.add(sum, "wmin 0");
        JPanel foot = new JPanel(new MigLayout("insets 4 16 6 16, fillx", "[grow,fill]"));
        foot.setOpaque(false);
        foot.add(told, "wmin 0");
        scroll = new JScrollPane(map);
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.getVerticalScrollBar().setUnitIncrement(24);
        scroll.getViewport().addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                map.setRoom(scroll.getViewport().getHeight());
            }
        });
        add(head, BorderLayout.NORTH);
        add(scroll, BorderLayout.CENTER);
        add(foot, BorderLayout.SOUTH);
        tell(Optional.empty());
    }

    @Override
    public boolean requestFocusInWindow() {
        return map.requestFocusInWindow();
    }

    /** Shows the season of the chosen picture among these, or else the newest. */
    void show(List<ArchivedPicture> found) {
        pictures = found;
        String planet = context.planet().id();
        dates = SeasonCoverage.seasons(found.stream()
                .filter(p -> p.planetId().equals(Optional.of(planet)))
                .flatMap(p -> p.night().stream())
                .distinct()
                .sorted()
                .toList());
        filling = true;
        seasons.removeAllItems();
        dates.forEach(d -> seasons.addItem(name(d)));
        seasons.setVisible(dates.size() > 1);
        Optional<LocalDate> chosen = context.selection()
                .pictureId()
                .flatMap(context.shelf()::picture)
                .flatMap(ArchivedPicture::night);
        int wanted = dates.size() - 1;
        for (int i = 0; i < dates.size(); i++) {
            wanted = chosen.filter(dates.get(i)::contains).isPresent() ? i : wanted;
        }
        seasons.setSelectedIndex(wanted);
        filling = false;
        compute();
    }

    /** Takes on the colours of another theme. */
    void lookChanged() {
        sum.setForeground(context.palette().quietInk());
        told.setForeground(context.palette().quietInk());
    }

    private static String name(List<LocalDate> nights) {
        String from = MONTH.format(nights.get(0));
        String to = MONTH.format(nights.get(nights.size() - 1));
        return from.equals(to) ? from : from + " – " + to;
    }

    void compute() {
        int index = seasons.getSelectedIndex();
        List<LocalDate> nights = index < 0 ? List.of() : dates.get(index);
        PlanetModel planet = context.planet();
        RotationSystem system = systems.of(planet);
        LocalDate first = nights.isEmpty() ? LocalDate.MAX : nights.get(0);
        LocalDate last = nights.isEmpty() ? LocalDate.MIN : nights.get(nights.size() - 1);
        List<ArchivedPicture> of = pictures.stream()
                .filter(p -> p.night()
                        .filter(n -> !n.isBefore(first) && !n.isAfter(last))
                        .isPresent())
                .toList();
        long mine = ++asked;
        context.background().aside(() -> SeasonCoverage.of(context.sky(), planet, system, of), made -> {
            if (mine == asked) {
                coverage = Optional.of(made);
                map.show(coverage);
                context.selection()
                        .pictureId()
                        .flatMap(context.shelf()::picture)
                        .flatMap(ArchivedPicture::night)
                        .ifPresent(map::bringIntoView);
                say(made);
                tell(Optional.empty());
            }
        });
    }

    private void say(SeasonCoverage made) {
        sum.setForeground(context.palette().quietInk());
        if (made.nights().isEmpty()) {
            sum.setText(" ");
            return;
        }
        int seen = Coverage.seenDeg(made.bestOfAllDeg());
        List<String> gaps = made.gaps();
        String missing = gaps.isEmpty()
                ? TEXTS.text("coverage.complete")
                : gaps.size() > 4
                        ? TEXTS.text(
                                "coverage.gaps.more",
                                String.join(", ", gaps.subList(0, 4)),
                                Integer.toString(gaps.size() - 4))
                        : TEXTS.text("coverage.gaps", String.join(", ", gaps));
        sum.setText(TEXTS.text(
                "coverage.sum",
                made.planet().label(),
                made.system().label(),
                Long.toString(seen),
                Integer.toString(Coverage.WITHIN_DEG),
                TEXTS.counted("found.nights", made.nights().size()),
                missing));
        sum.setToolTipText(String.join(", ", gaps));
    }

    private void tell(Optional<CoverageMap.Place> place) {
        told.setForeground(context.palette().quietInk());
        boolean none = coverage.filter(c -> !c.nights().isEmpty()).isEmpty();
        told.setText(place.map(this::words).orElse(none ? " " : TEXTS.text("coverage.tip")));
    }

    private String words(CoverageMap.Place place) {
        SeasonCoverage.Night night = place.night();
        int emission = night.bestDeg()[place.lonDeg()];
        String where = NightName.of(night.evening()) + ", "
                + coverage.map(c -> c.system().label()).orElse("") + " " + place.lonDeg() + "°:";
        if (emission >= SeasonCoverage.UNSEEN_DEG) {
            return lastSeen(place)
                    .map(last -> TEXTS.text("coverage.unseen.since", where, last))
                    .orElseGet(() -> TEXTS.text("coverage.unseen", where));
        }
        String best = context.shelf()
                .picture(night.bestPicture()[place.lonDeg()])
                .flatMap(ArchivedPicture::time)
                .map(CaptureTime::midUtc)
                .map(Figures::clockUt)
                .map(t -> TEXTS.text("coverage.best.at", where, Long.toString(emission), t))
                .orElseGet(() -> TEXTS.text("coverage.best", where, Long.toString(emission)));
        return emission > Coverage.WITHIN_DEG ? TEXTS.text("coverage.slantwise", best) : best;
    }

    private Optional<String> lastSeen(CoverageMap.Place place) {
        return coverage.stream()
                .flatMap(c -> c.nights().stream())
                .filter(n -> n.evening().isBefore(place.night().evening())
                        && n.bestDeg()[place.lonDeg()] <= Coverage.WITHIN_DEG)
                .reduce((a, b) -> b)
                .map(n -> NightName.of(n.evening()));
    }
}
