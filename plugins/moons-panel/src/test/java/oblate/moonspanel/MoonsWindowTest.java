/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Component;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JScrollPane;
import javax.swing.JSlider;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import oblate.archive.FilingFacts;
import oblate.archive.Site;
import oblate.base.Progress;
import oblate.image.TimeWish;
import oblate.sky.UtcTime;
import oblate.sky.event.EventKind;
import oblate.workbench.WorkbenchContext;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;
import oblate.workbench.testing.PanelJourney;
import org.junit.jupiter.api.Test;

/** The panel in the window, on a screen. */
class MoonsWindowTest extends PanelJourney {
    private String text(String field) {
        return OpenWindow.ask(() -> ((JTextField) window.find(field)).getText());
    }

    private String label(String name) {
        return OpenWindow.ask(() -> ((JLabel) window.find(name)).getText());
    }

    private int rowOf(String kind, String moon) {
        JTable table = (JTable) window.find("moons.events");
        return OpenWindow.ask(() -> {
            for (int row = 0; row < table.getRowCount(); row++) {
                if (table.getValueAt(row, 0).equals(kind)
                        && table.getValueAt(row, 1).equals(moon)) {
                    return row;
                }
            }
            throw new AssertionError(kind + " of " + moon + " is not listed");
        });
    }

    private void choose(int row) {
        JTable table = (JTable) window.find("moons.events");
        OpenWindow.act(() -> table.setRowSelectionInterval(row, row));
        window.settle();
    }

    /** A plain picture whose name says its time, within two hours of Ganymede's transit of 22 September 2027. */
    private void fileAPicture() throws IOException {
        Path file = folder.resolve("20270922T150000Z.png");
        ImageIO.write(new BufferedImage(64, 64, BufferedImage.TYPE_INT_RGB), "png", file.toFile());
        WorkbenchContext context = context();
        try (var archive = context.archive()) {
            archive.keepSite(new Site("Alder", 50, 10, 100, Optional.empty()));
            archive.keepSite(new Site("Field", -35, 149, 10, Optional.empty()));
            FilingFacts facts = new FilingFacts(
                    Optional.of("jupiter"),
                    Optional.of("Field"),
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
            context.filing().file(List.of(file), facts, Progress.SILENT);
            assertThat(archive.pictures(oblate.archive.PictureSearch.all())).hasSize(1);
        }
    }

    @Test
    void anEmptyArchiveStillShowsEventsOfAnyDate() {
        open("moons");
        window.enter("moons.date", "2027-09-22");
        choose(rowOf("Transit", "Ganymede"));
        assertThat(text("moons.time")).startsWith("2027-09-22T15:4");
        assertThat(label("moons.said")).startsWith("Ganymede: transit");
        JSlider slider = (JSlider) window.find("moons.slider");
        OpenWindow.act(() -> slider.setValue(0));
        window.settle();
        assertThat(text("moons.time")).isEqualTo("2027-09-22T12:00:00Z");
        window.enter("moons.time", "2027-09-25T01:02:03Z");
        assertThat(text("moons.date")).isEqualTo("2027-09-24");
        assertThat(text("moons.time")).isEqualTo("2027-09-25T01:02:03Z");
        window.enter("moons.date", "yesterday");
        assertThat(text("moons.time")).isEqualTo("2027-09-25T01:02:03Z");
    }

    /** Times and names have room in a window of usual width; in a narrow one the table scrolls and the choices take several lines. */
    @Test
    void noTimeOrNameIsCut() {
        open("moons");
        window.enter("moons.date", "2027-09-22");
        JTable table = (JTable) window.find("moons.events");
        for (int width : new int[] {1440, 690}) {
            OpenWindow.act(() -> {
                window.workbench().frame().setBounds(0, 0, width, 900);
                window.workbench().frame().validate();
            });
            window.settle();
            OpenWindow.act(() -> {
                assertThat(table.getRowCount()).isPositive();
                for (int row = 0; row < table.getRowCount(); row++) {
                    for (int column = 0; column < table.getColumnCount() - 1; column++) {
                        Component cell = table.prepareRenderer(table.getCellRenderer(row, column), row, column);
                        assertThat(table.getCellRect(row, column, false).width)
                                .as(width + " px: " + table.getValueAt(row, column))
                                .isGreaterThanOrEqualTo(cell.getPreferredSize().width);
                    }
                }
            });
        }
        Component planet = window.find("moons.planet");
        Component mirrored = window.find("moons.mirrored");
        assertThat(OpenWindow.<Integer>ask(() -> mirrored.getY() - planet.getY()))
                .isPositive();
        assertThat(OpenWindow.<Integer>ask(mirrored::getWidth))
                .isEqualTo(OpenWindow.<Integer>ask(() -> mirrored.getPreferredSize().width));
    }

    /** The bands: the drawing follows the pointer and goes back, a click on a box chooses its event, elsewhere it moves the instant. */
    @Test
    void theBandsAreDrivenByTheMouse() {
        open("moons");
        window.enter("moons.date", "2027-09-22");
        EventBands bands = (EventBands) window.find("moons.bands");
        BandLayout layout = OpenWindow.ask(() -> BandLayout.of(bands.found().orElseThrow(), bands.getWidth()));
        int band = layout.names().indexOf("Ganymede");
        Happening transit = layout.events().get(band).stream()
                .filter(e -> e.kind() == EventKind.TRANSIT)
                .findFirst()
                .orElseThrow();
        Rectangle2D box = layout.box(band, transit);
        mouse(bands, MouseEvent.MOUSE_PRESSED, box.getMaxX() - 2, box.getCenterY());
        assertThat(label("moons.said")).startsWith("Ganymede: transit");
        assertThat(text("moons.time")).startsWith("2027-09-22T15:4");
        double x = layout.axis().x(UtcTime.parse("2027-09-23T03:00:00Z"));
        SystemDrawing near = (SystemDrawing) window.find("moons.near");
        UtcTime before = OpenWindow.ask(() -> near.scene().orElseThrow().disc().time());
        mouse(bands, MouseEvent.MOUSE_MOVED, x, 4);
        assertThat(OpenWindow.<Double>ask(() -> near.scene()
                        .orElseThrow()
                        .disc()
                        .time()
                        .clockSecondsSince(layout.axis().at(x))))
                .isCloseTo(0, within(layout.axis().span().clockSeconds() / bands.getWidth()));
        assertThat(text("moons.time")).startsWith("2027-09-22T15:4");
        mouse(bands, MouseEvent.MOUSE_EXITED, x, -4);
        assertThat(OpenWindow.<UtcTime>ask(
                        () -> near.scene().orElseThrow().disc().time()))
                .isEqualTo(before);
        mouse(bands, MouseEvent.MOUSE_PRESSED, x, 4);
        assertThat(text("moons.time")).startsWith("2027-09-23T0");
    }

    private void mouse(Component on, int what, double x, double y) {
        OpenWindow.act(() -> on.dispatchEvent(new MouseEvent(
                on,
                what,
                0,
                0,
                (int) Math.round(x),
                (int) Math.round(y),
                1,
                false,
                what == MouseEvent.MOUSE_PRESSED ? MouseEvent.BUTTON1 : MouseEvent.NOBUTTON)));
        window.settle();
    }

    /** Also what lies far down in the inspector does not scroll it away from the event that was chosen. */
    @Test
    void theInspectorStaysAtItsTopWhenAnEventIsChosen() throws IOException {
        fileAPicture();
        open("moons");
        OpenWindow.act(() -> window.workbench().frame().setBounds(0, 0, 1400, 700));
        window.settle();
        choose(rowOf("Transit", "Ganymede"));
        Component details = window.find("moons.details");
        JScrollPane scroll =
                OpenWindow.ask(() -> (JScrollPane) SwingUtilities.getAncestorOfClass(JScrollPane.class, details));
        assertThat(OpenWindow.<Integer>ask(() -> scroll.getViewport().getViewPosition().y))
                .isZero();
    }

    @Test
    void withoutAPictureTheSiteOfTheLastTimeIsOfferedElseTheFirst() throws IOException {
        WorkbenchContext context = context();
        try (var archive = context.archive()) {
            archive.keepSite(new Site("Alder", 50, 10, 100, Optional.empty()));
            archive.keepSite(new Site("Field", -35, 149, 10, Optional.empty()));
        }
        open("moons");
        JComboBox<?> sites = (JComboBox<?>) window.find("moons.site");
        assertThat(OpenWindow.<Object>ask(sites::getSelectedItem)).isEqualTo("Alder");
        OpenWindow.act(() -> sites.setSelectedItem("Field"));
        window.settle();
        window.close();
        open("moons");
        JComboBox<?> again = (JComboBox<?>) window.find("moons.site");
        assertThat(OpenWindow.<Object>ask(again::getSelectedItem)).isEqualTo("Field");
    }

    private void readAgain() {
        OpenWindow.act(() -> window.workbench().shelf().refresh());
        window.settle();
    }

    @Test
    void theNightOfThePictureIsShownAndAPictureNearAnEventOpens() throws IOException {
        fileAPicture();
        Files.createDirectories(folder.resolve("settings"));
        Files.writeString(folder.resolve("settings/workbench.properties"), "panel.measure.fit.new=false\n");
        open("moons");
        assertThat(text("moons.date")).isEqualTo("2027-09-22");
        assertThat(text("moons.time")).isEqualTo("2027-09-22T15:00:00Z");
        JComboBox<?> sites = (JComboBox<?>) window.find("moons.site");
        assertThat(OpenWindow.<Object>ask(sites::getSelectedItem)).isEqualTo("Field");
        readAgain();
        assertThat(OpenWindow.<Object>ask(sites::getSelectedItem)).isEqualTo("Field");
        OpenWindow.act(() -> sites.setSelectedIndex(0));
        window.settle();
        readAgain();
        assertThat(OpenWindow.<Integer>ask(sites::getSelectedIndex))
                .as("from the Earth's centre, as a person chose")
                .isZero();
        choose(rowOf("Transit", "Ganymede"));
        JList<?> pictures = (JList<?>) window.find("moons.pictures");
        assertThat(OpenWindow.<Integer>ask(() -> pictures.getModel().getSize())).isEqualTo(1);
        OpenWindow.act(() -> {
            pictures.setSelectedIndex(0);
            pictures.dispatchEvent(
                    new MouseEvent(pictures, MouseEvent.MOUSE_CLICKED, 0, 0, 5, 5, 2, false, MouseEvent.BUTTON1));
        });
        window.settle();
        Component canvas = window.find("canvas");
        assertThat(OpenWindow.<Boolean>ask(canvas::isShowing)).isTrue();
        assertThat(OpenWindow.<Optional<Long>>ask(
                        () -> window.workbench().selection().pictureId()))
                .isPresent();
    }

    @Test
    void everyThemeDrawsThePlanetAndTheRedOneOnlyInRed() {
        open("moons");
        window.enter("moons.date", "2027-09-22");
        for (Theme theme : Theme.values()) {
            OpenWindow.act(() -> window.workbench().setTheme(theme));
            window.settle();
            Component near = window.find("moons.near");
            BufferedImage image = OpenWindow.ask(() -> {
                BufferedImage drawn = new BufferedImage(near.getWidth(), near.getHeight(), BufferedImage.TYPE_INT_RGB);
                near.paint(drawn.getGraphics());
                return drawn;
            });
            int middle = image.getRGB(image.getWidth() / 2 + 5, image.getHeight() / 2 + 9);
            assertThat(middle & 0xFFFFFF).as(theme.label()).isNotZero();
            if (theme == Theme.RED) {
                assertThat(middle >> 16 & 255).isGreaterThan(2 * (middle >> 8 & 255));
            }
        }
    }
}
