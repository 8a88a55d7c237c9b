/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Component;
import java.awt.Container;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.UIManager;
import javax.swing.plaf.UIResource;
import oblate.base.PluginHost;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A change of the theme reaches every panel: the one shown in the next turn of the event thread, another one before it is seen, and all of them in the end. */
@Tag("window")
@Timeout(value = 90, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class LookWindowTest {
    @TempDir
    Path folder;

    private PluginHost plugins;
    private OpenWindow window;

    @BeforeEach
    void open() {
        plugins = PluginHost.bundledOnly();
        window = new OpenWindow(folder.resolve("archive"), folder.resolve("settings"), plugins);
        for (String panel : List.of("measure", "report", "nights")) {
            OpenWindow.act(() -> window.workbench().showPanel(panel));
            window.settle();
        }
    }

    @AfterEach
    void close() {
        window.close();
        plugins.close();
    }

    /** Inks of the labels that take theirs from the look, in a panel. */
    private List<Color> inks(String panel) {
        Component root = OpenWindow.find(window.workbench().frame().getRootPane(), "panel." + panel)
                .orElseThrow();
        List<Color> inks = new ArrayList<>();
        gather((Container) root, inks);
        return inks;
    }

    private static void gather(Container in, List<Color> inks) {
        for (Component child : in.getComponents()) {
            if (child instanceof JLabel label && label.isEnabled() && label.getForeground() instanceof UIResource) {
                inks.add(new Color(label.getForeground().getRGB()));
            } else if (child instanceof JComponent inside) {
                gather(inside, inks);
            }
        }
    }

    private static Color labelInk() {
        return new Color(UIManager.getColor("Label.foreground").getRGB());
    }

    @Test
    void aPanelWearsTheNewLookWhenItIsShown() {
        List<Color> dusk = OpenWindow.ask(() -> inks("report"));
        assertThat(dusk).isNotEmpty().containsOnly(OpenWindow.ask(LookWindowTest::labelInk));
        OpenWindow.act(() -> window.workbench().setTheme(Theme.DAY));
        Color day = OpenWindow.ask(LookWindowTest::labelInk);
        List<Color> shown = OpenWindow.ask(() -> {
            window.workbench().showPanel("report");
            return inks("report");
        });
        assertThat(shown).hasSameSizeAs(dusk).containsOnly(day).doesNotContainAnyElementsOf(dusk);
    }

    @Test
    void thePanelShownWearsItInTheNextTurnAndTheOthersInTheEnd() {
        OpenWindow.act(() -> window.workbench().setTheme(Theme.RED));
        Color red = OpenWindow.ask(LookWindowTest::labelInk);
        List<Color> shown = OpenWindow.ask(() -> inks("nights"));
        assertThat(shown).isNotEmpty().containsOnly(red);
        OpenWindow.await(
                "all panels in red",
                () -> inks("report").stream().allMatch(red::equals)
                        && inks("measure").stream().allMatch(red::equals));
    }
}
