/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.table;

import java.awt.Toolkit;
import java.awt.datatransfer.StringSelection;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JFileChooser;
import javax.swing.SwingUtilities;
import oblate.base.ProblemException;
import oblate.report.ReportFormat;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchProblem;
import oblate.workbench.look.Placing;
import oblate.workbench.words.Texts;

/** Saves the page, copies it, and notes that it was sent. On the event thread only. */
final class PageKeeping {
    private static final Texts TEXTS = Texts.of(PageKeeping.class);
    private final JComponent beside;
    private final PanelContext context;
    private final Supplier<Optional<Page>> written;

    /**
     * @param beside where a dialog is put
     * @param written the page as it is now
     */
    PageKeeping(JComponent beside, PanelContext context, Supplier<Optional<Page>> written) {
        this.beside = beside;
        this.context = context;
        this.written = written;
    }

    void copy() {
        written.get().ifPresent(made -> {
            Toolkit.getDefaultToolkit().getSystemClipboard().setContents(new StringSelection(made.text()), null);
            context.say(TEXTS.text("report.copied"));
        });
    }

    void noteSent(String kind) {
        List<Long> pictures = written.get().map(Page::pictures).orElse(List.of());
        if (pictures.isEmpty()) {
            return;
        }
        String why = TEXTS.text("report.sent.why", kind);
        context.background()
                .quietly(
                        () -> {
                            context.archive().noteReported(pictures, why);
                            return pictures.size();
                        },
                        count -> {
                            context.say(TEXTS.text("report.sent", Integer.toString(count)));
                            context.shelf().refresh();
                        });
    }

    void save(ReportFormat format, String kind) {
        String name = context.planet().id() + "-" + kind + "." + format.suffix();
        JFileChooser chooser = new JFileChooser(context.settings().text("folder", "."));
        chooser.setSelectedFile(new java.io.File(chooser.getCurrentDirectory(), name));
        chooser.setDialogType(JFileChooser.SAVE_DIALOG);
        JDialog dialog = new JDialog(SwingUtilities.getWindowAncestor(beside), TEXTS.text("report.save"));
        dialog.setModal(false);
        chooser.addActionListener(e -> {
            if (e.getActionCommand().equals(JFileChooser.APPROVE_SELECTION)) {
                context.settings().keep("folder", chooser.getCurrentDirectory());
                saveTo(chooser.getSelectedFile().toPath());
            }
            dialog.dispose();
        });
        dialog.add(chooser);
        Placing.over(dialog, beside);
        dialog.setVisible(true);
    }

    /** Whole or not at all: a full disk leaves what was there before. */
    private void saveTo(Path file) {
        if (written.get().isEmpty()) {
            return;
        }
        String text = written.get().get().text();
        context.background()
                .quietly(
                        () -> {
                            Path part = file.resolveSibling("." + file.getFileName() + ".part");
                            try {
                                Files.writeString(part, text, StandardCharsets.UTF_8);
                                return Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
                            } catch (IOException e) {
                                part.toFile().delete();
                                throw new ProblemException(e, WorkbenchProblem.NOT_SAVED, file, e.getMessage());
                            }
                        },
                        saved -> context.say(TEXTS.text("report.saved", saved.toString())));
    }
}
