/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.TransferHandler;

/** Lets files and folders be dropped. */
final class FileDrop extends TransferHandler {
    private static final long serialVersionUID = 1L;
    private final transient Consumer<List<Path>> taker;

    FileDrop(Consumer<List<Path>> taker) {
        this.taker = taker;
    }

    @Override
    public boolean canImport(TransferSupport support) {
        return support.isDataFlavorSupported(DataFlavor.javaFileListFlavor);
    }

    @Override
    public boolean importData(TransferSupport support) {
        if (!canImport(support)) {
            return false;
        }
        try {
            List<?> files = (List<?>) support.getTransferable().getTransferData(DataFlavor.javaFileListFlavor);
            taker.accept(files.stream().map(f -> ((File) f).toPath()).toList());
            return true;
        } catch (UnsupportedFlavorException | IOException e) {
            return false;
        }
    }
}
