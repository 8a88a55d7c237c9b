/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import oblate.workbench.testing.OpenWindow;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A box keeps what was typed, and who listens, through a change of theme. */
@Tag("window")
class TypingBoxTest {
    @Test
    void whatWasTypedAndWhoListensStayWhenTheThemeChanges() {
        List<String> heard = new ArrayList<>();
        OpenWindow.act(() -> {
            Theme.DUSK.install();
            TypingBox box = new TypingBox();
            box.addItem("Jupiter");
            box.setSelectedItem(null);
            JTextField field = (JTextField) box.getEditor().getEditorComponent();
            field.setText("Saturn");
            for (Theme theme : List.of(Theme.RED, Theme.DAY, Theme.DUSK)) {
                theme.install();
                SwingUtilities.updateComponentTreeUI(box);
                assertThat(field.getText()).as(theme.label()).isEqualTo("Saturn");
                assertThat(box.getEditor().getEditorComponent()).isSameAs(field);
            }
            field.getDocument().addDocumentListener(new Heard(heard));
            ((JTextField) box.getEditor().getEditorComponent()).setText("Mars");
        });
        assertThat(heard).isNotEmpty();
    }

    private record Heard(List<String> heard) implements DocumentListener {
        @Override
        public void insertUpdate(DocumentEvent e) {
            heard.add("more");
        }

        @Override
        public void removeUpdate(DocumentEvent e) {
            heard.add("less");
        }

        @Override
        public void changedUpdate(DocumentEvent e) {
            heard.add("other");
        }
    }
}
