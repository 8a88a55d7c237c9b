/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.AWTException;
import java.awt.Component;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import javax.imageio.ImageIO;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JTabbedPane;
import javax.swing.text.JTextComponent;
import oblate.archive.FilingFacts;
import oblate.archive.SeenState;
import oblate.archive.Site;
import oblate.base.Progress;
import oblate.drift.timing.Timing;
import oblate.image.TimeWish;
import oblate.workbench.WorkbenchContext;
import oblate.workbench.testing.OpenWindow;
import oblate.workbench.testing.PanelJourney;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** States said in the window by mouse and keys, undone, and timed. */
@Timeout(value = 180, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class StatesWindowTest extends PanelJourney {
    /** Io's transit of 2027-09-26: outer touch 09:32:59, inner touch 09:36:35, of an independent table (JPL orbits by way of the Swiss Ephemeris 2.10). */
    private static final List<String> PICTURES =
            List.of("20270926T093100Z", "20270926T093500Z", "20270926T093600Z", "20270926T094000Z");

    private static final int PATIENCE_MS = 20_000;

    private Robot robot;

    @BeforeEach
    void takeTheMouse() throws AWTException {
        robot = new Robot();
    }

    private void filePictures() throws IOException {
        List<Path> files = new ArrayList<>();
        for (String name : PICTURES) {
            BufferedImage image = new BufferedImage(64, 64, BufferedImage.TYPE_INT_RGB);
            image.setRGB(1, 1, name.hashCode());
            files.add(folder.resolve(name + ".png"));
            ImageIO.write(image, "png", files.get(files.size() - 1).toFile());
        }
        WorkbenchContext context = context();
        try (var archive = context.archive()) {
            archive.keepSite(new Site("Hill", 35, 170, 300, Optional.empty()));
            FilingFacts facts = new FilingFacts(
                    Optional.of("jupiter"),
                    Optional.of("Hill"),
                    Optional.empty(),
                    Optional.empty(),
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
            context.filing().file(files, facts, Progress.SILENT);
        }
    }

    private void open() throws IOException {
        filePictures();
        open("moons");
        JTabbedPane tabs = (JTabbedPane) window.find("moons.tabs");
        Rectangle tab = OpenWindow.ask(() -> tabs.getBoundsAt(1));
        click(tabs, tab.x + tab.width / 2, tab.y + tab.height / 2, () -> tabs.getSelectedIndex() == 1);
        // the way from the timings to the states
        Component way = window.find("moons.timings.states");
        click(way, way.getWidth() / 2, way.getHeight() / 2, () -> tabs.getSelectedIndex() == 2);
        JComboBox<?> events = (JComboBox<?>) window.find("moons.states.event");
        OpenWindow.act(() -> events.setSelectedItem(java.util.stream.IntStream.range(0, events.getItemCount())
                .mapToObj(events::getItemAt)
                .filter(e -> e.toString().startsWith("Io transit"))
                .findFirst()
                .orElseThrow()));
        window.settle();
    }

    private StateTable table() {
        return (StateTable) window.find("moons.states.rows");
    }

    /** Clicks until what the click is to bring about is there, for a click may come before the window is drawn. */
    private void click(Component on, int x, int y, BooleanSupplier done) {
        long end = System.currentTimeMillis() + PATIENCE_MS;
        while (!OpenWindow.ask(done::getAsBoolean)) {
            Point at = OpenWindow.ask(on::getLocationOnScreen);
            robot.mouseMove(at.x + x, at.y + y);
            robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
            robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
            robot.delay(60);
            window.settle();
            assertThat(System.currentTimeMillis())
                    .as("a click on " + on.getName())
                    .isLessThan(end);
        }
    }

    private void clickRow(int row) {
        Rectangle cell = OpenWindow.ask(() -> table().getCellRect(row, 1, true));
        click(
                table(),
                cell.x + cell.width / 2,
                cell.y + cell.height / 2,
                () -> table().getSelectedRow() == row && table().isFocusOwner());
    }

    private void key(int key, BooleanSupplier done) {
        robot.keyPress(key);
        robot.keyRelease(key);
        long end = System.currentTimeMillis() + PATIENCE_MS;
        while (!OpenWindow.ask(done::getAsBoolean)) {
            robot.delay(30);
            assertThat(System.currentTimeMillis())
                    .as("key " + KeyEvent.getKeyText(key))
                    .isLessThan(end);
        }
        window.settle();
    }

    private List<String> states() {
        return OpenWindow.ask(() -> table().shown().stream()
                .map(l -> l.said().map(SeenState::state).orElse("-"))
                .toList());
    }

    private List<Timing> timings() {
        JTabbedPane tabs = (JTabbedPane) window.find("moons.tabs");
        OpenWindow.act(() -> tabs.setSelectedIndex(1));
        window.settle();
        List<Timing> timings = OpenWindow.ask(() -> ((TimingRows) window.find("moons.timings.rows")).shown());
        OpenWindow.act(() -> tabs.setSelectedIndex(2));
        window.settle();
        return timings;
    }

    @Test
    void statesAreSaidByKeysAndButtonsAndTimed() throws IOException {
        open();
        assertThat(OpenWindow.<Integer>ask(() -> table().getRowCount())).isEqualTo(4);
        assertThat(OpenWindow.<Object>ask(() -> table().getValueAt(0, 2)))
                .asString()
                .contains("before outer touch");
        clickRow(0);
        key(KeyEvent.VK_1, () -> states().get(0).equals("clear"));
        // the next picture is chosen by itself
        assertThat(OpenWindow.<Integer>ask(() -> table().getSelectedRow())).isEqualTo(1);
        key(KeyEvent.VK_2, () -> states().get(1).equals("on_limb"));
        key(KeyEvent.VK_2, () -> states().get(2).equals("on_limb"));
        Component onDisc = window.find("moons.states.say.on_disc");
        click(onDisc, onDisc.getWidth() / 2, onDisc.getHeight() / 2, () -> states().get(3)
                .equals("on_disc"));
        assertThat(states()).containsExactly("clear", "on_limb", "on_limb", "on_disc");

        String said = OpenWindow.ask(() -> ((JLabel) window.find("moons.states.result")).getText());
        assertThat(said)
                .startsWith("Observed − predicted, ")
                .contains("outer touch (t1): ")
                .contains("inner touch (t2): ")
                .contains(" ± ");
        List<Timing> timings = timings();
        assertThat(timings).hasSize(3).allSatisfy(t -> {
            assertThat(t.site()).contains("Hill");
            assertThat(t.errors().siteS()).isZero();
        });
        // middle of 09:31 and 09:35; the pictures' times are known to a second or so
        assertThat(timings.get(0).oMinusPS()).isCloseTo(1, within(3.0));

        // taken back, and back again
        clickRow(3);
        key(KeyEvent.VK_0, () -> states().get(3).equals("-"));
        assertThat(timings()).hasSize(1);
        clickRow(3);
        robot.keyPress(KeyEvent.VK_CONTROL);
        key(KeyEvent.VK_Z, () -> states().get(3).equals("on_disc"));
        robot.keyRelease(KeyEvent.VK_CONTROL);
        assertThat(states()).containsExactly("clear", "on_limb", "on_limb", "on_disc");
        assertThat(timings()).hasSize(3);
        assertThat(window.context().archive().seenStateHistory("jupiter"))
                .extracting(SeenState::state)
                .containsExactly("clear", "on_limb", "on_limb", "on_disc", "open", "on_disc");
    }

    @Test
    void severalPicturesAreSaidAtOnceAndUndoneAtOnce() throws IOException {
        open();
        clickRow(1);
        OpenWindow.act(() -> table().setRowSelectionInterval(1, 2));
        key(KeyEvent.VK_2, () -> states().equals(List.of("-", "on_limb", "on_limb", "-")));
        robot.keyPress(KeyEvent.VK_CONTROL);
        key(KeyEvent.VK_Z, () -> !states().contains("on_limb"));
        robot.keyRelease(KeyEvent.VK_CONTROL);
        assertThat(states()).containsExactly("-", "-", "-", "-");
    }

    @Test
    void withoutAnEventInTheSpanItSaysSo() throws IOException {
        open();
        OpenWindow.act(() -> {
            javax.swing.JTextField date = (javax.swing.JTextField) window.find("moons.date");
            date.setText("2027-12-01");
            date.postActionEvent();
        });
        window.settle();
        assertThat(OpenWindow.<String>ask(() -> ((JTextComponent) window.find("moons.states.hint")).getText()))
                .contains("No event of this span has a picture");
        assertThat(OpenWindow.<Integer>ask(() -> table().getRowCount())).isZero();
    }
}
