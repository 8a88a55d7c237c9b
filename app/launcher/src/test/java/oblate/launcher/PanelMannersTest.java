/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Component;
import java.awt.Container;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import javax.swing.JScrollBar;
import javax.swing.JSlider;
import javax.swing.JSpinner;
import javax.swing.JTable;
import javax.swing.JToggleButton;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import oblate.command.Services;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OnScreen;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** What every panel that ships owes a person: names for whoever cannot see, a way through by Tab, keys that do one thing each. */
@Tag("window")
@ExtendWith(OnScreen.class)
@Timeout(value = 150, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class PanelMannersTest {
    @TempDir
    Path work;

    private Services services;
    private OpenWindow window;

    @BeforeEach
    void open() throws Exception {
        Path archive = FollowedSeason.in(work);
        services = new Services(work.resolve("settings"), Clock.systemUTC(), words -> {});
        window = new OpenWindow(services.workbenchOn(services.openArchive(archive)));
        window.show("nights", 1400, 900);
        OpenWindow.await("the archive is read", () -> window.workbench().shelf().isRead());
    }

    @AfterEach
    void close() {
        if (window != null) {
            window.close();
            services.close();
        }
    }

    private List<String> panels() {
        return OpenWindow.ask(() -> {
            List<String> ids = new ArrayList<>();
            each(window.workbench().frame().getContentPane(), c -> {
                if (c instanceof JToggleButton
                        && c.getName() != null
                        && c.getName().startsWith("rail.")) {
                    ids.add(c.getName().substring("rail.".length()));
                }
            });
            return ids;
        });
    }

    @Test
    void whatCanBeUsedHasANameThatCanBeReadAloud() {
        List<String> nameless = new ArrayList<>();
        List<String> all = panels();
        assertThat(all)
                .contains("nights", "measure", "moons", "report", "plug-ins")
                .hasSizeGreaterThan(6);
        for (String panel : all) {
            window.show(panel, 1400, 900);
            OpenWindow.ask(() -> {
                each(window.workbench().frame().getContentPane(), c -> {
                    if (c.isShowing() && isUsed(c) && isNameless(c)) {
                        nameless.add(panel + ": " + c.getClass().getSimpleName() + " " + c.getName() + " in "
                                + c.getParent().getClass().getSimpleName());
                    }
                });
                return null;
            });
        }
        assertThat(nameless).isEmpty();
    }

    private static boolean isUsed(Component c) {
        boolean kind = c instanceof AbstractButton
                || c instanceof JTextComponent
                || c instanceof JComboBox
                || c instanceof JTable
                || c instanceof JList
                || c instanceof JSlider
                || c instanceof JSpinner;
        // Parts of these, such as a box's arrow, are spoken for by the whole.
        boolean part = SwingUtilities.getAncestorOfClass(JComboBox.class, c) != null
                || SwingUtilities.getAncestorOfClass(JSpinner.class, c) != null
                || SwingUtilities.getAncestorOfClass(JScrollBar.class, c) != null;
        return kind && !part && c.isFocusable();
    }

    private static boolean isNameless(Component c) {
        String name = c.getAccessibleContext().getAccessibleName();
        return name == null || name.isBlank();
    }

    /** Everything is shown in the usual look first: what does not hear of the change, or was away meanwhile, would stay as it was. */
    @Test
    void inTheDimRedLookNothingIsBrightOrBlue() {
        List<String> all = panels();
        List<String> views = List.of("view.coverage", "view.todo", "view.pictures");
        all.forEach(panel -> window.show(panel, 1400, 900));
        views.forEach(this::press);
        choose("Everything that can be done …");
        OpenWindow.act(() -> window.workbench().setTheme(Theme.RED));
        Map<String, Integer> bright = new HashMap<>();
        choose("Everything that can be done …");
        note(bright, "actions");
        for (String panel : all) {
            window.show(panel, 1400, 900);
            note(bright, panel);
        }
        window.show("nights", 1400, 900);
        for (String view : views) {
            press(view);
            note(bright, view);
        }
        assertThat(bright).isEmpty();
    }

    private void press(String name) {
        window.show("nights", 1400, 900);
        OpenWindow.act(() -> ((AbstractButton) window.find(name)).doClick());
        window.settle();
    }

    private void choose(String item) {
        OpenWindow.act(() -> items(window.workbench().frame().getJMenuBar()).stream()
                .filter(i -> item.equals(i.getText()))
                .findFirst()
                .orElseThrow()
                .doClick());
        window.settle();
    }

    private static List<JMenuItem> items(JMenuBar bar) {
        List<JMenuItem> items = new ArrayList<>();
        for (int m = 0; m < bar.getMenuCount(); m++) {
            JMenu menu = bar.getMenu(m);
            for (int i = 0; i < menu.getItemCount(); i++) {
                if (menu.getItem(i) != null) {
                    items.add(menu.getItem(i));
                }
            }
        }
        return items;
    }

    private void note(Map<String, Integer> bright, String where) {
        BufferedImage picture = window.picture();
        int count = 0;
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                Color c = new Color(picture.getRGB(x, y));
                int others = Math.max(c.getGreen(), c.getBlue());
                // Red inks have up to a third of their red in green and blue, for the eye's sake.
                if (others > 110 || others > 24 && others > c.getRed()) {
                    count++;
                }
            }
        }
        if (count > 0) {
            bright.put(where, count);
        }
    }

    @Test
    void tabGoesThroughEveryPanelAndComesBack() {
        for (String panel : panels()) {
            window.show(panel, 1400, 900);
            int steps = OpenWindow.ask(() -> {
                Container root = window.workbench().frame();
                var policy = root.getFocusTraversalPolicy();
                Component first = policy.getFirstComponent(root);
                Component at = first;
                int count = 0;
                do {
                    at = policy.getComponentAfter(root, at);
                    count++;
                } while (at != null && at != first && count < 2000);
                return at == first ? count : -1;
            });
            assertThat(steps).as(panel).isGreaterThan(1);
        }
    }

    @Test
    void everyKeyOfAMenuDoesOneThingAndEveryActionHasWords() {
        for (String panel : panels()) {
            window.show(panel, 1400, 900);
            OpenWindow.ask(() -> {
                Map<KeyStroke, String> keys = new HashMap<>();
                JMenuBar bar = window.workbench().frame().getJMenuBar();
                for (int i = 0; i < bar.getMenuCount(); i++) {
                    JMenu menu = bar.getMenu(i);
                    assertThat(menu.getText()).isNotBlank();
                    for (Component c : menu.getMenuComponents()) {
                        if (c instanceof JMenuItem item) {
                            assertThat(item.getText())
                                    .as(panel + " " + menu.getText())
                                    .isNotBlank();
                            KeyStroke key = item.getAccelerator();
                            if (key != null) {
                                assertThat(keys.put(key, item.getText()))
                                        .as(panel + ": " + item.getText() + " and another one have the key "
                                                + KeyEvent.getKeyText(key.getKeyCode()))
                                        .isNull();
                            }
                        }
                    }
                }
                return null;
            });
        }
    }

    @Test
    void buttonsSayWhatTheyDo() {
        List<String> mute = new ArrayList<>();
        for (String panel : panels()) {
            window.show(panel, 1400, 900);
            OpenWindow.ask(() -> {
                each(window.workbench().frame().getContentPane(), c -> {
                    if (c instanceof AbstractButton b
                            && c.isShowing()
                            && isUsed(c)
                            && (b.getText() == null || b.getText().isBlank())
                            && (((JComponent) c).getToolTipText() == null)) {
                        mute.add(panel + ": " + c.getName() + " in "
                                + c.getParent().getClass());
                    }
                });
                return null;
            });
        }
        assertThat(mute).isEmpty();
    }

    private static void each(Container in, java.util.function.Consumer<Component> deed) {
        for (Component child : in.getComponents()) {
            deed.accept(child);
            if (child instanceof Container container) {
                each(container, deed);
            }
        }
    }
}
