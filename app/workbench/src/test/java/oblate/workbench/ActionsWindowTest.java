/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Path;
import javax.swing.JLabel;
import javax.swing.JList;
import oblate.base.PluginHost;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.Hand;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The list of everything that can be done, and the walk, by keys and mouse on an empty archive. */
@Tag("window")
@Timeout(value = 90, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ActionsWindowTest {
    @TempDir
    Path folder;

    private PluginHost plugins;
    private OpenWindow window;
    private Hand hand;

    @BeforeEach
    void open() {
        hand = new Hand();
        plugins = PluginHost.bundledOnly();
        window = new OpenWindow(folder.resolve("archive"), folder.resolve("settings"), plugins);
        OpenWindow.act(() -> window.workbench().frame().setBounds(0, 0, 1300, 850));
        window.settle();
    }

    @AfterEach
    void close() {
        window.close();
        plugins.close();
        hand.close();
    }

    private void key(int code) {
        hand.strike(code);
        window.settle();
    }

    private boolean isShowing(String name) {
        return OpenWindow.ask(() -> OpenWindow.find(window.workbench().frame().getRootPane(), name)
                .filter(c -> c.isShowing())
                .isPresent());
    }

    @Test
    void f1FindsAnActionAndEnterDoesIt() throws IOException {
        key(KeyEvent.VK_F1);
        OpenWindow.await("the list", () -> window.find("actions.typed").isFocusOwner());
        assertThat(((JList<?>) window.find("actions.list")).getModel().getSize())
                .isGreaterThan(10);
        hand.type("dim");
        OpenWindow.await(
                "one match",
                () -> ((JList<?>) window.find("actions.list")).getModel().getSize() == 1
                        || ((JList<?>) window.find("actions.list")).getSelectedIndex() == 0);
        key(KeyEvent.VK_ENTER);
        OpenWindow.await(
                "it is done",
                () -> window.workbench().frame().getRootPane().getBackground() != null && !isShowing("actions"));
        assertThat(javax.swing.UIManager.getLookAndFeel().getName())
                .isEqualTo(new oblate.workbench.look.RedLaf().getName());
        OpenWindow.act(() -> window.workbench().setTheme(Theme.DUSK));
        key(KeyEvent.VK_F1);
        key(KeyEvent.VK_ESCAPE);
        assertThat(isShowing("actions")).isFalse();
    }

    @Test
    void theWalkGoesOnWhenAStepIsDoneAndCanBeLeft() {
        window.workbench().walkThrough();
        assertThat(isShowing("walk")).isTrue();
        String first = words();
        OpenWindow.act(() -> window.workbench().showPanel("measure"));
        OpenWindow.await("the next step", () -> !words().equals(first));
        String second = words();
        hand.click(window.find("walk.next"));
        OpenWindow.await("the step after", () -> !words().equals(second));
        hand.click(window.find("walk.leave"));
        OpenWindow.await("it is gone", () -> !window.find("walk").isVisible());
    }

    private String words() {
        return OpenWindow.ask(() -> ((JLabel) window.find("walk.words")).getText());
    }
}
