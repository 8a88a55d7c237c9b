/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.awt.Component;
import java.awt.Point;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import oblate.archive.Archive;
import oblate.archive.HistoryEntry;
import oblate.archive.MarkSearch;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.archive.testing.PracticePictures;
import oblate.sky.PlanetModel;
import oblate.workbench.WorkbenchContext;
import oblate.workbench.testing.OpenWindow;
import oblate.workbench.testing.PanelJourney;
import org.junit.jupiter.api.Test;

/** The panel of drifts in the window, on a screen. */
class DriftWindowTest extends PanelJourney {
    private static final Instant START = Instant.parse("2024-11-01T21:00:00Z");

    private void settle() {
        window.settle();
    }

    /** Two ovals 40 degrees apart on ten nights; on the sixth both marks are there. */
    private void season() throws IOException {
        WorkbenchContext context = context();
        PlanetModel jupiter = context.planets().stream()
                .filter(p -> p.id().equals("jupiter"))
                .findFirst()
                .orElseThrow();
        try (Archive archive = context.archive()) {
            PracticePictures pictures = new PracticePictures(archive, context.planets(), folder);
            Optional<Long> a = Optional.of(pictures.feature("oval A", "oval", Optional.empty()));
            Optional<Long> b = Optional.of(pictures.feature("oval B", "oval", Optional.empty()));
            for (int i = 0; i < 10; i++) {
                StoredFit fit =
                        pictures.fitted(pictures.filed(i, PracticePictures.facts(START.plusSeconds(345_600L * i))));
                archive.addMark(PracticePictures.mark(jupiter, fit, a, 120 - 0.9 * i, -22));
                archive.addMark(PracticePictures.mark(jupiter, fit, b, 160 - 1.1 * i, -22));
            }
        }
    }

    private DriftCanvas canvas() {
        return (DriftCanvas) window.find("drift.canvas");
    }

    private Point at(String feature, int index) {
        return OpenWindow.ask(() -> {
            DriftHits hits = canvas().hits().orElseThrow();
            Point2D p = hits.place(hits.dot(new DriftData.Point(feature, index)).orElseThrow());
            return new Point((int) Math.round(p.getX()), (int) Math.round(p.getY()));
        });
    }

    private void mouse(int id, Point where, int clicks) {
        DriftCanvas canvas = canvas();
        int buttons =
                id == MouseEvent.MOUSE_DRAGGED || id == MouseEvent.MOUSE_PRESSED ? MouseEvent.BUTTON1_DOWN_MASK : 0;
        OpenWindow.act(() -> canvas.dispatchEvent(
                new MouseEvent(canvas, id, 0, buttons, where.x, where.y, clicks, false, MouseEvent.BUTTON1)));
    }

    private void click(Point where, int clicks) {
        mouse(MouseEvent.MOUSE_PRESSED, where, clicks);
        mouse(MouseEvent.MOUSE_RELEASED, where, clicks);
        mouse(MouseEvent.MOUSE_CLICKED, where, clicks);
        settle();
    }

    private void key(int code) {
        DriftCanvas canvas = canvas();
        OpenWindow.act(() -> {
            canvas.requestFocusInWindow();
            canvas.getActionForKeyStroke(KeyStroke.getKeyStroke(code, 0)).actionPerformed(null);
        });
        settle();
    }

    private List<StoredMark> marksOf(String feature) {
        List<StoredMark> of = new ArrayList<>();
        for (StoredMark mark : window.context().archive().marks(MarkSearch.all())) {
            if (mark.featureName().equals(Optional.of(feature))) {
                of.add(mark);
            }
        }
        return of;
    }

    private void undo() {
        OpenWindow.act(() -> {
            JMenuBar menus = window.workbench().frame().getJMenuBar();
            for (int m = 0; m < menus.getMenuCount(); m++) {
                for (int i = 0; i < menus.getMenu(m).getItemCount(); i++) {
                    JMenuItem item = menus.getMenu(m).getItem(i);
                    if (item != null && item.getText().startsWith("Undo")) {
                        item.doClick();
                    }
                }
            }
        });
    }

    private boolean isShown(Component component) {
        return OpenWindow.ask(component::isShowing);
    }

    @Test
    void theLadderGivesWayToTheChartAndKeepsTheWidthItIsGiven() throws IOException {
        season();
        open("longitude-date");
        OpenWindow.await("the ladder", () -> canvas().divider().isPresent());
        assertThat(chartWidth()).isGreaterThan(250);
        int before = divider();
        int y = OpenWindow.ask(() -> canvas().getHeight() / 2);
        mouse(MouseEvent.MOUSE_PRESSED, new Point(before, y), 1);
        mouse(MouseEvent.MOUSE_DRAGGED, new Point(before - 30, y), 1);
        mouse(MouseEvent.MOUSE_DRAGGED, new Point(before - 60, y), 1);
        mouse(MouseEvent.MOUSE_RELEASED, new Point(before - 60, y), 1);
        settle();
        assertThat(divider()).isEqualTo(before - 60);
        window.close();
        open("longitude-date");
        OpenWindow.await("the ladder again", () -> canvas().divider().isPresent());
        assertThat(divider()).isEqualTo(before - 60);
        mouse(MouseEvent.MOUSE_PRESSED, new Point(before - 60, y), 2);
        mouse(MouseEvent.MOUSE_RELEASED, new Point(before - 60, y), 2);
        settle();
        assertThat(divider()).isEqualTo(before);
    }

    private int divider() {
        return OpenWindow.ask(() -> canvas().divider().getAsInt());
    }

    @Test
    void anEmptyArchiveSaysWhatToDo() {
        open("longitude-date");
        assertThat(isShown(canvas())).isFalse();
    }

    /** A feature is chosen when the panel is first filled; when none is, the chart has the whole width. */
    @Test
    void theFirstFeatureIsChosenAndWithoutOneTheChartIsWide() throws IOException {
        season();
        open("longitude-date");
        JTable list = (JTable) window.find("drifts");
        assertThat(OpenWindow.ask(() -> list.getValueAt(list.getSelectedRow(), 0)))
                .isEqualTo("oval A");
        double beside = chartWidth();
        OpenWindow.act(list::clearSelection);
        settle();
        assertThat(chartWidth()).isGreaterThan(1.25 * beside);
        assertThat(OpenWindow.<Integer>ask(list::getSelectedRow)).isNegative();
        OpenWindow.act(() -> window.workbench().showPanel("nights"));
        OpenWindow.act(() -> window.workbench().showPanel("longitude-date"));
        settle();
        assertThat(OpenWindow.<Integer>ask(list::getSelectedRow))
                .as("a choice of none is kept")
                .isNegative();
        JLabel foot = (JLabel) window.find("drift.notes");
        assertThat(OpenWindow.<String>ask(foot::getToolTipText)).contains("double click opens its picture");
        assertThat(OpenWindow.<Integer>ask(
                        () -> foot.getFontMetrics(foot.getFont()).stringWidth(foot.getText())))
                .isLessThanOrEqualTo(OpenWindow.<Integer>ask(foot::getWidth));
    }

    private double chartWidth() {
        return OpenWindow.ask(
                () -> canvas().hits().orElseThrow().drawn().longitudes().area().getWidth());
    }

    @Test
    void aClickChoosesAMarkAndADoubleClickOpensItsPictureWithTheMarkChosen() throws IOException {
        season();
        open("longitude-date");
        click(at("oval B", 5), 1);
        StoredMark sixth = marksOf("oval B").get(5);
        assertThat(OpenWindow.ask(() -> canvas().chosen())).contains(new DriftData.Point("oval B", 5));
        JTable list = (JTable) window.find("drifts");
        assertThat(OpenWindow.ask(() -> list.getValueAt(list.getSelectedRow(), 0)))
                .isEqualTo("oval B");
        assertThat(OpenWindow.ask(() -> ((JLabel) window.find("drift.notes")).getText()))
                .contains("Hollow");

        click(at("oval B", 5), 2);
        JTable marks = (JTable) window.find("marks");
        assertThat(isShown(marks)).isTrue();
        assertThat(OpenWindow.ask(() -> marks.getValueAt(marks.getSelectedRow(), 0)))
                .isEqualTo("oval B");
        assertThat(sixth.mark().pictureId())
                .isEqualTo(marksOf("oval A").get(5).mark().pictureId());
    }

    @Test
    void keysStepThroughTheMarksAndEnterOpensThePicture() throws IOException {
        season();
        open("longitude-date");
        click(at("oval A", 2), 1);
        key(KeyEvent.VK_DOWN);
        assertThat(OpenWindow.ask(() -> canvas().chosen())).contains(new DriftData.Point("oval A", 3));
        key(KeyEvent.VK_UP);
        key(KeyEvent.VK_UP);
        assertThat(OpenWindow.ask(() -> canvas().chosen())).contains(new DriftData.Point("oval A", 1));
        key(KeyEvent.VK_ENTER);
        JTable marks = (JTable) window.find("marks");
        assertThat(isShown(marks)).isTrue();
        assertThat(OpenWindow.ask(() -> marks.getValueAt(marks.getSelectedRow(), 0)))
                .isEqualTo("oval A");
    }

    @Test
    void aMarkDraggedToAnotherTrackBelongsThereWithTheReasonAndCanComeBack() throws IOException {
        season();
        open("longitude-date");
        long before = marksOf("oval B").get(5).id();
        Point from = at("oval B", 5);
        Point onto = at("oval A", 5);
        mouse(MouseEvent.MOUSE_PRESSED, from, 1);
        mouse(MouseEvent.MOUSE_DRAGGED, new Point((from.x + onto.x) / 2, (from.y + onto.y) / 2 + 40), 1);
        mouse(MouseEvent.MOUSE_DRAGGED, onto, 1);
        mouse(MouseEvent.MOUSE_RELEASED, onto, 1);
        settle();
        JTextField reason = (JTextField) window.find("drift.reason");
        assertThat(isShown(reason)).isTrue();
        OpenWindow.act(reason::postActionEvent);
        assertThat(isShown(reason)).as("without a reason nothing is moved").isTrue();
        assertThat(marksOf("oval B")).hasSize(10);

        OpenWindow.act(() -> {
            reason.setText("it was the smaller oval");
            reason.postActionEvent();
        });
        settle();
        assertThat(isShown(reason)).isFalse();
        assertThat(marksOf("oval B")).hasSize(9);
        assertThat(marksOf("oval A")).hasSize(11);
        assertThat(window.context().archive().history(0))
                .extracting(HistoryEntry::detail)
                .anyMatch(w -> w.contains("it was the smaller oval"));
        assertThat(window.context()
                        .archive()
                        .marks(new MarkSearch(
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                true)))
                .filteredOn(m -> m.id() == before)
                .singleElement()
                .satisfies(m -> assertThat(m.supersededBy()).isPresent());

        undo();
        settle();
        assertThat(marksOf("oval B")).hasSize(10);
        assertThat(marksOf("oval A")).hasSize(10);
    }

    @Test
    void aPredictionIsReadFromItsDateAndTheLadderIsBuiltBesideTheChart() throws IOException {
        season();
        open("longitude-date");
        JTextField predict = (JTextField) window.find("drift.predict");
        OpenWindow.act(() -> {
            predict.setText("no date");
            predict.postActionEvent();
        });
        assertThat(predict.getClientProperty("JComponent.outline")).isEqualTo("error");
        OpenWindow.act(() -> {
            predict.setText("2025-02-01");
            predict.postActionEvent();
        });
        click(at("oval A", 2), 1);
        OpenWindow.await("the ladder", () -> canvas().hits()
                .filter(h -> !h.drawn().scene().ladderWords().startsWith("The ladder is being built"))
                .isPresent());
        DriftScene.Drawn drawn =
                OpenWindow.ask(() -> canvas().hits().orElseThrow().drawn());
        assertThat(drawn.tracks()).allSatisfy(t -> assertThat(t.bands()).hasSize(1));
        assertThat(drawn.residuals().orElseThrow().name()).isEqualTo("oval A");
        // Strips stand on the chart's own axis of time, if some night shows the place; else it is said that none does.
        if (drawn.ladderSpace().isPresent()) {
            PlotSpace ladder = drawn.ladderSpace().get();
            assertThat(ladder.area().getMinY())
                    .isEqualTo(drawn.longitudes().area().getMinY(), offset(1.0));
            assertThat(ladder.timePx(START.toEpochMilli()))
                    .isEqualTo(drawn.longitudes().timePx(START.toEpochMilli()), offset(1.0));
        } else {
            assertThat(drawn.scene().ladderWords()).startsWith("No picture with a trusted fit");
        }
    }
}
