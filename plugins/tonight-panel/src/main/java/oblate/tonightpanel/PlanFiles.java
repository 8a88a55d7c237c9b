/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.Component;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JDialog;
import javax.swing.JFileChooser;
import javax.swing.SwingUtilities;
import oblate.base.ProblemException;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchProblem;
import oblate.workbench.look.Placing;
import oblate.workbench.words.Texts;

/** Writes a plan to a file that a person chooses. On the event thread; the writing itself is not. */
final class PlanFiles {
    private static final Texts TEXTS = Texts.of(PlanFiles.class);
    private final PanelContext context;
    private final Component owner;

    PlanFiles(PanelContext context, Component owner) {
        this.context = context;
        this.owner = owner;
    }

    /**
     * Asks where to, then writes.
     *
     * @param title of the dialog
     * @param name offered for the file
     * @param text made off the event thread
     */
    void save(String title, String name, Supplier<String> text) {
        JDialog dialog = new JDialog(SwingUtilities.getWindowAncestor(owner), title);
        JFileChooser chooser = chooser(dialog, name);
        chooser.setName("tonight.chooser");
        chooser.setSelectedFile(new File(chooser.getCurrentDirectory(), name));
        chooser.setDialogType(JFileChooser.SAVE_DIALOG);
        dialog.setModal(false);
        chooser.addActionListener(e -> {
            if (e.getActionCommand().equals(JFileChooser.APPROVE_SELECTION)) {
                context.settings().keep("folder", chooser.getCurrentDirectory());
                Path file = withSuffix(chooser.getSelectedFile().toPath(), suffix(name));
                context.background()
                        .quietly(() -> write(file, text.get()), saved -> context.say(TEXTS.text("saved", saved)));
            }
            dialog.dispose();
        });
        dialog.add(chooser);
        Placing.over(dialog, owner);
        dialog.setVisible(true);
    }

    /** A chooser that replaces a file only when asked twice. */
    private JFileChooser chooser(JDialog dialog, String name) {
        return new JFileChooser(context.settings().text("folder", ".")) {
            private static final long serialVersionUID = 1L;
            private transient Optional<Path> warned = Optional.empty();

            @Override
            public void approveSelection() {
                Path file = withSuffix(getSelectedFile().toPath(), suffix(name));
                if (Files.exists(file) && !warned.equals(Optional.of(file))) {
                    warned = Optional.of(file);
                    dialog.setTitle(TEXTS.text("exists", file.getFileName()));
                    context.say(TEXTS.text("exists", file));
                    return;
                }
                super.approveSelection();
            }
        };
    }

    private static String suffix(String name) {
        return name.substring(name.lastIndexOf('.'));
    }

    private static Path withSuffix(Path file, String suffix) {
        String name = file.getFileName().toString();
        return name.toLowerCase(Locale.ROOT).endsWith(suffix) ? file : file.resolveSibling(name + suffix);
    }

    /** Whole or not at all: beside it first, then in its place. */
    static Path write(Path file, String text) {
        try {
            Path beside = Files.createTempFile(file.toAbsolutePath().getParent(), ".oblate", ".part");
            try {
                Files.writeString(beside, text, StandardCharsets.UTF_8);
                Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(beside);
            }
            return file;
        } catch (IOException e) {
            throw new ProblemException(e, WorkbenchProblem.NOT_SAVED, file, e.getMessage());
        }
    }
}
