/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.event.HierarchyEvent;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureSearch;
import oblate.workbench.PanelContext;
import oblate.workbench.Selection;
import oblate.workbench.actions.Deed;
import oblate.workbench.pictures.NightGroup;
import oblate.workbench.pictures.PictureState;
import oblate.workbench.words.Texts;

/** The component of the panel of nights: three views of the same pictures, the search above them, the inspector beside them. */
final class NightsView extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(NightsView.class);
    private final transient PanelContext context;
    private final transient SystemChoice systems;
    private final transient ChosenPictures chosen;
    private final transient PictureQuery.Lookup lookup;
    private final transient FilingDesk filing;
    private final transient FilePicker picker;
    private final PictureWall wall;
    private final NightsBar bar;
    private final NightsInspector inspector;
    private final JPanel views = new JPanel(new CardLayout());
    private final transient Corrector corrector;
    private transient Optional<CoverageView> coverage = Optional.empty();
    private transient Optional<TodoView> todo = Optional.empty();
    private transient Optional<Completions> completions = Optional.empty();
    private transient List<ArchivedPicture> found = List.of();
    private transient Optional<Selection.Span> span = Optional.empty();
    private NightsBar.View shown = NightsBar.View.PICTURES;
    private long asked;

    NightsView(PanelContext context) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        systems = new SystemChoice(context.workbench().planets(), context.settings());
        chosen = new ChosenPictures(context.selection());
        lookup = PictureQuery.Lookup.of(systems, p -> PictureState.of(p, context.shelf()));
        corrector = new Corrector(context);
        inspector = new NightsInspector(context, chosen, corrector);
        wall = new PictureWall(context, systems, chosen, context::openPicture);
        bar = new NightsBar(context, systems, new BarListener());
        SlideIn sheets = new SlideIn(context.settings().flag("motion", true));
        filing = new FilingDesk(context, sheets, () -> views.requestFocusInWindow());
        picker = new FilePicker(this, context.settings(), filing::ask);
        JPanel top = new JPanel(new BorderLayout());
        top.setOpaque(false);
        top.add(bar, BorderLayout.NORTH);
        top.add(sheets, BorderLayout.CENTER);
        add(top, BorderLayout.NORTH);
        add(views, BorderLayout.CENTER);
        JScrollPane scroll = new JScrollPane(wall);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.getVerticalScrollBar().setUnitIncrement(32);
        views.setOpaque(false);
        views.add(scroll, NightsBar.View.PICTURES.name());
        connect();
    }

    /** The coverage, made when it is first looked at. */
    private CoverageView coverage() {
        if (coverage.isEmpty()) {
            coverage = Optional.of(new CoverageView(context, systems, this::goTo));
            views.add(coverage.get(), NightsBar.View.COVERAGE.name());
        }
        return coverage.get();
    }

    /** The list of things to do, made when the pictures have been seen: its count stands in the bar. */
    private TodoView todo() {
        if (todo.isEmpty()) {
            todo = Optional.of(new TodoView(
                    context,
                    new Remedies(context, corrector, inspector::begin)::of,
                    t -> chosen.set(t.pictures(), t.first()),
                    bar::setTodoCount));
            views.add(todo.get(), NightsBar.View.TO_DO.name());
        }
        return todo.get();
    }

    private void connect() {
        context.showInInspector(inspector);
        context.takeDroppedFiles(filing::ask);
        actions();
        context.shelf().whenChanged(() -> {
            completions = Optional.empty();
            context.background().soon(() -> todo().refresh());
            search();
        });
        chosen.whenChanged(inspector::refresh);
        context.selection().whenChanged(this::followSpan);
        context.whenLookChanged(this::lookChanged);
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0 && isShowing()) {
                bar.fillSystems();
            }
        });
        search();
    }

    private void actions() {
        context.offer(Deed.of(TEXTS, "nights.add", picker::open));
        context.offer(Deed.of(TEXTS, "nights.search", whileShown(bar::search)));
        context.offer(Deed.of(TEXTS, "nights.everything", whileShown(this::showEverything)));
        for (NightsBar.View view : NightsBar.View.values()) {
            context.offer(Deed.of(TEXTS, view.deed(), whileShown(() -> show(view))));
        }
        context.offer(Deed.of(
                TEXTS,
                "nights.correct",
                whileShown(() -> inspector.begin(List.copyOf(chosen.ids()), FactField.PLANET, "", ""))));
        context.offer(Deed.of(TEXTS, "nights.reported", whileShown(this::noteReported)));
    }

    private void showEverything() {
        bar.clearSearch();
        context.selection().chooseSpan(Optional.empty());
    }

    private Runnable whileShown(Runnable deed) {
        return () -> {
            if (isShowing()) {
                deed.run();
            }
        };
    }

    @Override
    public boolean requestFocusInWindow() {
        return switch (shown) {
            case PICTURES -> wall.requestFocusInWindow();
            case COVERAGE -> coverage().requestFocusInWindow();
            case TO_DO -> todo().requestFocusInWindow();
        };
    }

    private void show(NightsBar.View view) {
        shown = view;
        bar.setView(view);
        if (view == NightsBar.View.COVERAGE) {
            coverage().show(found);
        } else if (view == NightsBar.View.TO_DO) {
            todo();
        }
        ((CardLayout) views.getLayout()).show(views, view.name());
        requestFocusInWindow();
        if (view == NightsBar.View.TO_DO) {
            todo().lookAtFirst();
        }
    }

    /** Goes from another view to a picture on the wall. */
    private void goTo(long pictureId) {
        chosen.only(pictureId);
        show(NightsBar.View.PICTURES);
        SwingUtilities.invokeLater(() -> wall.bringToTop(pictureId));
    }

    private void lookChanged() {
        bar.lookChanged();
        inspector.refresh();
        wall.systemChanged();
        coverage.ifPresent(CoverageView::lookChanged);
        todo.ifPresent(TodoView::lookChanged);
        filing.lookChanged();
    }

    private void noteReported() {
        List<Long> ids = List.copyOf(chosen.ids());
        context.background()
                .quietly(
                        () -> {
                            context.archive().noteReported(ids, TEXTS.text("why.reported"));
                            return ids.size();
                        },
                        count -> {
                            context.say(TEXTS.counted("reported", count));
                            context.shelf().refresh();
                        });
    }

    private void followSpan() {
        if (!span.equals(context.selection().span())) {
            span = context.selection().span();
            search();
        }
    }

    private void search() {
        String text = bar.searched();
        PictureQuery query = PictureQuery.of(text, lookup);
        long mine = ++asked;
        if (query.words().isEmpty()) {
            show(query, context.shelf().pictures(), text);
            return;
        }
        PictureSearch all = PictureSearch.all();
        PictureSearch search = new PictureSearch(
                all.planetId(),
                all.night(),
                all.from(),
                all.to(),
                all.meridian(),
                all.observer(),
                all.kit(),
                all.filter(),
                Optional.of(query.words()),
                all.fitted(),
                all.marked(),
                0);
        context.background().quietly(() -> context.archive().pictures(search), withWords -> {
            if (mine == asked) {
                show(query, withWords, text);
            }
        });
    }

    private void show(PictureQuery query, List<ArchivedPicture> withWords, String text) {
        List<ArchivedPicture> inSpan = span.isEmpty()
                ? withWords
                : withWords.stream().filter(p -> isIn(p, span.get())).toList();
        found = query.among(inSpan);
        List<NightGroup> nights = NightGroup.of(found);
        FoundWords words = new FoundWords(context.shelf(), span, text);
        wall.show(nights, words.nothing(), query.problem().orElse(query.wayOut(inSpan)) + words.wayBack());
        int total = context.shelf().pictures().size();
        bar.say(
                query.problem().orElse(total == 0 ? "" : words.count(found.size(), nights.size())),
                query.problem().isPresent());
        bar.setSpan(span.map(FoundWords::stretch));
        bar.fillSystems();
        inspector.refresh();
        if (shown == NightsBar.View.COVERAGE) {
            coverage().show(found);
        }
    }

    private static boolean isIn(ArchivedPicture picture, Selection.Span span) {
        return picture.time().filter(t -> span.contains(t.midUtc())).isPresent();
    }

    /** What the bar above the views asks for. */
    private final class BarListener implements NightsBar.Listener {
        @Override
        public void searchChanged() {
            search();
        }

        @Override
        public void searchLeft() {
            NightsView.this.requestFocusInWindow();
        }

        @Override
        public void viewChosen(NightsBar.View view) {
            show(view);
        }

        @Override
        public void systemChosen() {
            wall.systemChanged();
            coverage.ifPresent(CoverageView::compute);
            search();
        }

        @Override
        public void addWanted() {
            picker.open();
        }

        @Override
        public Completions completions() {
            if (completions.isEmpty()) {
                completions = Optional.of(Completions.of(context.shelf().pictures(), lookup));
            }
            return completions.get();
        }
    }
}
