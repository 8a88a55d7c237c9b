/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.actions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.MissingResourceException;
import javax.swing.Action;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import oblate.workbench.words.Texts;
import org.junit.jupiter.api.Test;

class DeedTest {
    private static final Texts TEXTS = Texts.of(oblate.workbench.Workbench.class);

    @Test
    void wordsAndKeysComeFromTheBundle() {
        Deed undo = Deed.of(TEXTS, "edit.undo", () -> {});
        assertThat(undo.getValue(Action.NAME)).isEqualTo("Undo");
        assertThat(undo.getValue(Action.ACCELERATOR_KEY)).isEqualTo(KeyStroke.getKeyStroke("ctrl Z"));
        assertThat(Deed.keyOf(undo)).contains("Ctrl+Z");
        Deed list = Deed.of(TEXTS, "help.actions", () -> {});
        assertThat(Deed.tooltip(list)).isEqualTo("All actions with their keys, to be searched by typing  (F1)");
        assertThatThrownBy(() -> Deed.of(TEXTS, "no.such", () -> {})).isInstanceOf(MissingResourceException.class);
        assertThatThrownBy(() -> Deed.named("x", "X", "ctrl Nonsense", () -> {}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("ctrl Nonsense");
    }

    @Test
    void aPlainLetterNeverActsWhileSomethingIsTyped() {
        Deed letter = Deed.named("grid", "Grid", "G, ctrl G", () -> {});
        assertThat(letter.getValue(Action.ACCELERATOR_KEY)).isNull();
        assertThat(Deed.keyOf(letter)).contains("G");
        JPanel canvas = new JPanel();
        letter.bind(canvas, JPanel.WHEN_FOCUSED);
        assertThat(canvas.getInputMap(JPanel.WHEN_FOCUSED).get(KeyStroke.getKeyStroke("G")))
                .isEqualTo("grid");
        assertThat(canvas.getInputMap(JPanel.WHEN_FOCUSED).get(KeyStroke.getKeyStroke("ctrl G")))
                .isEqualTo("grid");
        assertThat(canvas.getActionMap().get("grid")).isSameAs(letter);
        for (String key : List.of("SPACE", "DELETE", "LEFT", "shift LEFT", "ENTER", "0")) {
            assertThat(Deed.isSafeWhileTyping(KeyStroke.getKeyStroke(key)))
                    .as(key)
                    .isFalse();
        }
        for (String key : List.of("F5", "ctrl F", "PAGE_DOWN", "alt ENTER")) {
            assertThat(Deed.isSafeWhileTyping(KeyStroke.getKeyStroke(key)))
                    .as(key)
                    .isTrue();
        }
    }

    @Test
    void whatIsTypedFindsActionsByTextSectionSentenceAndKey() {
        Deed grid = Deed.named("grid", "Show the grid", "G", () -> {});
        Deed fit = Deed.named("fit", "Fit the disc", "F5", () -> {});
        Deed again = Deed.named("again", "Fit from here", "", () -> {});
        ActionList list = new ActionList().with("Layers", List.of(grid)).with("Measure", List.of(again, fit));
        assertThat(list.matching("")).extracting(ActionList.Entry::action).containsExactly(grid, again, fit);
        assertThat(list.matching("fit dis"))
                .extracting(ActionList.Entry::action)
                .containsExactly(fit);
        assertThat(list.matching("LAYERS")).extracting(ActionList.Entry::action).containsExactly(grid);
        assertThat(list.matching("f5")).extracting(ActionList.Entry::action).containsExactly(fit);
        assertThat(list.matching("nothing like it")).isEmpty();
        assertThat(list.sections()).containsExactly("Layers", "Measure");
    }
}
