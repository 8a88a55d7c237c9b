/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Component;
import java.awt.Image;
import java.awt.Toolkit;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.StringSelection;
import java.awt.datatransfer.Transferable;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import javax.swing.JDialog;
import javax.swing.JFileChooser;
import javax.swing.SwingUtilities;
import javax.swing.filechooser.FileNameExtensionFilter;
import oblate.base.ProblemException;
import oblate.report.ChartContent;
import oblate.report.ChartOrder;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchProblem;
import oblate.workbench.look.Placing;
import oblate.workbench.words.Texts;

/** Keeps charts: as PNG or SVG, and on the clipboard. On the event thread. */
final class ChartKeeping {
    private static final Texts TEXTS = Texts.of(ChartKeeping.class);
    private final PanelContext context;

    ChartKeeping(PanelContext context) {
        this.context = context;
    }

    /** Asks for a file and writes a chart there; the ending chooses PNG or SVG. */
    void save(Component above, String name, ChartContent content, int widthPx, int heightPx) {
        JFileChooser chooser = new JFileChooser(context.settings().text("folder", "."));
        chooser.setSelectedFile(new File(chooser.getCurrentDirectory(), name + ".png"));
        chooser.setDialogType(JFileChooser.SAVE_DIALOG);
        chooser.setFileFilter(new FileNameExtensionFilter(TEXTS.text("save.kinds"), "png", "svg"));
        JDialog dialog = new JDialog(SwingUtilities.getWindowAncestor(above), TEXTS.text("save.title"));
        dialog.setModal(false);
        chooser.addActionListener(e -> {
            if (e.getActionCommand().equals(JFileChooser.APPROVE_SELECTION)) {
                context.settings().keep("folder", chooser.getCurrentDirectory());
                write(chooser.getSelectedFile().toPath(), content, widthPx, heightPx);
            }
            dialog.dispose();
        });
        dialog.add(chooser);
        Placing.over(dialog, above);
        dialog.setVisible(true);
    }

    /** Writes a chart in the background and says so. */
    void write(Path wanted, ChartContent content, int widthPx, int heightPx) {
        String name = wanted.getFileName().toString().toLowerCase(Locale.ROOT);
        boolean svg = name.endsWith(".svg");
        Path file = svg || name.endsWith(".png") ? wanted : wanted.resolveSibling(wanted.getFileName() + ".png");
        ChartOrder.Size size = new ChartOrder.Size(within(widthPx), within(heightPx), svg ? 1 : 2);
        ChartOrder order = new ChartOrder(content, size, theme(), svg ? ChartOrder.Format.SVG : ChartOrder.Format.PNG);
        context.background().quietly(() -> written(order, file), saved -> context.say(TEXTS.text("saved", saved)));
    }

    private static int within(int px) {
        return Math.max(ChartOrder.Size.LEAST_PX, Math.min(ChartOrder.Size.MOST_PX, px));
    }

    private static Path written(ChartOrder order, Path file) {
        Path part = file.resolveSibling("." + file.getFileName() + ".part");
        try {
            try (OutputStream out = Files.newOutputStream(part)) {
                new ChartFiles().write(order, out);
            }
            return Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new ProblemException(e, WorkbenchProblem.NOT_SAVED, file, e.getMessage());
        } finally {
            clear(part);
        }
    }

    private static void clear(Path part) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException e) {
            System.getLogger(ChartKeeping.class.getName()).log(System.Logger.Level.WARNING, "left behind: " + part, e);
        }
    }

    private ChartOrder.Theme theme() {
        ChartWish look = ChartWish.of(context.palette(), List.of());
        if (look.redLight()) {
            return ChartOrder.Theme.RED;
        }
        return look.ground().getRed() > 128 ? ChartOrder.Theme.LIGHT : ChartOrder.Theme.DARK;
    }

    /** Puts a table of drifts on the clipboard. */
    void copyTable(String text) {
        Toolkit.getDefaultToolkit().getSystemClipboard().setContents(new StringSelection(text), null);
        context.say(TEXTS.text("copied.table"));
    }

    /** Puts a picture on the clipboard. */
    void copy(Image image) {
        Toolkit.getDefaultToolkit().getSystemClipboard().setContents(new Picture(image), null);
        context.say(TEXTS.text("copied.chart"));
    }

    /** A picture for the clipboard. */
    private record Picture(Image image) implements Transferable {
        @Override
        public DataFlavor[] getTransferDataFlavors() {
            return new DataFlavor[] {DataFlavor.imageFlavor};
        }

        @Override
        public boolean isDataFlavorSupported(DataFlavor flavor) {
            return DataFlavor.imageFlavor.equals(flavor);
        }

        @Override
        public Object getTransferData(DataFlavor flavor) throws UnsupportedFlavorException {
            if (!isDataFlavorSupported(flavor)) {
                throw new UnsupportedFlavorException(flavor);
            }
            return image;
        }
    }
}
