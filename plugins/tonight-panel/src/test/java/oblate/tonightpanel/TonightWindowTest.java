/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Component;
import java.awt.Toolkit;
import java.awt.Window;
import java.awt.datatransfer.DataFlavor;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JSpinner;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import oblate.sky.UtcTime;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;
import oblate.workbench.testing.PanelJourney;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The panel in the window, on a screen. */
class TonightWindowTest extends PanelJourney {
    private static final String NIGHT = "2024-12-10";

    @TempDir
    static Path made;

    private static Path season;

    @BeforeAll
    static void makeASeason() throws IOException {
        season = made.resolve("season");
        Season.make(season, made);
    }

    private static void copyTree(Path from, Path to) throws IOException {
        try (var files = Files.walk(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(from.relativize(file).toString()));
            }
        }
    }

    private void open(boolean filled) throws IOException {
        if (filled) {
            copyTree(season, archiveFolder());
        }
        open("tonight");
    }

    private void press(String button) {
        OpenWindow.act(() -> ((AbstractButton) window.find(button)).doClick());
        window.settle();
    }

    private String text(String name) {
        Component part = window.find(name);
        return OpenWindow.ask(() -> part instanceof JLabel label ? label.getText() : ((JTextField) part).getText());
    }

    /** All sentences under a part. */
    private String sentences(String name) {
        java.awt.Container part = (java.awt.Container) window.find(name);
        return OpenWindow.ask(() -> Arrays.stream(part.getComponents())
                .map(c -> ((JTextArea) c).getText())
                .reduce("", (a, b) -> a + "\n" + b));
    }

    private List<CSVRecord> told(String... more) throws IOException {
        String[] words = {"tonight", "--archive", archiveFolder().toString(), "--date", NIGHT, "--format", "csv"};
        String[] all = Arrays.copyOf(words, words.length + more.length);
        System.arraycopy(more, 0, all, words.length, more.length);
        return rows(CommandLine.out(folder.resolve("settings"), all));
    }

    private static List<CSVRecord> rows(String csv) throws IOException {
        return CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(csv))
                .getRecords();
    }

    /** Without a site the panel asks for one, refuses nonsense, and plans for what is typed. */
    @Test
    void withoutASiteItAsksForOne() throws IOException {
        open(false);
        assertThat(OpenWindow.<Boolean>ask(() -> window.find("tonight.asked").isShowing()))
                .isTrue();
        assertThat(sentences("tonight.cautions")).contains("residual-current device", "Local codes");
        window.enter("tonight.asked", "48.2");
        assertThat(OpenWindow.<Boolean>ask(() -> window.find("tonight.asked").isShowing()))
                .isTrue();
        window.enter("tonight.asked", "48.2, 16.3, 170");
        window.enter("tonight.date", NIGHT);
        assertThat(text("tonight.title")).contains("Jupiter").contains("10/11 December 2024");
        assertThat(text("tonight.window")).contains("UTC");
        OpenWindow.act(() -> ((JComboBox<?>) window.find("tonight.planet")).setSelectedItem("Venus"));
        window.settle();
        assertThat(text("tonight.title")).contains("Venus");
        assertThat(sentences("tonight.cautions")).contains("THE SUN");
        window.enter("tonight.date", "soon");
        assertThat(text("tonight.title")).contains("10/11 December 2024");
    }

    /** What is drawn in the rows and on the axes lies where {@code oblate tonight} says. */
    @Test
    void theDrawingAgreesWithTheCommandLine() throws IOException {
        open(true);
        window.enter("tonight.date", NIGHT);
        OpenWindow.act(() -> window.workbench().setTheme(Theme.DAY));
        window.settle();
        RowsPlot rows = (RowsPlot) window.find("tonight.rows");
        BufferedImage image = OpenWindow.ask(() -> painted(rows));
        NightSheet sheet = OpenWindow.ask(() -> rows.sheet().orElseThrow());
        RowLayout layout = OpenWindow.ask(() -> new RowLayout(SkyScales.axis(sheet, rows.getWidth()), sheet.rows()));
        double minutePx = layout.axis().px(60);
        int compared = 0;
        for (CSVRecord told : told()) {
            if (told.get("kind").equals("crossing") && told.get("observable").equals("yes")) {
                int index = layout.rows().stream().map(NightRow::name).toList().indexOf(told.get("subject"));
                double x = layout.axis().x(UtcTime.parse(told.get("time_utc")));
                double half =
                        Math.max(RowLayout.LEAST_BAR_PX / 2, Double.parseDouble(told.get("sigma_min")) * minutePx);
                double[] bar = inked(image, layout, index, Theme.DAY.palette().accent(), x);
                assertThat((bar[0] + bar[1]) / 2).as(told.get("what")).isCloseTo(x, within(1.0));
                assertThat(bar[1] - bar[0]).isCloseTo(2 * half, within(1.5));
                compared++;
            }
        }
        assertThat(compared).isBetween(2, 4);
        assertThat(sentences("tonight.notes")).contains("No time for Lone", "No time for Unmarked");
        CSVRecord best = told().stream()
                .filter(r -> r.get("what").equals("best in window"))
                .findFirst()
                .orElseThrow();
        assertThat(text("tonight.longest"))
                .contains(Math.round(Double.parseDouble(best.get("longest_capture_s"))) + " s");
        curveAgrees(best);
    }

    private static BufferedImage painted(Component part) {
        BufferedImage drawn = new BufferedImage(part.getWidth(), part.getHeight(), BufferedImage.TYPE_INT_RGB);
        part.paint(drawn.getGraphics());
        return drawn;
    }

    /** From where to where a bar of a colour reaches in the lower part of a row, over the thin line and near a place (px). */
    private static double[] inked(BufferedImage image, RowLayout layout, int row, Color colour, double near) {
        int y = (int) layout.row(row).getCenterY() + 3;
        int left = (int) Math.round(near);
        int right = left;
        assertThat(image.getRGB(left, y) & 0xFFFFFF).isEqualTo(colour.getRGB() & 0xFFFFFF);
        while ((image.getRGB(left - 1, y) & 0xFFFFFF) == (colour.getRGB() & 0xFFFFFF)) {
            left--;
        }
        while ((image.getRGB(right + 1, y) & 0xFFFFFF) == (colour.getRGB() & 0xFFFFFF)) {
            right++;
        }
        return new double[] {left, right + 1.0};
    }

    /** The altitude's curve passes, in its own colour, through the best moment's altitude. */
    private void curveAgrees(CSVRecord best) {
        SkyPlot sky = (SkyPlot) window.find("tonight.sky");
        BufferedImage image = OpenWindow.ask(() -> painted(sky));
        SkyScales scales =
                OpenWindow.ask(() -> SkyScales.of(sky.sheet().orElseThrow(), sky.getWidth(), sky.getHeight()));
        int x = (int) Math.round(scales.axis().x(UtcTime.parse(best.get("time_utc"))));
        int y = (int) Math.floor(scales.altitudeY(Double.parseDouble(best.get("altitude_deg"))));
        assertThat(image.getRGB(x, y) & 0xFFFFFF)
                .isEqualTo(Theme.DAY.palette().accent().getRGB() & 0xFFFFFF);
    }

    @Test
    void aClickChoosesTheFeatureForTheWholeWindowAndTheNightsAreStepped() throws IOException {
        open(true);
        window.enter("tonight.date", NIGHT);
        TonightPictures.click(window, Season.OVAL);
        assertThat(OpenWindow.<Optional<String>>ask(
                        () -> window.workbench().selection().featureName()))
                .contains(Season.OVAL);
        assertThat(text("tonight.readout")).contains("UTC", "altitude", "dispersion", "CM II");
        press("tonight.after");
        assertThat(text("tonight.date")).isEqualTo("2024-12-11");
        press("tonight.before");
        press("tonight.before");
        assertThat(text("tonight.title")).contains("9/10 December 2024");
        OpenWindow.act(() -> {
            ((JComboBox<?>) window.find("tonight.smear.unit")).setSelectedIndex(1);
            ((JSpinner) window.find("tonight.scale")).setValue(0.2);
        });
        window.settle();
        String longest = CommandLine.out(
                folder.resolve("settings"),
                "tonight",
                "--archive",
                archiveFolder().toString(),
                "--date",
                "2024-12-09",
                "--scale",
                "0.2",
                "--max-smear-px",
                "1",
                "--format",
                "csv");
        String seconds = rows(longest).stream()
                .filter(r -> r.get("what").equals("best in window"))
                .findFirst()
                .orElseThrow()
                .get("longest_capture_s");
        assertThat(text("tonight.longest")).contains(Math.round(Double.parseDouble(seconds)) + " s");
    }

    @Test
    void aNightOfTheMonthIsGoneToByAClick() throws IOException {
        open(true);
        window.enter("tonight.date", NIGHT);
        press("tonight.month.toggle");
        JTable month = (JTable) window.find("tonight.month");
        assertThat(OpenWindow.<Integer>ask(month::getRowCount)).isEqualTo(31);
        assertThat(OpenWindow.<String>ask(() -> month.getValueAt(16, 2).toString()))
                .contains("–");
        press("tonight.after");
        assertThat(text("tonight.month.title")).contains("January 2025");
        press("tonight.before");
        OpenWindow.act(() -> {
            java.awt.Rectangle cell = month.getCellRect(16, 0, true);
            month.dispatchEvent(new MouseEvent(
                    month, MouseEvent.MOUSE_CLICKED, 0, 0, cell.x + 5, cell.y + 5, 1, false, MouseEvent.BUTTON1));
        });
        window.settle();
        assertThat(text("tonight.date")).isEqualTo("2024-12-17");
        assertThat(text("tonight.title")).contains("17/18 December 2024");
    }

    @Test
    void theCalendarTheTableAndTheTextAreThoseOfTheCommandLine() throws Exception {
        open(true);
        window.enter("tonight.date", NIGHT);
        Path saved = save("tonight.calendar", "night");
        assertThat(saved.getFileName().toString()).isEqualTo("night.ics");
        String calendar = Files.readString(saved);
        long entries = told().stream()
                .filter(r -> r.get("observable").equals("yes"))
                .filter(r -> List.of("crossing", "moon").contains(r.get("kind"))
                        || r.get("what").equals("window opens"))
                .count();
        assertThat(calendar).startsWith("BEGIN:VCALENDAR\r\n").contains("LOCATION:Garden");
        assertThat(calendar.split("BEGIN:VEVENT", -1)).hasSize((int) entries + 1);
        assertThat(rows(Files.readString(save("tonight.csv", "night.csv"))).stream()
                        .map(CSVRecord::toList))
                .isEqualTo(told().stream().map(CSVRecord::toList).toList());
        Path kept = folder.resolve("night.csv");
        Files.writeString(kept, "mine");
        press("tonight.csv");
        OpenWindow.act(() -> approve("night.csv"));
        window.settle();
        assertThat(Files.readString(kept)).isEqualTo("mine");
        OpenWindow.act(() -> approve("night.csv"));
        window.settle();
        assertThat(Files.readString(kept)).startsWith("night,");
        press("tonight.copy");
        String copied = OpenWindow.ask(
                () -> (String) Toolkit.getDefaultToolkit().getSystemClipboard().getData(DataFlavor.stringFlavor));
        assertThat(copied)
                .isEqualTo(CommandLine.out(
                        folder.resolve("settings"),
                        "tonight",
                        "--archive",
                        archiveFolder().toString(),
                        "--date",
                        NIGHT));
    }

    /** Of requests made faster than they are answered the last one is shown; one that cannot be answered says why, and the next is none the worse. */
    @Test
    void theNewestRequestWinsAndAProblemIsTold() throws IOException {
        open(true);
        JTextField date = (JTextField) window.find("tonight.date");
        OpenWindow.act(() -> {
            for (String day : List.of("2024-12-01", "2024-12-05", "2024-12-20")) {
                date.setText(day);
                date.postActionEvent();
            }
        });
        window.settle();
        assertThat(text("tonight.title")).contains("20/21 December 2024");
        assertThat(text("tonight.date")).isEqualTo("2024-12-20");
        window.enter("tonight.date", "2190-01-01");
        assertThat(sentences("tonight.notes")).contains("2190");
        window.enter("tonight.date", NIGHT);
        assertThat(text("tonight.title")).contains("10/11 December 2024");
        assertThat(sentences("tonight.notes")).doesNotContain("2190");
    }

    @Test
    void aMonthBeingPlannedCanBeStopped() throws IOException {
        open(true);
        window.enter("tonight.date", NIGHT);
        OpenWindow.act(() -> {
            ((AbstractButton) window.find("tonight.month.toggle")).doClick();
            ((AbstractButton) window.find("tonight.month.stop")).doClick();
        });
        window.settle();
        assertThat(text("tonight.month.said")).contains("Stopped");
        assertThat(OpenWindow.<Integer>ask(((JTable) window.find("tonight.month"))::getRowCount))
                .isZero();
        press("tonight.month.toggle");
        assertThat(OpenWindow.<Integer>ask(((JTable) window.find("tonight.month"))::getRowCount))
                .isEqualTo(31);
    }

    @Test
    void aMoonsEventShowsItsTouchesAndAFeatureChosenElsewhereIsChosenHere() throws IOException {
        open(true);
        window.enter("tonight.date", NIGHT);
        RowsPlot rows = (RowsPlot) window.find("tonight.rows");
        String moon = OpenWindow.ask(() -> rows.sheet().orElseThrow().rows().stream()
                .filter(r -> r.kind() == oblate.drift.plan.PlanItem.Kind.MOON)
                .findFirst()
                .orElseThrow()
                .name());
        TonightPictures.click(window, moon);
        assertThat(OpenWindow.<String>ask(() -> words((java.awt.Container) window.find("tonight.chosen"))))
                .contains(moon, "Outer touch", "Centre", "UTC ±");
        OpenWindow.act(() -> window.workbench().selection().chooseFeature(Optional.of(Season.SPOT)));
        window.settle();
        assertThat(OpenWindow.<String>ask(() -> words((java.awt.Container) window.find("tonight.chosen"))))
                .contains(Season.SPOT, "II", "±");
    }

    /** All words under a part. */
    private static String words(java.awt.Container in) {
        StringBuilder said = new StringBuilder();
        for (Component part : in.getComponents()) {
            if (part instanceof JLabel label) {
                said.append(label.getText()).append(' ');
            } else if (part instanceof JTextArea area) {
                said.append(area.getText()).append('\n');
            } else if (part instanceof java.awt.Container more) {
                said.append(words(more));
            }
        }
        return said.toString();
    }

    /** Types a name into the chooser that is open, and presses its button. */
    private void approve(String name) {
        JFileChooser chooser = Arrays.stream(Window.getWindows())
                .filter(Window::isShowing)
                .flatMap(w -> OpenWindow.find(w, "tonight.chooser").stream())
                .map(JFileChooser.class::cast)
                .findFirst()
                .orElseThrow();
        chooser.setSelectedFile(folder.resolve(name).toFile());
        chooser.approveSelection();
    }

    /** Presses a button that saves, gives the chooser a name in the folder, and approves. */
    private Path save(String button, String name) throws IOException {
        press(button);
        OpenWindow.act(() -> approve(name));
        window.settle();
        try (var files = Files.list(folder)) {
            return files.filter(f -> f.getFileName().toString().matches("night\\..*"))
                    .filter(f -> f.getFileName().toString().startsWith(name))
                    .findFirst()
                    .orElseThrow();
        }
    }

    @Test
    void theDimRedThemeIsDrawnInRedOnly() throws IOException {
        open(true);
        window.enter("tonight.date", NIGHT);
        OpenWindow.act(() -> window.workbench().setTheme(Theme.RED));
        window.settle();
        for (String name : List.of("tonight.sky", "tonight.rows")) {
            BufferedImage image = OpenWindow.ask(() -> painted(window.find(name)));
            int lit = 0;
            for (int y = 0; y < image.getHeight(); y += 2) {
                for (int x = 0; x < image.getWidth(); x += 2) {
                    Color c = new Color(image.getRGB(x, y));
                    assertThat(Math.max(c.getGreen(), c.getBlue())).isLessThanOrEqualTo(10 + c.getRed() / 2);
                    lit += c.getRed() > 100 ? 1 : 0;
                }
            }
            assertThat(lit).as(name).isGreaterThan(200);
        }
    }
}
