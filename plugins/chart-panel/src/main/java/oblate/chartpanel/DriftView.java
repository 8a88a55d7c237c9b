/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.event.HierarchyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JPopupMenu;
import javax.swing.JSplitPane;
import oblate.archive.StoredMark;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelContext;
import oblate.workbench.actions.Deed;
import oblate.workbench.words.Texts;

/** The panel of drifts: features on the left; longitudes, ladder and residuals on one axis of time; the chosen feature's figures in the inspector. */
final class DriftView extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(DriftView.class);

    private static final int LADDER_STEP_PX = 20;

    private final transient PanelContext context;
    private final transient FeatureList features;
    private final DriftBar bar;
    private final ReasonBar reasons = new ReasonBar();
    private final DriftCanvas canvas;
    private final DriftInspector inspector;
    private final JPanel place = new JPanel(new CardLayout());
    private final JLabel empty = new JLabel(" ", JLabel.CENTER);
    private final FootNote notes = new FootNote("drift.notes");
    private final transient LadderWork ladder;
    private final transient DriftKeeping keeping;
    private final transient MarkMover mover;
    private final transient LadderWidth ladderWidth;
    private final transient FirstFeature first;
    private transient DriftData data = DriftData.NONE;
    private boolean stale = true;

    DriftView(PanelContext context) {
        super(new BorderLayout());
        this.context = context;
        setOpaque(false);
        ladderWidth = new LadderWidth(context.settings());
        first = new FirstFeature(context);
        bar = new DriftBar(context, new BarEvents());
        canvas = new DriftCanvas(context.background(), context::palette, this::scene, new CanvasEvents());
        inspector = new DriftInspector(context);
        ladder = new LadderWork(context, this::ladderTold);
        keeping = new DriftKeeping(this, context, bar, canvas, ladder, () -> data, this::chosen);
        mover = new MarkMover(context, canvas, reasons, () -> data, this::open);
        features = new FeatureList(context, this::featureChosen);
        layOut();
        bindKeys();
        context.showInInspector(inspector);
        context.shelf().whenChanged(this::read);
        context.selection().whenChanged(this::followSelection);
        context.whenLookChanged(this::lookChanged);
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0 && isShowing() && stale) {
                read();
            }
        });
    }

    private void layOut() {
        place.setOpaque(false);
        place.setName("chart");
        place.add(empty, "empty");
        place.add(canvas, "canvas");

        JSplitPane split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, features.scrolled(), place);
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setDividerLocation(context.settings().number("list", 324));
        split.addPropertyChangeListener(
                JSplitPane.DIVIDER_LOCATION_PROPERTY, e -> context.settings().keep("list", split.getDividerLocation()));
        JPanel top = new JPanel(new BorderLayout());
        top.setOpaque(false);
        top.add(bar, BorderLayout.NORTH);
        top.add(reasons, BorderLayout.SOUTH);
        add(top, BorderLayout.NORTH);
        add(split, BorderLayout.CENTER);
        add(notes, BorderLayout.SOUTH);
    }

    private void bindKeys() {
        key("drift.open", () -> canvas.chosen().ifPresent(this::open));
        key("drift.move", () -> canvas.chosen().ifPresent(mover::menuAtMark));
        key("drift.next", () -> step(1));
        key("drift.previous", () -> step(-1));
        key("drift.none", () -> choose(Optional.empty()));
        key("drift.whole", this::wholeTime);
        key("drift.closer", () -> canvas.zoom(1 / 1.4));
        key("drift.wider", () -> canvas.zoom(1.4));
        key("drift.ladder.wider", () -> widenLadder(LADDER_STEP_PX));
        key("drift.ladder.narrower", () -> widenLadder(-LADDER_STEP_PX));
        key("drift.ladder.usual", this::usualLadder);
        keeping.actions().forEach(context::offer);
    }

    private void key(String id, Runnable what) {
        context.offer(Deed.of(TEXTS, id, what).bind(canvas, WHEN_FOCUSED));
    }

    private void wholeTime() {
        canvas.show(Optional.empty());
        wantLadder();
    }

    private void read() {
        if (!isShowing()) {
            stale = true;
            return;
        }
        stale = false;
        bar.fillSystems();
        PlanetModel planet = context.planet();
        RotationSystem system = bar.system();
        boolean all = bar.others();
        context.background().promptly(() -> DriftData.of(context.archive(), planet, system, all), this::show);
    }

    private void show(DriftData fresh) {
        data = fresh;
        features.show(fresh.fits());
        ((CardLayout) place.getLayout()).show(place, fresh.fits().isEmpty() ? "empty" : "canvas");
        empty.setForeground(context.palette().quietInk());
        empty.setText(TEXTS.text(fresh.hidden() == 0 ? "empty.marks" : "empty.systems"));
        followSelection();
        first.choose(data.fits(), chosen().isPresent());
        featureChosen();
    }

    private void followSelection() {
        boolean other = features.follow(context.selection().featureName());
        canvas.choose(context.selection().markId().flatMap(data::pointOf));
        if (other) {
            featureChosen();
        } else {
            showFigures();
        }
    }

    private Optional<Fitted> chosen() {
        return features.chosen();
    }

    private void featureChosen() {
        wantLadder();
        redraw();
    }

    private void wantLadder() {
        if (!isShowing()) {
            return;
        }
        if (bar.wantsLadder() && !data.fits().isEmpty()) {
            ladder.want(
                    chosen(),
                    canvas.range(),
                    DriftScene.stripsWithRoom(ladderWidth.within(canvas.getWidth()), canvas.getHeight()));
        } else {
            ladder.none();
        }
    }

    private void ladderTold() {
        redraw();
    }

    private void lookChanged() {
        empty.setForeground(context.palette().quietInk());
        wantLadder();
        redraw();
    }

    private void redraw() {
        if (isShowing()) {
            canvas.redraw();
            showFigures();
        }
    }

    private Optional<DriftScene> scene() {
        if (data.fits().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new DriftScene(
                canvas.getWidth(),
                canvas.getHeight(),
                canvas.scale(),
                data.fits(),
                chosen().map(Fitted::name),
                bar.manner(),
                bar.look(chosen().map(Fitted::name)),
                canvas.range(),
                ladder.ladder(),
                ladder.words(),
                ladderWidth.within(canvas.getWidth())));
    }

    private void showFigures() {
        List<String> sentences = new ArrayList<>();
        ladder.ladder().ifPresent(l -> sentences.addAll(LadderDrawing.sentences(l, canvas.ladderLeftOut())));
        String mark = canvas.chosen().map(said()::mark).orElse("");
        inspector.show(chosen(), bar.until(), mark, sentences);
        notes.setForeground(context.palette().quietInk());
        notes.say(
                said().signs(bar.until().isPresent(), isCrowded()),
                data.fits().isEmpty() || bar.until().isPresent() ? "" : TEXTS.text("foot.hint"));
    }

    private boolean isCrowded() {
        return bar.wantsLadder() && canvas.getWidth() > 0 && ladderWidth.within(canvas.getWidth()) == 0;
    }

    private DriftWords said() {
        return new DriftWords(data, bar.system());
    }

    private void usualLadder() {
        ladderWidth.forget();
        wantLadder();
        redraw();
    }

    private void widenLadder(int byPx) {
        ladderWidth.keep(ladderWidth.within(canvas.getWidth()) + byPx, canvas.getWidth());
        wantLadder();
        redraw();
    }

    private void choose(Optional<DriftData.Point> point) {
        canvas.choose(point);
        Optional<StoredMark> mark = point.flatMap(data::mark);
        mark.ifPresentOrElse(
                m -> context.selection().chooseMark(m.mark().pictureId(), m.featureName(), m.id()),
                context.selection()::chooseNoMark);
        showFigures();
    }

    private void step(int places) {
        Optional<DriftData.Point> next = canvas.chosen()
                .flatMap(p -> data.step(p, places))
                .or(() -> canvas.chosen().isPresent()
                        ? Optional.empty()
                        : chosen().map(f -> new DriftData.Point(f.name(), 0)));
        next.ifPresent(p -> choose(Optional.of(p)));
    }

    private void open(DriftData.Point point) {
        data.mark(point).ifPresent(m -> {
            context.selection().chooseMark(m.mark().pictureId(), m.featureName(), m.id());
            context.openPicture(m.mark().pictureId());
        });
    }

    /** Follows the choices above the chart. */
    private final class BarEvents implements DriftBar.Events {
        @Override
        public void sourceChanged() {
            read();
        }

        @Override
        public void viewChanged() {
            redraw();
        }

        @Override
        public void ladderChanged() {
            wantLadder();
        }

        @Override
        public void keep(JButton from) {
            JPopupMenu menu = new JPopupMenu();
            keeping.actions().forEach(menu::add);
            menu.show(from, 0, from.getHeight());
        }
    }

    /** Follows what is done on the canvas. */
    private final class CanvasEvents implements DriftCanvas.Events {
        @Override
        public void chosen(DriftData.Point point) {
            choose(Optional.of(point));
        }

        @Override
        public void opened(DriftData.Point point) {
            open(point);
        }

        @Override
        public void moved(DriftData.Point point, String feature) {
            mover.askToMove(point, feature);
        }

        @Override
        public void menu(DriftData.Point point, int x, int y) {
            mover.menu(point, x, y);
        }

        @Override
        public void strip(long pictureId, boolean open) {
            if (open) {
                context.openPicture(pictureId);
            } else {
                context.selection().choosePicture(pictureId);
            }
        }

        @Override
        public void ranged() {
            wantLadder();
        }

        @Override
        public String words(DriftData.Point point) {
            return said().mark(point);
        }

        @Override
        public void drawn() {
            showFigures();
        }

        @Override
        public void ladderWide(int px, boolean settled) {
            ladderWidth.keep(px, canvas.getWidth());
            redraw();
            if (settled) {
                // More or fewer strips find room now.
                wantLadder();
            }
        }

        @Override
        public void ladderUsual() {
            usualLadder();
        }
    }
}
