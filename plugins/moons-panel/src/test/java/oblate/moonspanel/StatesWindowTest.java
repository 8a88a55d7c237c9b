/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Component;
import java.awt.Point;
import java.awt.Rectangle;
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
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JTabbedPane;
import javax.swing.JTextField;
import javax.swing.text.JTextComponent;
import oblate.archive.FilingFacts;
import oblate.archive.SeenState;
import oblate.archive.Site;
import oblate.base.Progress;
import oblate.drift.timing.Timing;
import oblate.image.TimeWish;
import oblate.workbench.WorkbenchContext;
import oblate.workbench.testing.Hand;
import oblate.workbench.testing.OpenWindow;
import oblate.workbench.testing.PanelJourney;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** States said in the window by mouse and keys, undone, and timed. */
class StatesWindowTest extends PanelJourney {
    /** Io's transit of 2027-09-26: outer touch 09:32:59, inner touch 09:36:35, of an independent table (JPL orbits by way of the Swiss Ephemeris 2.10). */
    private static final List<String> PICTURES =
            List.of("20270926T093100Z", "20270926T093500Z", "20270926T093600Z", "20270926T094000Z");

    /** The first picture, which the panel begins with: of another night. */
    private static final String EARLIER = "20270826T093100Z";

    private Hand hand;

    @AfterEach
    void letGo() {
        if (hand != null) {
            hand.close();
        }
    }

    private void filePictures() throws IOException {
        List<Path> files = new ArrayList<>();
        for (String name : Stream.concat(PICTURES.stream(), Stream.of(EARLIER)).toList()) {
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
        hand = new Hand();
        window.enter("moons.date", "2027-09-26");
        JTabbedPane tabs = (JTabbedPane) window.find("moons.tabs");
        Rectangle tab = OpenWindow.ask(() -> tabs.getBoundsAt(1));
        click(
                tabs,
                new Point(tab.x + tab.width / 2, tab.y + tab.height / 2),
                "the timings",
                () -> tabs.getSelectedIndex() == 1);
        // the way from the timings to the states
        Component way = window.find("moons.timings.states");
        click(
                way,
                new Point(way.getWidth() / 2, way.getHeight() / 2),
                "the states",
                () -> tabs.getSelectedIndex() == 2);
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

    private void click(Component on, Point place, String what, BooleanSupplier done) {
        hand.click(on, place);
        OpenWindow.await(what, done::getAsBoolean);
        window.settle();
    }

    private void clickRow(int row) {
        Rectangle cell = OpenWindow.ask(() -> table().getCellRect(row, 1, true));
        click(
                table(),
                new Point(cell.x + cell.width / 2, cell.y + cell.height / 2),
                "row " + row,
                () -> table().getSelectedRow() == row && table().isFocusOwner());
    }

    private void key(BooleanSupplier done, int... keys) {
        hand.strike(keys);
        OpenWindow.await("what a key does", done::getAsBoolean);
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
        key(() -> states().get(0).equals("clear"), KeyEvent.VK_1);
        // the next picture is chosen by itself
        assertThat(OpenWindow.<Integer>ask(() -> table().getSelectedRow())).isEqualTo(1);
        key(() -> states().get(1).equals("on_limb"), KeyEvent.VK_2);
        key(() -> states().get(2).equals("on_limb"), KeyEvent.VK_2);
        Component onDisc = window.find("moons.states.say.on_disc");
        click(onDisc, new Point(onDisc.getWidth() / 2, onDisc.getHeight() / 2), "a button", () -> states().get(3)
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
        key(() -> states().get(3).equals("-"), KeyEvent.VK_0);
        assertThat(timings()).hasSize(1);
        clickRow(3);
        key(() -> states().get(3).equals("on_disc"), KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
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
        key(() -> states().equals(List.of("-", "on_limb", "on_limb", "-")), KeyEvent.VK_2);
        key(() -> !states().contains("on_limb"), KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(states()).containsExactly("-", "-", "-", "-");
    }

    /** Whatever has the pictures read again, an undo or a report, a person stays at the night gone to. */
    @Test
    void theNightStaysWhenThePicturesAreReadAgain() throws IOException {
        open();
        window.context().archive().noteReported(List.of(1L), "a table");
        OpenWindow.act(() -> window.workbench().shelf().refresh());
        window.settle();
        assertThat(OpenWindow.<String>ask(() -> ((JTextField) window.find("moons.date")).getText()))
                .isEqualTo("2027-09-26");
        assertThat(OpenWindow.<Integer>ask(() -> table().getRowCount())).isEqualTo(4);
    }

    @Test
    void withoutAnEventInTheSpanItSaysSo() throws IOException {
        open();
        window.enter("moons.date", "2027-12-01");
        assertThat(OpenWindow.<String>ask(() -> ((JTextComponent) window.find("moons.states.hint")).getText()))
                .contains("No event of this span has a picture");
        assertThat(OpenWindow.<Integer>ask(() -> table().getRowCount())).isZero();
    }
}
