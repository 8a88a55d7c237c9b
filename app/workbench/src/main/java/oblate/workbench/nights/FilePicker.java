/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JFileChooser;
import javax.swing.SwingUtilities;
import oblate.workbench.PanelSettings;
import oblate.workbench.look.Placing;
import oblate.workbench.words.Texts;

/** Lets a person choose files and folders to be added, in a window that holds nothing up. */
final class FilePicker {
    private static final Texts TEXTS = Texts.of(FilePicker.class);
    private final JComponent beside;
    private final PanelSettings settings;
    private final Consumer<List<Path>> taker;

    /**
     * @param beside where it is put
     * @param settings remembers the folder
     * @param taker gets what was chosen
     */
    FilePicker(JComponent beside, PanelSettings settings, Consumer<List<Path>> taker) {
        this.beside = beside;
        this.settings = settings;
        this.taker = taker;
    }

    void open() {
        JFileChooser chooser = new JFileChooser(settings.text("folder", "."));
        chooser.setMultiSelectionEnabled(true);
        chooser.setFileSelectionMode(JFileChooser.FILES_AND_DIRECTORIES);
        chooser.setApproveButtonText(TEXTS.text("adding.take"));
        JDialog dialog = new JDialog(SwingUtilities.getWindowAncestor(beside), TEXTS.text("adding.title"));
        dialog.setModal(false);
        chooser.addActionListener(e -> {
            if (e.getActionCommand().equals(JFileChooser.APPROVE_SELECTION)) {
                settings.keep("folder", chooser.getCurrentDirectory());
                taker.accept(
                        Stream.of(chooser.getSelectedFiles()).map(File::toPath).toList());
            }
            dialog.dispose();
        });
        dialog.add(chooser);
        Placing.over(dialog, beside);
        dialog.setVisible(true);
    }
}
