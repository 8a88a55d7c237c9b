/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import javax.swing.JLabel;
import javax.swing.JTabbedPane;
import javax.swing.JTextField;
import javax.swing.text.JTextComponent;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.FilingFacts;
import oblate.archive.NewMark;
import oblate.archive.PictureSearch;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.image.TimeWish;
import oblate.workbench.WorkbenchContext;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;
import oblate.workbench.testing.PanelJourney;
import org.junit.jupiter.api.Test;

/** Observed minus predicted in the window, on a screen. */
class TimingWindowTest extends PanelJourney {
    /** Where an independent table has Io before the disc at 2004-12-04T17:16:58Z (JPL orbits by way of the Swiss Ephemeris 2.10), radii. */
    private static final double IO_X = -0.11926;

    private static final double IO_Y = 0.25667;

    private void open() {
        open("moons");
        JTabbedPane tabs = (JTabbedPane) window.find("moons.tabs");
        OpenWindow.act(() -> tabs.setSelectedIndex(1));
        window.settle();
    }

    /** A picture dated half a minute late, fitted, with Io marked. */
    private void markIo() throws IOException {
        Files.createDirectories(folder.resolve("settings"));
        Files.writeString(folder.resolve("settings/workbench.properties"), "panel.measure.fit.new=false\n");
        Path file = folder.resolve("20041204T171728Z.png");
        ImageIO.write(new BufferedImage(320, 240, BufferedImage.TYPE_INT_RGB), "png", file.toFile());
        WorkbenchContext context = context();
        try (var archive = context.archive()) {
            FilingFacts facts = new FilingFacts(
                    Optional.of("jupiter"),
                    Optional.empty(),
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
            ArchivedPicture picture = archive.pictures(PictureSearch.all()).get(0);
            DiscFit fit = new DiscFit(
                    new Placement(160, 120, 100, 0, false),
                    PlacementCovariance.diagonal(0.1, 0.1, 0.1, 0.1),
                    Trust.TRUSTED,
                    List.of(),
                    "forward model 1",
                    "grey",
                    0.2,
                    200,
                    List.of());
            long fitId =
                    archive.keepFit(picture.id(), fit, "DE405", "Oblate 0.1.0").id();
            long io = archive.addFeature(new Feature(
                            0, "jupiter", "Io", "moon", Optional.empty(), Optional.empty(), Optional.empty()))
                    .id();
            archive.addMark(new NewMark(
                    picture.id(),
                    Optional.of(fitId),
                    Optional.of(io),
                    new PixelPoint(160 + 100 * IO_X, 120 - 100 * IO_Y),
                    0.3,
                    Optional.empty(),
                    Optional.empty(),
                    "centre",
                    "A. Measurer"));
        }
    }

    @Test
    void aMarkedMoonIsTimedAndItsNightsClockIsSaid() throws IOException {
        markIo();
        open();
        TimingRows rows = (TimingRows) window.find("moons.timings.rows");
        assertThat(OpenWindow.<Integer>ask(rows::getRowCount)).isEqualTo(1);
        double oMinusP = OpenWindow.ask(() -> rows.timings().get(0).oMinusPS());
        double sigma = OpenWindow.ask(() -> rows.timings().get(0).errors().totalS());
        assertThat(oMinusP).isBetween(30 - 3.0, 30 + 3.0);
        assertThat(sigma).isBetween(2.0, 20.0);
        assertThat(OpenWindow.<Object>ask(() -> rows.getValueAt(0, 2))).isEqualTo("transit, mid");

        TimingPlot plot = (TimingPlot) window.find("moons.timings.plot");
        OpenWindow.act(() -> {
            TimingScale scale = TimingScale.of(rows.timings(), plot.getWidth(), plot.getHeight());
            plot.dispatchEvent(new MouseEvent(
                    plot,
                    MouseEvent.MOUSE_PRESSED,
                    0,
                    0,
                    (int) scale.x(scale.places().get(0)),
                    (int) scale.y(oMinusP),
                    1,
                    false,
                    MouseEvent.BUTTON1));
        });
        window.settle();
        assertThat(OpenWindow.<Integer>ask(rows::getSelectedRow)).isZero();
        String clock = OpenWindow.ask(() -> ((JTextComponent) window.find("moons.timings.clock")).getText());
        assertThat(clock).startsWith("Night 2004-12-04").contains(" ± ").contains("Io");
        String time = OpenWindow.ask(() -> ((JTextField) window.find("moons.time")).getText());
        assertThat(time).isEqualTo(OpenWindow.<String>ask(() -> oblate.sky.UtcTime.of(
                        rows.timings().get(0).predictedUtc().orElseThrow())
                .iso(0)));
    }

    @Test
    void withoutMarksItSaysHowToBegin() {
        open();
        assertThat(OpenWindow.<String>ask(() -> ((JLabel) window.find("moons.timings.head")).getText()))
                .contains("No moon or shadow of Jupiter is marked yet");
    }

    @Test
    void everyThemeDrawsThePointsAndTheRedOneOnlyInRed() throws IOException {
        markIo();
        open();
        for (Theme theme : Theme.values()) {
            OpenWindow.act(() -> window.workbench().setTheme(theme));
            window.settle();
            Component plot = window.find("moons.timings.plot");
            BufferedImage image = OpenWindow.ask(() -> {
                BufferedImage drawn = new BufferedImage(plot.getWidth(), plot.getHeight(), BufferedImage.TYPE_INT_RGB);
                plot.paint(drawn.getGraphics());
                return drawn;
            });
            int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
            assertThat(Arrays.stream(pixels).distinct().count())
                    .as(theme.label())
                    .isGreaterThan(10);
            if (theme == Theme.RED) {
                assertThat(Arrays.stream(pixels)).allMatch(rgb -> (rgb >> 16 & 255) >= (rgb & 255));
            }
        }
    }
}
