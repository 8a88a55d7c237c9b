/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JLabel;
import javax.swing.JPopupMenu;
import oblate.archive.StoredMark;
import oblate.workbench.PanelContext;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;

/** What can be done with a mark of the chart: its picture opened, the mark moved to another feature's track with a reason. On the event thread. */
final class MarkMover {
    private static final Texts TEXTS = Texts.of(MarkMover.class);
    private static final int MOST_RIVALS = 8;
    private final PanelContext context;
    private final DriftCanvas canvas;
    private final ReasonBar reasons;
    private final Supplier<DriftData> data;
    private final Consumer<DriftData.Point> open;

    /**
     * @param data features and marks as last read
     * @param open opens a mark's picture
     */
    MarkMover(
            PanelContext context,
            DriftCanvas canvas,
            ReasonBar reasons,
            Supplier<DriftData> data,
            Consumer<DriftData.Point> open) {
        this.context = context;
        this.canvas = canvas;
        this.reasons = reasons;
        this.data = data;
        this.open = open;
    }

    /** Shows the menu of a mark beside it. */
    void menuAtMark(DriftData.Point point) {
        canvas.hits()
                .flatMap(h -> h.dot(point).map(h::place))
                .ifPresent(at -> menu(point, (int) at.getX(), (int) at.getY()));
    }

    /** Shows the menu of a mark at a place of the canvas. */
    void menu(DriftData.Point point, int x, int y) {
        JPopupMenu menu = new JPopupMenu();
        menu.setName("drift.menu");
        menu.add(Deed.of(TEXTS, "mark.open", () -> open.accept(point)));
        menu.addSeparator();
        List<DriftData.Rival> rivals = data.get().rivals(point);
        for (DriftData.Rival rival : rivals.subList(0, Math.min(MOST_RIVALS, rivals.size()))) {
            String words = rival.offDeg()
                    .map(d -> TEXTS.text("mark.move", rival.feature(), Figures.fixed(Math.abs(d), 1)))
                    .orElseGet(() -> TEXTS.text("mark.move.nodrift", rival.feature()));
            menu.add(Deed.named("mark.move", words, "", () -> askToMove(point, rival.feature())));
        }
        if (rivals.isEmpty()) {
            menu.add(new JLabel("  " + TEXTS.text("mark.move.none") + "  "));
        }
        menu.show(canvas, x, y);
    }

    /** Asks for the reason, then moves the mark. */
    void askToMove(DriftData.Point point, String feature) {
        Optional<StoredMark> mark = data.get().mark(point);
        if (mark.isEmpty()) {
            return;
        }
        Instant time = data.get().measured(point).time();
        reasons.ask(
                TEXTS.text("move.ask", Figures.dayUt(time), Figures.clockUt(time), point.feature(), feature),
                context.palette(),
                reason -> move(mark.get(), feature, reason),
                canvas::requestFocusInWindow);
    }

    private void move(StoredMark mark, String feature, String reason) {
        new MarkMove(mark, feature, reason).start(context, stored -> {
            context.selection().chooseMark(stored.mark().pictureId(), stored.featureName(), stored.id());
            context.shelf().refresh();
        });
        canvas.requestFocusInWindow();
    }
}
