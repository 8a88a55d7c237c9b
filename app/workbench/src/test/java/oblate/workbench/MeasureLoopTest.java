/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.awt.Component;
import java.awt.Point;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import javax.swing.JTable;
import javax.swing.JTextField;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.FilingFacts;
import oblate.archive.Kit;
import oblate.archive.MarkSearch;
import oblate.archive.PictureSearch;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.base.PluginHost;
import oblate.base.Progress;
import oblate.disc.Placement;
import oblate.image.TimeWish;
import oblate.sample.SampleSeason;
import oblate.sample.SampleTruth;
import oblate.workbench.measure.CanvasView;
import oblate.workbench.testing.Hand;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The measuring loop by mouse and keys in a real window, with what can go wrong on the way, on the sample night. Needs a display. */
@Tag("window")
@Timeout(value = 180, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class MeasureLoopTest {
    private static final System.Logger LOG = System.getLogger(MeasureLoopTest.class.getName());

    @TempDir
    static Path folder;

    private static SampleTruth truth;
    private static Hand hand;
    private OpenWindow window;
    private PluginHost plugins;
    private Path archive;
    private Path settings;
    private int strokes;

    @BeforeAll
    static void fileTheSampleNight() {
        hand = new Hand();
        truth = SampleSeason.night().writeTo(folder.resolve("season"), Progress.SILENT);
        WorkbenchContext context =
                OpenWindow.context(folder.resolve("base"), folder.resolve("none"), PluginHost.bundledOnly());
        try (Archive archive = context.archive()) {
            // Whether the kit mirrors is known of it, as it is at home: some pictures alone leave that open.
            Kit plain = Kit.named("kit A");
            archive.keepKit(new Kit(
                    plain.name(),
                    plain.telescope(),
                    plain.apertureMm(),
                    plain.focalMm(),
                    plain.camera(),
                    plain.pixelUm(),
                    plain.amplifier(),
                    plain.corrector(),
                    plain.filter(),
                    Optional.of(false),
                    plain.note()));
            TimeWish wish = new TimeWish(
                    Optional.empty(),
                    Optional.of(ZoneOffset.UTC),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    Optional.empty());
            FilingFacts facts = new FilingFacts(
                    Optional.of("jupiter"),
                    Optional.empty(),
                    Optional.of("observer-1"),
                    Optional.of("kit A"),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    wish,
                    true);
            context.filing().file(List.of(folder.resolve("season/pictures")), facts, Progress.SILENT);
            assertThat(archive.pictures(PictureSearch.all()))
                    .hasSize(truth.pictures().size());
        }
    }

    @AfterAll
    static void letGo() {
        hand.close();
    }

    private void open(String name, boolean fitNew) throws IOException {
        settings = folder.resolve(name);
        archive = settings.resolve("archive");
        if (!Files.exists(archive)) {
            copy(folder.resolve("base"), archive);
            Files.writeString(settings.resolve("workbench.properties"), "panel.measure.fit.new=" + fitNew + "\n");
        }
        plugins = PluginHost.bundledOnly();
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

    @AfterEach
    void close() {
        if (window != null) {
            window.close();
            plugins.close();
        }
    }

    private Archive catalog() {
        return window.context().archive();
    }

    private ArchivedPicture pictureOf(SampleTruth.Picture one) {
        return catalog().pictureCalled(one.file().substring(one.file().lastIndexOf('/') + 1));
    }

    /** Pictures in colour with some features on the near side, in order of time. */
    private static List<SampleTruth.Picture> colourPictures() {
        return truth.pictures().stream()
                .filter(p -> p.file().contains("2023") && p.file().matches(".*(Z\\.png|disc-1\\.png|Z\\.jpg)"))
                .toList();
    }

    private void measure(ArchivedPicture picture) {
        OpenWindow.act(() -> window.workbench().openPicture(picture.id()));
        window.settle();
        OpenWindow.await("the focus", () -> {
            Component canvas = window.find("canvas");
            if (!canvas.hasFocus()) {
                window.workbench().frame().toFront();
                canvas.requestFocus();
            }
            return canvas.hasFocus();
        });
    }

    private CanvasView view() {
        Component canvas = window.find("canvas");
        return OpenWindow.ask(() -> {
            java.lang.reflect.Method view = canvas.getClass().getDeclaredMethod("view");
            view.setAccessible(true);
            return (CanvasView) view.invoke(canvas);
        });
    }

    private Point onCanvas(double xPx, double yPx) {
        var at = view().toScreen(new oblate.disc.PixelPoint(xPx, yPx));
        return new Point((int) Math.round(at.x), (int) Math.round(at.y));
    }

    private void moveTo(double xPx, double yPx) {
        hand.move(window.find("canvas"), onCanvas(xPx, yPx));
    }

    private void click(double xPx, double yPx) {
        hand.click(window.find("canvas"), onCanvas(xPx, yPx));
        strokes++;
    }

    private void strike(int... keys) {
        hand.strike(keys);
        strokes++;
    }

    private void type(String text) {
        hand.type(text);
        strokes += text.length();
    }

    private List<StoredMark> marksOf(ArchivedPicture picture) {
        return catalog().marks(MarkSearch.ofPicture(picture.id()));
    }

    private Optional<StoredFit> fitOf(ArchivedPicture picture) {
        return catalog().currentFit(picture.id());
    }

    private String status() {
        return OpenWindow.ask(() -> ((javax.swing.JLabel) window.find("status")).getText());
    }

    private void awaitNaming() {
        OpenWindow.await("the list of names", () -> window.find("naming").isVisible());
    }

    private long chosen() {
        return OpenWindow.ask(() -> window.workbench().selection().pictureId().orElseThrow());
    }

    /** The first name offered, for the words of a failure. */
    private String offered() {
        javax.swing.JList<?> list = (javax.swing.JList<?>) window.find("naming.list");
        return OpenWindow.ask(() -> list.getModel().getSize() == 0
                ? "nothing"
                : (list.getSelectedIndex() == 0 ? "" : "only listed: ")
                        + list.getModel().getElementAt(0));
    }

    /** A picture with a right clock whose follower in time has one too, and shows three of the same features well. */
    private SampleTruth.Picture firstOfARightPair() {
        List<ArchivedPicture> all =
                OpenWindow.ask(() -> window.workbench().shelf().pictures());
        for (int i = 0; i + 1 < all.size(); i++) {
            Optional<SampleTruth.Picture> a = truthOf(all.get(i)).filter(t -> isRight(t));
            Optional<SampleTruth.Picture> b = truthOf(all.get(i + 1)).filter(t -> isRight(t));
            if (a.isPresent() && b.isPresent() && sameFeatures(a.get(), b.get()).size() >= 3) {
                return a.get();
            }
        }
        throw new IllegalStateException("the sample night has no such pair");
    }

    private static boolean isRight(SampleTruth.Picture t) {
        return t.clockErrorS() == 0 && !t.mirrored() && t.planet().equals("jupiter") && t.rePx() > 60;
    }

    private static Optional<SampleTruth.Picture> truthOf(ArchivedPicture picture) {
        return truth.pictures().stream()
                .filter(p -> picture.originalName()
                        .equals(p.file().substring(p.file().lastIndexOf('/') + 1)))
                .filter(p -> picture.time()
                        .filter(t ->
                                Math.abs(t.midUtc().getEpochSecond() - p.mid().getEpochSecond()) < 5)
                        .isPresent())
                .findFirst();
    }

    private static List<SampleTruth.Mark> wellSeen(SampleTruth.Picture picture) {
        return truth.marksOf(picture).stream()
                .filter(m -> m.place().isPresent() && m.emissionDeg().orElse(90) < 66)
                .filter(m -> !m.kind().contains("shadow"))
                .toList();
    }

    private static List<SampleTruth.Mark> sameFeatures(SampleTruth.Picture a, SampleTruth.Picture b) {
        return wellSeen(b).stream()
                .filter(m -> wellSeen(a).stream().anyMatch(f -> f.feature().equals(m.feature())))
                .limit(5)
                .toList();
    }

    /** A feature's name in letters that are typed with one key each. */
    private static String plainName(SampleTruth.Mark mark) {
        return mark.feature().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9 ]", "");
    }

    /** Marks with a name each; returns how many keys and clicks it took. */
    private int markNamed(ArchivedPicture picture, List<SampleTruth.Mark> marks, boolean known) {
        strokes = 0;
        for (SampleTruth.Mark mark : marks) {
            int before = marksOf(picture).size();
            click(mark.xPx(), mark.yPx());
            awaitNaming();
            if (!known) {
                type(plainName(mark));
            }
            String offered = offered();
            strike(KeyEvent.VK_ENTER);
            OpenWindow.await(
                    "a name for " + mark + ", offered was " + offered,
                    () -> marksOf(picture).size() == before + 1
                            && marksOf(picture).stream()
                                    .allMatch(m -> m.featureName().isPresent()));
            window.settle();
        }
        return strokes;
    }

    @Test
    void theNextPictureIsReadyFittedAndAnExpectedMarkTakesTwoStrokes() throws IOException {
        open("loop", true);
        SampleTruth.Picture first = firstOfARightPair();
        ArchivedPicture picture = pictureOf(first);
        measure(picture);
        OpenWindow.await("a fit", () -> fitOf(picture).isPresent());
        window.settle();
        List<SampleTruth.Mark> five = wellSeen(first);
        markNamed(picture, five, false);

        // Space: the next picture without marks comes with its fit made ahead.
        long start = System.nanoTime();
        strike(KeyEvent.VK_SPACE);
        OpenWindow.await("another picture", () -> chosen() != picture.id());
        ArchivedPicture second = catalog().picture(chosen()).orElseThrow();
        assertThat(second.markCount()).isZero();
        OpenWindow.await("its fit is kept", () -> fitOf(second).isPresent());
        double seconds = (System.nanoTime() - start) / 1e9;
        window.settle();

        assertThat(fitOf(second).orElseThrow().fit().placement().mirrored())
                .as("mirrored of " + fitOf(second).orElseThrow().fit())
                .isEqualTo(fitOf(picture).orElseThrow().fit().placement().mirrored());

        // The same features again: a click and Enter each, since their names are expected there, and Space to go on.
        List<SampleTruth.Mark> again = sameFeatures(first, truthOf(second).orElseThrow());
        int count = markNamed(second, again, true);
        assertThat(count).isEqualTo(2 * again.size());
        for (SampleTruth.Mark mark : again) {
            String plain = plainName(mark);
            assertThat(marksOf(second)).anyMatch(m -> m.featureName().equals(Optional.of(plain)));
        }
        LOG.log(
                System.Logger.Level.INFO,
                "{0} marks in {1} keys and clicks, and Space; the next fitted picture was there after {2} s",
                again.size(),
                count,
                seconds);
    }

    @Test
    void everythingIsUndoneByAnotherWindowOnTheSameArchive() throws IOException {
        open("restart", false);
        SampleTruth.Picture one = colourPictures().get(1);
        ArchivedPicture picture = pictureOf(one);
        measure(picture);
        strike(KeyEvent.VK_F5);
        OpenWindow.await("a fit", () -> fitOf(picture).isPresent());
        window.settle();
        Placement fitted = fitOf(picture).orElseThrow().fit().placement();
        click(one.cxPx() + 12, one.cyPx() + 20);
        awaitNaming();
        // The mark is moved while names are offered.
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_RIGHT);
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_RIGHT);
        type("spot x");
        strike(KeyEvent.VK_ENTER);
        OpenWindow.await("a named mark", () -> marksOf(picture).stream()
                .anyMatch(m -> m.featureName().equals(Optional.of("spot x"))));
        window.settle();
        StoredMark named = marksOf(picture).get(0);

        // An outline by hand: half a pixel to the right, a pixel larger, kept as drawn with the errors stated.
        strike(KeyEvent.VK_H);
        for (int i = 0; i < 5; i++) {
            strike(KeyEvent.VK_RIGHT);
        }
        strike(KeyEvent.VK_SHIFT, KeyEvent.VK_CLOSE_BRACKET);
        OpenWindow.act(() -> ((JTextField) window.find("hand.angle")).setText("0.7"));
        strike(KeyEvent.VK_ENTER);
        OpenWindow.await("the outline is kept", () -> fitOf(picture)
                .filter(f -> f.fit().method().equals("hand"))
                .isPresent());
        window.settle();
        StoredFit drawn = fitOf(picture).orElseThrow();
        double moved = Math.hypot(
                drawn.fit().placement().centreXPx() - fitted.centreXPx(),
                drawn.fit().placement().centreYPx() - fitted.centreYPx());
        assertThat(moved).isEqualTo(0.5, offset(1e-6));
        assertThat(drawn.fit().placement().equatorialRadiusPx())
                .isEqualTo(fitted.equatorialRadiusPx() + 1, offset(1e-6));
        assertThat(drawn.fit().covariance().sigmaPoleAngleDeg()).isEqualTo(0.7, offset(1e-9));
        // The mark was measured again with it, and is less sure now.
        OpenWindow.await(
                "the mark follows", () -> marksOf(picture).get(0).mark().fitId().equals(Optional.of(drawn.id())));
        assertThat(marksOf(picture).get(0).mark().errors().orElseThrow().totalLonDeg())
                .isGreaterThan(named.mark().errors().orElseThrow().totalLonDeg());
        window.close();
        plugins.close();

        open("restart", false);
        measure(picture);
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        OpenWindow.await("the automatic fit is back", () -> fitOf(picture)
                .filter(f -> f.fit().placement().equals(fitted))
                .isPresent());
        window.settle();
        assertThat(marksOf(picture).get(0).mark().fitId())
                .isEqualTo(fitOf(picture).map(StoredFit::id));
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        OpenWindow.await(
                "the name is gone", () -> marksOf(picture).get(0).featureName().isEmpty());
        window.settle();
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        OpenWindow.await("the mark is gone", () -> marksOf(picture).isEmpty());
        window.settle();
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        OpenWindow.await("the fit is gone", () -> fitOf(picture).isEmpty());
        window.settle();
        for (int i = 0; i < 4; i++) {
            strike(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_Z);
            window.settle();
        }
        OpenWindow.await(
                "all is back",
                () -> fitOf(picture)
                                .filter(f -> f.fit().method().equals("hand"))
                                .isPresent()
                        && marksOf(picture).stream()
                                .anyMatch(m -> m.featureName().equals(Optional.of("spot x"))));
        assertThat(marksOf(picture).get(0).mark().pixel())
                .isEqualTo(named.mark().pixel());
    }

    @Test
    void aLockedCatalogLeavesTheMarkInTheHandAndEnterTriesAgain() throws IOException, SQLException {
        open("locked", false);
        SampleTruth.Picture one = colourPictures().get(1);
        ArchivedPicture picture = pictureOf(one);
        measure(picture);
        strike(KeyEvent.VK_F5);
        OpenWindow.await("a fit", () -> fitOf(picture).isPresent());
        window.settle();
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + archive.resolve("catalog.db"))) {
            other.setAutoCommit(false);
            try (var statement = other.createStatement()) {
                statement.execute("update picture set notes = 'busy' where id = " + picture.id());
                click(one.cxPx(), one.cyPx());
                OpenWindow.await("the trouble is told", () -> status().contains("in your hand"));
                assertThat(status()).contains("another program");
                JTable table = (JTable) window.find("marks");
                assertThat(OpenWindow.<Integer>ask(table::getRowCount)).isEqualTo(1);
                assertThat(marksOf(picture)).isEmpty();
            }
            other.rollback();
        }
        strike(KeyEvent.VK_ENTER);
        OpenWindow.await("the mark is kept", () -> marksOf(picture).size() == 1);
        window.settle();
        assertThat(marksOf(picture).get(0).mark().pixel().xPx()).isEqualTo(one.cxPx(), offset(1.0));
    }

    @Test
    void aMarkThatIsNotTakenWaitsOnItsPictureAndIsKeptOnceTheArchiveTakesSomething() throws IOException, SQLException {
        open("waiting", false);
        List<SampleTruth.Picture> two = colourPictures().subList(0, 2);
        List<ArchivedPicture> pictures = List.of(pictureOf(two.get(0)), pictureOf(two.get(1)));
        for (ArchivedPicture picture : List.of(pictures.get(1), pictures.get(0))) {
            measure(picture);
            strike(KeyEvent.VK_F5);
            OpenWindow.await("a fit", () -> fitOf(picture).isPresent());
            window.settle();
        }
        ArchivedPicture first = pictures.get(0);
        ArchivedPicture second = pictures.get(1);
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + archive.resolve("catalog.db"))) {
            other.setAutoCommit(false);
            try (var statement = other.createStatement()) {
                statement.execute("update picture set notes = 'busy' where id = " + first.id());
                click(two.get(0).cxPx(), two.get(0).cyPx());
                OpenWindow.await("the trouble is told", () -> status().contains("in your hand"));
                measure(second);
                OpenWindow.await("it waits", () -> status().contains("waits there"));
                assertThat(status()).contains(first.originalName());
                measure(first);
                JTable table = (JTable) window.find("marks");
                OpenWindow.await("it is in the hand again", () -> table.getRowCount() == 1);
                measure(second);
            }
            other.rollback();
        }
        assertThat(marksOf(first)).isEmpty();
        click(two.get(1).cxPx(), two.get(1).cyPx());
        OpenWindow.await("the mark here is kept", () -> marksOf(second).size() == 1);
        OpenWindow.await("so is the one that waited", () -> marksOf(first).size() == 1);
        assertThat(marksOf(first).get(0).mark().pixel().xPx())
                .isEqualTo(two.get(0).cxPx(), offset(1.0));
        window.settle();
    }

    /** The list of actions makes every panel ready; none of them is looked at, so that none may fit or keep anything. */
    @Test
    void aDeskThatIsOnlyMadeReadyFitsNothing() throws IOException {
        open("idle", true);
        OpenWindow.act(() -> window.workbench().showPanel("nights"));
        window.settle();
        strike(KeyEvent.VK_F1);
        OpenWindow.await("the list of actions", () -> window.find("actions").isShowing());
        window.settle();
        assertThat(catalog().fitSummaries()).isEmpty();
    }

    /** Going on while the disc is still being fitted must not leave the next picture without a fit. */
    @Test
    void aPictureOpenedWhileTheOneBeforeIsFittedIsFittedToo() throws IOException {
        open("quick", true);
        List<ArchivedPicture> two = List.of(
                pictureOf(colourPictures().get(0)), pictureOf(colourPictures().get(1)));
        OpenWindow.act(() -> window.workbench().openPicture(two.get(0).id()));
        OpenWindow.await(
                "the first is being fitted",
                () -> !window.workbench().background().jobs().isEmpty());
        OpenWindow.act(() -> window.workbench().openPicture(two.get(1).id()));
        for (ArchivedPicture picture : two) {
            OpenWindow.await(
                    "a fit of " + picture.originalName(), () -> fitOf(picture).isPresent());
        }
        window.settle();
    }

    @Test
    void aPictureThatIsGoneOrGiantIsRefusedInWordsAndTheWindowLives() throws IOException {
        open("broken", false);
        ArchivedPicture gone = pictureOf(colourPictures().get(0));
        ArchivedPicture giant = pictureOf(colourPictures().get(1));
        ArchivedPicture good = pictureOf(colourPictures().get(2));
        Files.delete(catalog().fileOf(gone));
        Files.write(catalog().fileOf(giant), hugePng());
        measure(gone);
        assertThat(status()).contains("there is no such file");
        measure(giant);
        assertThat(status()).containsPattern("60[ ,.\u202f\u00a0]?000").contains("limit");
        measure(good);
        strike(KeyEvent.VK_F5);
        OpenWindow.await("a fit", () -> fitOf(good).isPresent());
        window.settle();
    }

    /** A PNG that claims 60 000 × 60 000 pixels and has none. */
    private static byte[] hugePng() {
        byte[] head = ByteBuffer.allocate(13)
                .putInt(60_000)
                .putInt(60_000)
                .put(new byte[] {8, 2, 0, 0, 0})
                .array();
        return ByteBuffer.allocate(57)
                .put(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10})
                .put(chunk("IHDR", head))
                .put(chunk("IDAT", new byte[0]))
                .put(chunk("IEND", new byte[0]))
                .array();
    }

    private static byte[] chunk(String name, byte[] content) {
        byte[] body = ByteBuffer.allocate(4 + content.length)
                .put(name.getBytes(StandardCharsets.US_ASCII))
                .put(content)
                .array();
        CRC32 crc = new CRC32();
        crc.update(body);
        return ByteBuffer.allocate(8 + body.length)
                .putInt(content.length)
                .put(body)
                .putInt((int) crc.getValue())
                .array();
    }

    @Test
    void twoPicturesShareAFrameAndAPlaceIsFollowedThroughTheSeason() throws IOException {
        open("pair", false);
        List<SampleTruth.Picture> two = colourPictures().subList(0, 2);
        for (SampleTruth.Picture one : two) {
            ArchivedPicture picture = pictureOf(one);
            measure(picture);
            strike(KeyEvent.VK_F5);
            OpenWindow.await("a fit", () -> fitOf(picture).isPresent());
            window.settle();
        }
        OpenWindow.act(() -> window.workbench().shelf().refresh());
        window.settle();
        strike(KeyEvent.VK_P);
        window.settle();
        assertThat(OpenWindow.<Boolean>ask(() -> window.find("pair").isShowing()))
                .isTrue();
        for (int kind = 0; kind < 3; kind++) {
            int index = kind;
            OpenWindow.act(() -> ((javax.swing.JComboBox<?>) window.find("compare.kind")).setSelectedIndex(index));
            window.settle();
            Component pair = window.find("pair");
            java.awt.image.BufferedImage image = OpenWindow.ask(() -> {
                var made = new java.awt.image.BufferedImage(
                        pair.getWidth(), pair.getHeight(), java.awt.image.BufferedImage.TYPE_INT_RGB);
                pair.paint(made.getGraphics());
                return made;
            });
            // Both halves show a planet, not night.
            assertThat(light(image, image.getWidth() / 4, image.getHeight() / 2))
                    .isGreaterThan(40);
            assertThat(light(image, image.getWidth() * 3 / 4, image.getHeight() / 2))
                    .isGreaterThan(40);
        }
        OpenWindow.act(() -> ((javax.swing.JButton) window.find("compare.leave")).doClick());
        window.settle();
        moveTo(two.get(1).cxPx(), two.get(1).cyPx() + 8);
        strike(KeyEvent.VK_R);
        window.settle();
        Component cells = window.find("season.cells");
        assertThat(OpenWindow.<Boolean>ask(cells::isShowing)).isTrue();
        int found = OpenWindow.ask(() -> {
            java.lang.reflect.Method count = cells.getClass().getDeclaredMethod("count");
            count.setAccessible(true);
            return (Integer) count.invoke(cells);
        });
        assertThat(found).isBetween(1, 2);
        // A click on the first cut-out opens its picture on the desk.
        hand.click(cells, new Point(40, 40));
        window.settle();
        assertThat(OpenWindow.<Boolean>ask(() -> window.find("canvas").isShowing()))
                .isTrue();
    }

    private static double light(java.awt.image.BufferedImage image, int x, int y) {
        double sum = 0;
        for (int dx = -10; dx < 10; dx++) {
            for (int dy = -10; dy < 10; dy++) {
                sum += new java.awt.Color(image.getRGB(x + dx, y + dy)).getGreen();
            }
        }
        return sum / 400;
    }
}
