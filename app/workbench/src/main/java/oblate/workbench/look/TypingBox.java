/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.util.Optional;
import javax.swing.ComboBoxEditor;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import javax.swing.plaf.basic.BasicComboBoxEditor;

/**
 * A box to type into or choose from, whose text field stays the same when the theme changes: the one a look and feel makes is thrown away with it, and what was
 * typed, and who listens, would be lost.
 */
public final class TypingBox extends JComboBox<String> {
    private static final long serialVersionUID = 1L;

    /** Empty and without choices. */
    public TypingBox() {
        setEditor(new BasicComboBoxEditor());
        setEditable(true);
    }

    /** A new look asks the box for its choice, which may be none, and would write that over what stands in the field. */
    @Override
    public void updateUI() {
        Optional<JTextField> field = Optional.ofNullable(getEditor())
                .map(ComboBoxEditor::getEditorComponent)
                .filter(JTextField.class::isInstance)
                .map(JTextField.class::cast);
        String text = field.map(JTextField::getText).orElse("");
        super.updateUI();
        field.filter(f -> !f.getText().equals(text)).ifPresent(f -> f.setText(text));
    }
}
