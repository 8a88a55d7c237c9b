/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EditHistoryTest {
    private final EditHistory history = new EditHistory();
    private final List<String> log = new ArrayList<>();

    private EditHistory.Edit edit(String name) {
        return new EditHistory.Edit() {
            @Override
            public String what() {
                return name;
            }

            @Override
            public void undo() {
                log.add("undo " + name);
            }

            @Override
            public void redo() {
                log.add("redo " + name);
            }
        };
    }

    @Test
    void undoAndRedoRunBackAndForthInOrder() {
        history.add(edit("a"));
        history.add(edit("b"));
        history.undo();
        history.undo();
        history.undo();
        history.redo();
        assertThat(log).containsExactly("undo b", "undo a", "redo a");
        assertThat(history.nextUndo()).contains("a");
        assertThat(history.nextRedo()).contains("b");
    }

    @Test
    void aNewEditForgetsWhatWasUndone() {
        history.add(edit("a"));
        history.undo();
        history.add(edit("c"));
        history.redo();
        assertThat(log).containsExactly("undo a");
        assertThat(history.nextRedo()).isEmpty();
    }

    @Test
    void settingsComeBackAndABrokenFileCostsOnlyTheLayout(@TempDir Path folder) throws Exception {
        DeskSettings settings = new DeskSettings(folder);
        settings.forPanel("nights").keep("zoom", 7);
        settings.save();
        assertThat(new DeskSettings(folder).forPanel("nights").number("zoom", 1))
                .isEqualTo(7);
        assertThat(new DeskSettings(folder).forPanel("measure").number("zoom", 1))
                .isEqualTo(1);
        Files.writeString(folder.resolve("workbench.properties"), "a=\\uZZZZ");
        assertThat(new DeskSettings(folder).forPanel("nights").number("zoom", 1))
                .isEqualTo(1);
    }
}
