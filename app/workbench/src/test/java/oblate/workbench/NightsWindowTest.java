/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.io.File;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.TransferHandler;
import javax.swing.text.JTextComponent;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.FilingFacts;
import oblate.archive.HistoryEntry;
import oblate.archive.PictureSearch;
import oblate.archive.Site;
import oblate.base.PluginHost;
import oblate.base.Progress;
import oblate.image.TimeWish;
import oblate.sample.SampleSeason;
import oblate.workbench.testing.Hand;
import oblate.workbench.testing.OnScreen;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The panel of nights and the season ribbon by mouse and keys, on the sample night. */
@Tag("window")
@Timeout(value = 150, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@ExtendWith(OnScreen.class)
class NightsWindowTest {
    @TempDir
    static Path folder;

    private OpenWindow window;
    private Hand hand;
    private PluginHost plugins;
    private Path archive;

    @BeforeAll
    static void fileTheSampleNight() throws IOException {
        SampleSeason.night().writeTo(folder.resolve("season"), Progress.SILENT);
        WorkbenchContext context =
                OpenWindow.context(folder.resolve("base"), folder.resolve("none"), PluginHost.bundledOnly());
        try (Archive made = context.archive()) {
            made.keepSite(new Site("Field", 51, 4, 10, Optional.empty()));
            made.keepSite(new Site("Hill", 44, 3, 900, Optional.empty()));
            context.filing()
                    .file(List.of(folder.resolve("season/pictures")), facts(Optional.of("jupiter")), Progress.SILENT);
            Path strange = Files.createDirectories(folder.resolve("strange"));
            context.filing()
                    .file(
                            List.of(WallScrollTest.disc(strange.resolve("nowhen.png"), 90)),
                            facts(Optional.empty()),
                            Progress.SILENT);
        }
    }

    /** No observer is said, nor a site: the to-do list has something to tell. */
    private static FilingFacts facts(Optional<String> planetId) {
        return new FilingFacts(
                planetId,
                Optional.empty(),
                Optional.empty(),
                Optional.of("kit A"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                new TimeWish(
                        Optional.empty(),
                        Optional.of(ZoneOffset.UTC),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()),
                true);
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

    private void open(String name) throws IOException {
        Path settings = Files.createDirectories(folder.resolve(name));
        Files.writeString(
                settings.resolve("workbench.properties"), "panel.measure.fit.new=false\npanel.nights.motion=false\n");
        archive = settings.resolve("archive");
        copy(folder.resolve("base"), archive);
        plugins = PluginHost.withFolder(settings.resolve("plugins"));
        window = new OpenWindow(archive, settings, plugins);
        OpenWindow.act(() -> {
            window.workbench().frame().setBounds(0, 0, 1400, 900);
            window.workbench().showPanel("nights");
        });
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

    private void strike(int... keys) {
        hand.strike(keys);
    }

    private void type(String text) {
        hand.type(text);
    }

    private String text(String name) {
        Component found = window.find(name);
        return OpenWindow.ask(
                () -> found instanceof JLabel label ? label.getText() : ((JTextComponent) found).getText());
    }

    private List<ArchivedPicture> all() {
        return window.context().archive().pictures(PictureSearch.all());
    }

    private boolean waysAreOffered() {
        return OpenWindow.find(window.workbench().frame().getRootPane(), "search.ways")
                .filter(Component::isShowing)
                .isPresent();
    }

    private void focusWall() {
        Component wall = window.find("wall");
        OpenWindow.act(wall::requestFocusInWindow);
        OpenWindow.await("the wall has the focus", wall::isFocusOwner);
    }

    private static Rectangle tileOf(Component wall, long id) {
        return OpenWindow.ask(() -> {
            java.lang.reflect.Method bounds = wall.getClass().getDeclaredMethod("boundsOf", long.class);
            bounds.setAccessible(true);
            return (Rectangle) ((Optional<?>) bounds.invoke(wall, id)).orElseThrow();
        });
    }

    @Test
    void aSearchIsCompletedFindsSaysSoWhenNothingAndIsCleared() throws IOException {
        open("search");
        int total = all().size();
        assertThat(text("found")).startsWith(total + " pictures");
        focusWall();
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_F);
        JTextField search = (JTextField) window.find("search");
        OpenWindow.await("the caret", search::isFocusOwner);
        type("sta");
        OpenWindow.await("the list of ways", this::waysAreOffered);
        strike(KeyEvent.VK_TAB);
        OpenWindow.await("the key is completed", () -> search.getText().equals("state:"));
        OpenWindow.await("its values", this::waysAreOffered);
        type("look");
        window.settle();
        strike(KeyEvent.VK_ENTER);
        window.settle();
        long undated = all().stream().filter(p -> p.time().isEmpty()).count();
        assertThat(undated).isPositive();
        OpenWindow.await("what needs a look", () -> text("found").startsWith(undated + " of " + total));

        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_F);
        OpenWindow.await("the caret again", search::isFocusOwner);
        strike(KeyEvent.VK_END);
        type(" kit:zebra");
        OpenWindow.await("nothing", () -> text("found").equals("nothing found"));
        strike(KeyEvent.VK_ESCAPE);
        OpenWindow.await("cleared", () -> search.getText().isEmpty());
        OpenWindow.await("everything again", () -> text("found").startsWith(total + " pictures"));

        // The last search is offered again.
        strike(KeyEvent.VK_DOWN);
        OpenWindow.await("the list once more", this::waysAreOffered);
        strike(KeyEvent.VK_ENTER);
        OpenWindow.await("the last search", () -> search.getText().contains("kit:zebra"));
    }

    @Test
    void manyPicturesAreChosenCorrectedTogetherAndTheCorrectionIsTakenBack() throws IOException {
        open("bulk");
        int total = all().size();
        List<Optional<String>> before = observers();
        focusWall();
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_A);
        // What is chosen comes into the fields a moment later; nobody types before it is there.
        window.settle();
        Component observer = editor("facts.observer");
        OpenWindow.act(observer::requestFocusInWindow);
        OpenWindow.await("the field", observer::isFocusOwner);
        window.settle();
        type("someone");
        OpenWindow.await("the name", () -> ((JTextComponent) observer).getText().equals("someone"));
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_ENTER);
        OpenWindow.await("all have the observer", () -> all().stream()
                .allMatch(p -> p.observer().equals(Optional.of("someone"))));
        window.settle();
        assertThat(window.context().archive().history(total))
                .extracting(HistoryEntry::action)
                .containsOnly("corrected");
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        OpenWindow.await("all are as they were", () -> observers().equals(before));
        window.settle();
        strike(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_Z);
        OpenWindow.await("all have it again", () -> all().stream()
                .allMatch(p -> p.observer().equals(Optional.of("someone"))));
        window.settle();
    }

    @Test
    void aCatalogLockedByAnotherProgramIsToldAndWhatWasTypedStays() throws IOException, SQLException {
        open("locked");
        ArchivedPicture picture = all().get(0);
        OpenWindow.act(() -> window.workbench().selection().choosePicture(picture.id()));
        window.settle();
        JTextField notes = (JTextField) window.find("facts.notes");
        Component apply = window.find("facts.apply");
        try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + archive.resolve("catalog.db"));
                Statement statement = other.createStatement()) {
            statement.execute("begin immediate");
            OpenWindow.act(() -> notes.setText("soft edges"));
            hand.click(apply);
            window.settle();
            assertThat(text("status")).contains("in use by another program");
            assertThat(text("facts.notes")).isEqualTo("soft edges");
            statement.execute("rollback");
        }
        OpenWindow.await("it can be tried again", apply::isEnabled);
        hand.click(apply);
        OpenWindow.await("it is kept", () -> window.context()
                .archive()
                .picture(picture.id())
                .orElseThrow()
                .notes()
                .equals(Optional.of("soft edges")));
        window.settle();
        assertThat(OpenWindow.<Boolean>ask(apply::isEnabled)).isFalse();
    }

    private List<Optional<String>> observers() {
        return all().stream().map(ArchivedPicture::observer).toList();
    }

    private Component editor(String name) {
        Component box = window.find(name);
        return box instanceof javax.swing.JComboBox<?> combo
                ? OpenWindow.<Component>ask(() -> combo.getEditor().getEditorComponent())
                : box;
    }

    @Test
    void aTimeIsCorrectedByAShiftButNotWithoutAReason() throws IOException {
        open("time");
        ArchivedPicture picture = all().get(0);
        Component wall = window.find("wall");
        OpenWindow.act(() -> window.workbench().selection().choosePicture(picture.id()));
        window.settle();
        Rectangle tile = tileOf(wall, picture.id());
        hand.click(wall, new Point(tile.x + 40, tile.y + 40));
        Component time = editor("facts.time");
        OpenWindow.act(() -> {
            time.requestFocusInWindow();
            ((JTextField) time).setText("+90 s");
        });
        Component apply = window.find("facts.apply");
        assertThat(OpenWindow.<Boolean>ask(apply::isEnabled)).isFalse();
        assertThat(text("facts.trouble")).contains("why the time changes");
        OpenWindow.act(() -> ((JTextField) window.find("facts.reason")).setText("the clock was slow"));
        hand.click(apply);
        OpenWindow.await(
                "the time is moved",
                () -> all().stream().filter(p -> p.id() == picture.id()).allMatch(p -> p.time()
                        .orElseThrow()
                        .midUtc()
                        .equals(picture.time().orElseThrow().midUtc().plusSeconds(90))));
        window.settle();
        assertThat(window.context().archive().history(1).get(0).detail()).contains("the clock was slow");
    }

    @Test
    void theToDoListIsWorkedThroughByNumberKeys() throws IOException {
        open("todo");
        int total = all().size();
        long undated = all().stream().filter(p -> p.time().isEmpty()).count();
        ArchivedPicture first = all().get(0);
        // One picture says who observed: the list offers that name for the others.
        OpenWindow.act(() -> window.workbench().selection().choosePicture(first.id()));
        window.settle();
        Component observer = editor("facts.observer");
        OpenWindow.act(() -> {
            observer.requestFocusInWindow();
            ((JTextComponent) observer).setText("somebody");
        });
        hand.click(window.find("facts.apply"));
        OpenWindow.await("one has an observer", () -> all().stream()
                .anyMatch(p -> p.observer().isPresent()));
        window.settle();
        focusWall();
        strike(KeyEvent.VK_ALT, KeyEvent.VK_3);
        javax.swing.JList<?> list = (javax.swing.JList<?>) window.find("todo.list");
        OpenWindow.await("the list", list::isShowing);
        window.settle();
        assertThat(text("todo.summary"))
                .contains(undated + " picture without a time")
                .contains("without an observer")
                .contains("without a site");
        OpenWindow.act(() -> {
            list.setSelectedIndex(list.getModel().getSize() - 1);
            list.requestFocusInWindow();
        });
        OpenWindow.await("the list has the focus", list::isFocusOwner);
        // The last kinds are nights without an observer: 1 says it was the one known.
        while (all().stream().anyMatch(p -> p.observer().isEmpty())) {
            long before = all().stream().filter(p -> p.observer().isEmpty()).count();
            strike(KeyEvent.VK_1);
            OpenWindow.await(
                    "fewer lack an observer",
                    () -> all().stream().filter(p -> p.observer().isEmpty()).count() < before);
            window.settle();
        }
        assertThat(all()).hasSize(total).allMatch(p -> p.observer().isPresent());
        assertThat(text("todo.summary")).doesNotContain("observer");
    }

    @Test
    void aClickOnTheCoverageMapGoesToTheNightAndDraggingTheRibbonChoosesASpan() throws IOException {
        open("coverage");
        int total = all().size();
        focusWall();
        strike(KeyEvent.VK_ALT, KeyEvent.VK_2);
        Component map = window.find("coverage.map");
        OpenWindow.await("the map", map::isShowing);
        window.settle();
        assertThat(text("coverage.sum")).contains("of 360°").contains("not seen");
        hand.click(map, new Point(map.getWidth() / 2, 62));
        Component wall = window.find("wall");
        OpenWindow.await("the wall is back", wall::isShowing);
        window.settle();

        Component ribbon = window.find("ribbon");
        int y = ribbon.getHeight() / 2;
        hand.drag(
                ribbon,
                new Point(ribbon.getWidth() - 200, y),
                new Point(ribbon.getWidth() - 100, y),
                new Point(ribbon.getWidth() - 40, y));
        OpenWindow.await("the span", () -> window.find("span").isShowing());
        OpenWindow.await("nothing in it", () -> text("found").equals("nothing found"));
        strike(KeyEvent.VK_ESCAPE);
        OpenWindow.await("all of the time", () -> text("found").startsWith(total + " pictures"));
        assertThat(OpenWindow.<Boolean>ask(() -> window.find("span").isVisible()))
                .isFalse();

        // Keys on the ribbon: End chooses the last dated picture.
        strike(KeyEvent.VK_END);
        long last = all().stream()
                .filter(p -> p.time().isPresent())
                .reduce((a, b) -> b)
                .orElseThrow()
                .id();
        OpenWindow.await(
                "the last one", () -> window.workbench().selection().pictureId().equals(Optional.of(last)));
    }

    private void drop(Path... files) {
        OpenWindow.act(() -> {
            JComponent pane = (JComponent) window.workbench().frame().getContentPane();
            List<File> dropped = Stream.of(files).map(Path::toFile).toList();
            pane.getTransferHandler().importData(new TransferHandler.TransferSupport(pane, new FileList(dropped)));
        });
        window.settle();
    }

    @Test
    void aFolderOfJunkIsUnderstoodRefusedInSentencesAndTheWindowLives() throws IOException {
        open("junk");
        int total = all().size();
        Path junk = Files.createDirectories(folder.resolve("junkfolder/deep"));
        Files.writeString(junk.resolve("text.png"), "no picture");
        Files.write(junk.resolve("empty.fits"), new byte[0]);
        try (RandomAccessFile giant =
                new RandomAccessFile(junk.resolve("giant.fits").toFile(), "rw")) {
            giant.setLength(3_000_000_000L);
        }
        Files.createSymbolicLink(junk.resolve("loop"), folder.resolve("junkfolder"));
        Files.createSymbolicLink(junk.resolve("nowhere.png"), folder.resolve("is-not-there.png"));
        for (int i = 0; i < 1500; i++) {
            Files.write(junk.resolve("many-" + i + ".png"), new byte[] {(byte) i, 1, 2});
        }
        WallScrollTest.disc(junk.resolve("nowhen.png"), 100);
        drop(folder.resolve("junkfolder"), folder.resolve("is-not-there.fits"));
        JTable table = (JTable) window.find("filing.table");
        int rows = OpenWindow.ask(table::getRowCount);
        assertThat(rows).isEqualTo(1500 + 3 + 1 + 1);
        assertThat(text("filing.understood"))
                .startsWith("0 pictures can be filed")
                .contains("1 without a time will be refused")
                .contains("1504 cannot be read as pictures");
        hand.click(window.find("file"));
        OpenWindow.await("the outcomes", () -> window.find("outcomes").isShowing());
        String sentences = text("outcome.sentences");
        assertThat(sentences.lines()).hasSize(1505).allMatch(line -> line.startsWith("Refused: "));
        assertThat(sentences)
                .contains("giant.fits")
                .contains("is-not-there.fits")
                .contains("empty.fits");
        assertThat(all()).hasSize(total);
        hand.click(window.find("outcomes.close"));
        OpenWindow.await("the sheet is gone", () -> !window.find("outcomes").isShowing());
    }

    @Test
    void whatCannotBeWrittenIsToldAndTheSheetKeepsWhatWasTyped() throws IOException {
        open("vanished");
        Path fresh = Files.createDirectories(folder.resolve("fresh"));
        Path file = WallScrollTest.disc(fresh.resolve("jupiter-20310324T210530Z.png"), 110);
        drop(file);
        assertThat(text("filing.understood")).startsWith("1 picture can be filed");
        JTable table = (JTable) window.find("filing.table");
        assertThat(OpenWindow.<Object>ask(() -> table.getValueAt(0, 1))).isEqualTo("24 March 2031, 21:05.5 UT");
        assertThat(OpenWindow.<Object>ask(() -> table.getValueAt(0, 3))).isEqualTo("Jupiter");
        // The disk with the archive goes away while the sheet is open.
        Path away = archive.resolveSibling("away");
        Files.move(archive, away);
        Files.writeString(archive, "in the way");
        hand.click(window.find("file"));
        OpenWindow.await(
                "it is told",
                () -> window.find("filing").isShowing()
                                && !text("filing.trouble").isEmpty()
                        || window.find("outcomes").isShowing()
                                && text("outcome.sentences").contains("Refused"));
        // It comes back: the same order goes through.
        Files.delete(archive);
        Files.move(away, archive);
        drop(file);
        hand.click(window.find("file"));
        OpenWindow.await("it is filed", () -> all().stream()
                .anyMatch(p -> p.originalName().equals(file.getFileName().toString())));
        window.settle();
    }

    @Test
    void filesMayBeDroppedOnEveryPartOfTheWindow() throws IOException {
        open("anywhere");
        int[] met = new int[1];
        OpenWindow.act(() -> everyDropTarget(window.workbench().frame().getContentPane(), met));
        assertThat(met[0]).isGreaterThan(10);
    }

    private static void everyDropTarget(Container in, int[] met) {
        for (Component child : in.getComponents()) {
            if (child.getDropTarget() != null) {
                assertThat(child.getDropTarget())
                        .as(child.getClass() + " " + child.getName())
                        .isInstanceOf(FileDrop.Before.class);
                met[0]++;
            }
            if (child instanceof Container container) {
                everyDropTarget(container, met);
            }
        }
    }
}
