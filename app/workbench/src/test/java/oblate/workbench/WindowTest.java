/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.awt.Component;
import java.awt.Point;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.FilingFacts;
import oblate.archive.HistoryEntry;
import oblate.archive.MarkSearch;
import oblate.archive.Rating;
import oblate.archive.Site;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.base.PluginHost;
import oblate.base.PluginRefusal;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.disc.FitHints;
import oblate.disc.FitOutcome;
import oblate.image.TimeWish;
import oblate.sample.SampleSeason;
import oblate.sample.SampleTruth;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.Hand;
import oblate.workbench.testing.OnScreen;
import oblate.workbench.testing.OpenWindow;
import oblate.workbench.testing.StallWatch;
import oblate.workbench.tutorial.FailingPanel;
import oblate.workbench.tutorial.ObserverCountPanel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/**
 * Journeys through the real window with real mouse and keyboard, on the sample night. They need a display and fail without one; a repaint
 * asked for off the event thread fails them too.
 */
@Tag("window")
@Timeout(value = 150, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@ExtendWith(OnScreen.class)
class WindowTest {
    @RegisterExtension
    final StallWatch stalls = new StallWatch(Duration.ofMillis(100), Duration.ofSeconds(5));

    @TempDir
    static Path folder;

    private static SampleTruth truth;
    private OpenWindow window;
    private Hand hand;
    private PluginHost plugins;
    private Path archive;

    @BeforeAll
    static void fileTheSampleNight() {
        truth = SampleSeason.night().writeTo(folder.resolve("season"), Progress.SILENT);
        WorkbenchContext context =
                OpenWindow.context(folder.resolve("base"), folder.resolve("none"), PluginHost.bundledOnly());
        try (Archive archive = context.archive()) {
            archive.keepSite(new Site("Field", 51, 4, 10, Optional.empty()));
            FilingFacts facts = new FilingFacts(
                    Optional.of("jupiter"),
                    Optional.of("Field"),
                    Optional.of("observer-1"),
                    Optional.of("kit A"),
                    Optional.empty(),
                    Optional.of(new Rating("3", "Antoniadi")),
                    Optional.empty(),
                    Optional.empty(),
                    new TimeWish(
                            Optional.empty(),
                            Optional.of(java.time.ZoneOffset.UTC),
                            Optional.empty(),
                            OptionalDouble.empty(),
                            Optional.empty()),
                    true);
            context.filing().file(List.of(folder.resolve("season/pictures")), facts, Progress.SILENT);
            fit(context, archive.pictureCalled(nameOf(colourPicture(0))));
        }
    }

    private static void fit(WorkbenchContext context, ArchivedPicture picture) {
        PlanetModel jupiter = context.planets().get(0);
        ApparentDisc disc =
                context.sky().disc(jupiter, picture.time().orElseThrow().midUtc());
        var pixels = context.reader().decode(context.archive().fileOf(picture)).pixels();
        FitOutcome outcome = context.fitter()
                .fit(pixels, disc, FitHints.none(), Progress.SILENT)
                .outcome();
        context.archive()
                .keepFit(picture.id(), ((FitOutcome.Fitted) outcome).fit(), disc.ephemeris(), context.software());
    }

    @BeforeEach
    void start() {
        hand = new Hand();
    }

    @AfterEach
    void end() {
        if (window != null) {
            window.close();
            plugins.close();
        }
        hand.close();
    }

    private void open(Path settings) throws IOException {
        archive = settings.resolve("archive");
        if (!Files.exists(archive)) {
            copy(folder.resolve("base"), archive);
        }
        plugins = PluginHost.withFolder(settings.resolve("plugins"));
        window = new OpenWindow(archive, settings, plugins);
        OpenWindow.act(() -> window.workbench().frame().setBounds(0, 0, 1400, 900));
        OpenWindow.await("the archive is read", () -> window.workbench().shelf().isRead());
        window.settle();
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path one : all.toList()) {
                Path target = to.resolve(from.relativize(one).toString());
                if (Files.isDirectory(one)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(one, target);
                }
            }
        }
    }

    private Path calmSettings(String name) throws IOException {
        Path settings = folder.resolve(name);
        Files.createDirectories(settings);
        // New pictures are fitted on demand here, so that each test says when.
        Files.writeString(
                settings.resolve("workbench.properties"), "panel.measure.fit.new=false\npanel.nights.motion=false\n");
        return settings;
    }

    private static String nameOf(SampleTruth.Picture one) {
        return one.file().substring(one.file().lastIndexOf('/') + 1);
    }

    private ArchivedPicture pictureOf(SampleTruth.Picture one) {
        return window.context().archive().pictureCalled(nameOf(one));
    }

    private static SampleTruth.Picture colourPicture(int index) {
        return truth.pictures().stream()
                .filter(p -> p.file().contains("2023") && p.file().matches(".*(Z\\.png|disc-1\\.png|Z\\.jpg)"))
                .toList()
                .get(index);
    }

    private void press(String buttonName) {
        hand.click(window.find(buttonName));
        window.settle();
    }

    private void measure(ArchivedPicture picture) {
        OpenWindow.act(() -> window.workbench().openPicture(picture.id()));
        window.settle();
    }

    private Point onCanvas(double xPx, double yPx) {
        Component canvas = window.find("canvas");
        // The canvas answers where a picture's pixel is through the same view it paints with.
        return OpenWindow.ask(() -> {
            java.lang.reflect.Method view = canvas.getClass().getDeclaredMethod("view");
            view.setAccessible(true);
            Object v = view.invoke(canvas);
            java.awt.geom.Point2D at =
                    ((oblate.workbench.measure.CanvasView) v).toScreen(new oblate.disc.PixelPoint(xPx, yPx));
            return new Point((int) Math.round(at.getX()), (int) Math.round(at.getY()));
        });
    }

    private List<StoredMark> marksOf(ArchivedPicture picture) {
        return window.context().archive().marks(MarkSearch.ofPicture(picture.id()));
    }

    @Test
    void aNightIsOpenedFittedMarkedNamedMovedAndUndone() throws IOException {
        open(calmSettings("journey"));
        assertThat(OpenWindow.<Integer>ask(
                        () -> window.workbench().shelf().pictures().size()))
                .isEqualTo(truth.pictures().size());
        SampleTruth.Picture first = colourPicture(2);
        ArchivedPicture picture = pictureOf(first);

        // Double-click on its tile opens it.
        OpenWindow.act(() -> window.workbench().showPanel("nights"));
        OpenWindow.act(() -> window.workbench().selection().choosePicture(picture.id()));
        window.settle();
        Component wall = window.find("wall");
        Point tile = tileOf(wall, picture.id());
        hand.click(wall, tile, 2);
        window.settle();
        assertThat(OpenWindow.<Boolean>ask(() -> window.find("canvas").isShowing()))
                .isTrue();
        assertThat(window.context().archive().currentFit(picture.id())).isEmpty();

        // Fit: what the window keeps is near what is true.
        press("fit");
        OpenWindow.await(
                "a fit",
                () -> window.context().archive().currentFit(picture.id()).isPresent());
        window.settle();
        StoredFit fit = window.context().archive().currentFit(picture.id()).orElseThrow();
        assertThat(fit.fit().placement().centreXPx()).isEqualTo(first.cxPx(), offset(2.0));
        assertThat(fit.fit().placement().centreYPx()).isEqualTo(first.cyPx(), offset(2.0));
        assertThat(fit.software()).isEqualTo("Oblate 0.1.0");

        // A click on the red oval drops a mark; a typed name and Enter make a new feature.
        SampleTruth.Mark oval = truth.marksOf(first).stream()
                .filter(m -> m.feature().equals("red oval"))
                .findFirst()
                .orElseThrow();
        Component canvas = window.find("canvas");
        hand.click(canvas, onCanvas(oval.xPx(), oval.yPx()));
        window.settle();
        OpenWindow.await("the list of names", () -> window.find("naming").isVisible());
        type("red oval");
        strike(KeyEvent.VK_ENTER);
        window.settle();
        OpenWindow.await("a named mark", () -> marksOf(picture).stream()
                .anyMatch(m -> m.featureName().isPresent()));
        StoredMark named = marksOf(picture).get(0);
        assertThat(named.featureName()).contains("red oval");
        double trueLon = oval.place().orElseThrow().lon2Deg();
        assertThat(Math.abs(Math.IEEEremainder(named.longitudes().get("2") - trueLon, 360)))
                .isLessThan(2);
        assertThat(named.mark().point().orElseThrow().latGraphicDeg())
                .isEqualTo(oval.place().orElseThrow().latGraphicDeg(), offset(2.0));

        // The table says it by the grammar of numbers.
        JTable table = (JTable) window.find("marks");
        assertThat(OpenWindow.<Object>ask(() -> table.getValueAt(0, 0))).isEqualTo("red oval");
        assertThat(OpenWindow.<Object>ask(() -> table.getValueAt(0, 1)).toString())
                .matches("II \\d{1,3}\\.\\d° ± \\d\\.\\d");
        assertThat(OpenWindow.<Object>ask(() -> table.getValueAt(0, 2)).toString())
                .matches("\u2212\\d{2}\\.\\d° ± \\d\\.\\d");

        // Arrows move it by a tenth of a pixel of the picture, and the archive keeps old and new.
        hand.strikeTimes(3, KeyEvent.VK_RIGHT);
        OpenWindow.await(
                "the three moves are kept",
                () -> Math.abs(apartPx(marksOf(picture).get(0), named) - 0.3) < 1e-6);
        window.settle();
        StoredMark moved = marksOf(picture).get(0);
        assertThat(moved.id()).isNotEqualTo(named.id());
        assertThat(apartPx(moved, named)).isEqualTo(0.3, offset(1e-6));
        assertThat(moved.featureName()).contains("red oval");

        // Undo, undo: back where it was, then unnamed again; each a new row.
        undo(picture, marks -> marks.get(0).mark().pixel().equals(named.mark().pixel()));
        undo(picture, marks -> marks.get(0).featureName().isEmpty());
        redo(picture, marks -> marks.get(0).featureName().isPresent());
        undo(picture, marks -> marks.get(0).featureName().isEmpty());
        undo(picture, List::isEmpty);
        List<HistoryEntry> history = window.context().archive().history(20);
        assertThat(history).extracting(HistoryEntry::action).contains("superseded", "withdrawn");
    }

    private static Point tileOf(Component wall, long id) {
        return OpenWindow.ask(() -> {
            java.lang.reflect.Method bounds = wall.getClass().getDeclaredMethod("boundsOf", long.class);
            bounds.setAccessible(true);
            java.awt.Rectangle r = (java.awt.Rectangle) ((Optional<?>) bounds.invoke(wall, id)).orElseThrow();
            return new Point(r.x + r.width / 2, r.y + r.height / 2);
        });
    }

    private void strike(int... keys) {
        hand.strike(keys);
    }

    private void type(String text) {
        hand.type(text);
    }

    private void undo(ArchivedPicture picture, java.util.function.Predicate<List<StoredMark>> until) {
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        OpenWindow.await("the undo", () -> until.test(marksOf(picture)));
        window.settle();
    }

    private void redo(ArchivedPicture picture, java.util.function.Predicate<List<StoredMark>> until) {
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_Z);
        OpenWindow.await("the redo", () -> until.test(marksOf(picture)));
        window.settle();
    }

    @Test
    void escLeavesAMarkUnnamedDeleteWithdrawsItAndAClickBesideTheDiscWithoutFitSaysWhy() throws IOException {
        open(calmSettings("keys"));
        ArchivedPicture unfitted = pictureOf(colourPicture(1));
        measure(unfitted);
        Component canvas = window.find("canvas");
        hand.click(canvas);
        window.settle();
        assertThat(status()).contains("Fit the disc first");
        assertThat(marksOf(unfitted)).isEmpty();

        ArchivedPicture fitted = pictureOf(colourPicture(0));
        measure(fitted);
        hand.click(canvas);
        OpenWindow.await("the list of names", () -> window.find("naming").isVisible());
        strike(KeyEvent.VK_ESCAPE);
        window.settle();
        assertThat(marksOf(fitted)).hasSize(1).allMatch(m -> m.featureName().isEmpty());
        assertThat(OpenWindow.<Boolean>ask(() -> window.find("naming").isVisible()))
                .isFalse();
        strike(KeyEvent.VK_DELETE);
        OpenWindow.await("it is withdrawn", () -> marksOf(fitted).isEmpty());
        window.settle();

        // Page Down goes on to the next picture of the night.
        long before =
                OpenWindow.ask(() -> window.workbench().selection().pictureId().orElseThrow());
        strike(KeyEvent.VK_PAGE_DOWN);
        window.settle();
        assertThat(OpenWindow.<Long>ask(
                        () -> window.workbench().selection().pictureId().orElseThrow()))
                .isNotEqualTo(before);
    }

    private String status() {
        return OpenWindow.ask(() -> ((javax.swing.JLabel) window.find("status")).getText());
    }

    @Test
    void searchingShowsOnlyWhatMatchesAndDroppedFilesAreFiledWithTheirOutcomes() throws IOException {
        open(calmSettings("search"));
        OpenWindow.act(() -> window.workbench().showPanel("nights"));
        JTextField words = (JTextField) window.find("search");
        OpenWindow.act(words::requestFocusInWindow);
        OpenWindow.await("the caret", words::isFocusOwner);
        type("disc-1");
        window.settle();
        OpenWindow.await("one match", () -> boundsCount() == 1);

        Path strange = Files.writeString(folder.resolve("strange.png"), "no picture at all");
        Path again = folder.resolve("season").resolve(colourPicture(0).file());
        OpenWindow.act(() -> ((javax.swing.JComponent)
                        window.workbench().frame().getContentPane())
                .getTransferHandler()
                .importData(new javax.swing.TransferHandler.TransferSupport(
                        (javax.swing.JComponent) window.workbench().frame().getContentPane(),
                        new FileList(List.of(strange.toFile(), again.toFile())))));
        window.settle();
        press("file");
        OpenWindow.await("the outcomes", () -> window.find("outcomes").isShowing());
        String sentences = OpenWindow.ask(() -> ((JTextArea) window.find("outcome.sentences")).getText());
        assertThat(sentences).contains("strange.png").contains("Refused");
        assertThat(OpenWindow.<Integer>ask(
                        () -> window.workbench().shelf().pictures().size()))
                .isEqualTo(truth.pictures().size());
    }

    private long boundsCount() {
        Component wall = window.find("wall");
        return window.context().archive().pictures(oblate.archive.PictureSearch.all()).stream()
                .filter(p -> OpenWindow.<Boolean>ask(() -> {
                    java.lang.reflect.Method bounds = wall.getClass().getDeclaredMethod("boundsOf", long.class);
                    bounds.setAccessible(true);
                    return ((Optional<?>) bounds.invoke(wall, p.id())).isPresent();
                }))
                .count();
    }

    @Test
    void aStrangersPanelJoinsTheRailAndBadOnesAreNamedAndLeftOut() throws IOException {
        Path settings = calmSettings("plugins");
        PluginJars.panel(settings.resolve("plugins/counts.jar"), ObserverCountPanel.class);
        PluginJars.panel(settings.resolve("plugins/failing.jar"), FailingPanel.class);
        Files.writeString(settings.resolve("plugins/junk.jar"), "these bytes are no jar");
        open(settings);

        press("rail.observer-count");
        assertThat(OpenWindow.<String>ask(() -> ((JTextArea) window.find("counts")).getText()))
                .contains("observer-1: " + truth.pictures().size());
        press("rail.failing");
        OpenWindow.await("the failing panel is taken out of the rail", () -> OpenWindow.find(
                        window.workbench().frame().getRootPane(), "rail.failing")
                .isEmpty());

        press("rail.plug-ins");
        List<PluginRefusal> refusals =
                OpenWindow.ask(() -> window.workbench().plugins().refusals());
        assertThat(refusals).extracting(PluginRefusal::where).containsExactly("junk.jar");
        String shown = OpenWindow.ask(() -> allText(window.workbench().frame().getRootPane()));
        assertThat(shown).contains("junk.jar").contains("failing.jar").contains("no lamp in the lighthouse");
        JTable table = (JTable) window.find("plugin.table");
        String rows = OpenWindow.ask(() -> {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < table.getRowCount(); i++) {
                text.append(table.getValueAt(i, 2))
                        .append('=')
                        .append(table.getValueAt(i, 3))
                        .append('\n');
            }
            return text.toString();
        });
        assertThat(rows)
                .contains("observer-count=counts.jar")
                .contains("nights=bundled")
                .doesNotContain("failing=");
    }

    private static String allText(java.awt.Container in) {
        StringBuilder text = new StringBuilder();
        for (Component c : in.getComponents()) {
            if (c instanceof JTextArea area) {
                text.append(area.getText()).append('\n');
            }
            if (c instanceof java.awt.Container container) {
                text.append(allText(container));
            }
        }
        return text.toString();
    }

    @Test
    void everyPanelIsPaintedInEveryThemeAndTheLayoutIsRemembered() throws IOException {
        Path settings = calmSettings("themes");
        open(settings);
        ArchivedPicture picture = pictureOf(colourPicture(0));
        measure(picture);
        for (Theme theme : Theme.values()) {
            OpenWindow.act(() -> window.workbench().setTheme(theme));
            for (String panel : List.of("nights", "measure", "report", "plug-ins")) {
                OpenWindow.act(() -> window.workbench().showPanel(panel));
                window.settle();
                assertThat(coloursIn(window.picture())).as(theme + " " + panel).isGreaterThan(20);
            }
            if (theme == Theme.RED) {
                OpenWindow.act(() -> window.workbench().showPanel("measure"));
                window.settle();
                assertThat(shareNotRed(window.picture()))
                        .as("pixels that are not red")
                        .isLessThan(0.001);
            }
        }
        OpenWindow.act(() -> window.workbench().showPanel("report"));
        window.settle();
        window.close();
        plugins.close();
        plugins = PluginHost.bundledOnly();
        window = new OpenWindow(archive, settings, plugins);
        window.settle();
        assertThat(OpenWindow.<Boolean>ask(() -> window.find("report.page").isShowing()))
                .isTrue();
        assertThat(OpenWindow.<Boolean>ask(
                        () -> javax.swing.UIManager.getLookAndFeel().getName().contains("red")))
                .isTrue();
    }

    private static int coloursIn(java.awt.image.BufferedImage image) {
        java.util.Set<Integer> colours = new java.util.HashSet<>();
        for (int y = 0; y < image.getHeight(); y += 3) {
            for (int x = 0; x < image.getWidth(); x += 3) {
                colours.add(image.getRGB(x, y));
            }
        }
        return colours.size();
    }

    private static double shareNotRed(java.awt.image.BufferedImage image) {
        long other = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                java.awt.Color c = new java.awt.Color(image.getRGB(x, y));
                if (Math.max(c.getGreen(), c.getBlue()) > 100 || Math.max(c.getGreen(), c.getBlue()) > c.getRed() + 8) {
                    other++;
                }
            }
        }
        return other / (double) (image.getWidth() * image.getHeight());
    }

    @Test
    void theReportShowsAndSavesWhatWasMeasured() throws IOException {
        open(calmSettings("report"));
        ArchivedPicture picture = pictureOf(colourPicture(0));
        measure(picture);
        SampleTruth.Mark oval = truth.marksOf(colourPicture(0)).stream()
                .filter(m -> m.feature().equals("red oval"))
                .findFirst()
                .orElseThrow();
        hand.click(window.find("canvas"), onCanvas(oval.xPx(), oval.yPx()));
        OpenWindow.await("the list of names", () -> window.find("naming").isVisible());
        type("red oval");
        strike(KeyEvent.VK_ENTER);
        OpenWindow.await("a named mark", () -> marksOf(picture).stream()
                .anyMatch(m -> m.featureName().isPresent()));
        window.settle();
        press("rail.report");
        String page = OpenWindow.ask(() -> ((JTextArea) window.find("report.page")).getText());
        assertThat(page).contains("red oval").contains(picture.sha256());
    }

    @Test
    void aCircleDrawnByHandStartsTheFitThere() throws IOException {
        open(calmSettings("circle"));
        SampleTruth.Picture second = colourPicture(1);
        ArchivedPicture picture = pictureOf(second);
        measure(picture);
        Component canvas = window.find("canvas");
        Point centre = onCanvas(second.cxPx(), second.cyPx());
        Point edge = onCanvas(second.cxPx() + second.rePx(), second.cyPx());
        hand.holding(
                KeyEvent.VK_CONTROL, () -> hand.drag(canvas, centre, new Point((centre.x + edge.x) / 2, edge.y), edge));
        OpenWindow.await(
                "a fit",
                () -> window.context().archive().currentFit(picture.id()).isPresent());
        window.settle();
        StoredFit fit = window.context().archive().currentFit(picture.id()).orElseThrow();
        assertThat(fit.fit().placement().equatorialRadiusPx()).isEqualTo(second.rePx(), offset(3.0));
        assertThat(marksOf(picture)).isEmpty();
    }

    @Test
    void aPanelThatTouchesTheWindowOffTheEventThreadWouldBeCaught() {
        javax.swing.JLabel label = OpenWindow.ask(() -> {
            javax.swing.JFrame frame = new javax.swing.JFrame();
            javax.swing.JLabel made = new javax.swing.JLabel("quiet");
            frame.add(made);
            frame.pack();
            frame.setVisible(true);
            return made;
        });
        try {
            assertThat(org.assertj.core.api.Assertions.catchThrowable(() -> label.setText("loud")))
                    .isInstanceOf(org.assertj.swing.exception.EdtViolationException.class);
        } finally {
            OpenWindow.act(
                    () -> javax.swing.SwingUtilities.getWindowAncestor(label).dispose());
        }
    }

    @Test
    void withoutAScreenOpeningSaysSoInOneSentence() {
        assertThat(new ProblemException(WorkbenchProblem.NO_SCREEN).getMessage())
                .contains("no screen")
                .contains("oblate help");
    }

    private static double apartPx(StoredMark a, StoredMark b) {
        return Math.hypot(
                a.mark().pixel().xPx() - b.mark().pixel().xPx(),
                a.mark().pixel().yPx() - b.mark().pixel().yPx());
    }
}
