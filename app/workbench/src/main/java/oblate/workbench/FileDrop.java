/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Component;
import java.awt.Container;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.Transferable;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.awt.dnd.DnDConstants;
import java.awt.dnd.DropTarget;
import java.awt.dnd.DropTargetDragEvent;
import java.awt.dnd.DropTargetDropEvent;
import java.awt.dnd.DropTargetEvent;
import java.awt.event.ContainerEvent;
import java.awt.event.ContainerListener;
import java.io.File;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JComponent;
import javax.swing.TransferHandler;

/** Lets files and folders be dropped. */
final class FileDrop extends TransferHandler {
    private static final long serialVersionUID = 1L;
    private final transient Consumer<List<Path>> taker;

    FileDrop(Consumer<List<Path>> taker) {
        this.taker = taker;
    }

    /**
     * Takes files dropped anywhere on a component or what is in it, now or later. Text fields, tables and lists take drops of their own and would
     * keep files from getting through: they hand files on and keep the rest.
     */
    static void everywhere(JComponent root, Consumer<List<Path>> taker) {
        root.setTransferHandler(new FileDrop(taker));
        new Watch(taker).watch(root);
    }

    @Override
    public boolean canImport(TransferSupport support) {
        return support.isDataFlavorSupported(DataFlavor.javaFileListFlavor);
    }

    @Override
    public boolean importData(TransferSupport support) {
        return canImport(support) && take(support.getTransferable(), taker);
    }

    private static boolean take(Transferable dropped, Consumer<List<Path>> taker) {
        try {
            List<Path> paths = new ArrayList<>();
            for (Object file : (List<?>) dropped.getTransferData(DataFlavor.javaFileListFlavor)) {
                try {
                    paths.add(((File) file).toPath());
                } catch (InvalidPathException e) {
                    // A name this system cannot have is no file of this system.
                    continue;
                }
            }
            taker.accept(paths);
            return !paths.isEmpty();
        } catch (UnsupportedFlavorException | IOException e) {
            return false;
        }
    }

    /** Puts itself before the drop target of every component that has one. */
    private record Watch(Consumer<List<Path>> taker) implements ContainerListener {
        void watch(Component component) {
            if (component instanceof JComponent own
                    && own.getDropTarget() != null
                    && !(own.getDropTarget() instanceof Before)
                    && !(own.getTransferHandler() instanceof FileDrop)) {
                own.setDropTarget(new Before(own, own.getDropTarget(), taker));
            }
            if (component instanceof Container container) {
                container.removeContainerListener(this);
                container.addContainerListener(this);
                for (Component child : container.getComponents()) {
                    watch(child);
                }
            }
        }

        @Override
        public void componentAdded(ContainerEvent e) {
            watch(e.getChild());
        }

        @Override
        public void componentRemoved(ContainerEvent e) {
            // It is watched on when it comes back.
        }
    }

    /** Takes files and hands all else on. */
    static final class Before extends DropTarget {
        private static final long serialVersionUID = 1L;
        private final transient DropTarget behind;
        private final transient Consumer<List<Path>> taker;

        Before(Component component, DropTarget behind, Consumer<List<Path>> taker) {
            this.behind = behind;
            this.taker = taker;
            setComponent(component);
        }

        @Override
        public synchronized void dragEnter(DropTargetDragEvent e) {
            if (e.isDataFlavorSupported(DataFlavor.javaFileListFlavor)) {
                e.acceptDrag(DnDConstants.ACTION_COPY);
            } else {
                behind.dragEnter(e);
            }
        }

        @Override
        public synchronized void dragOver(DropTargetDragEvent e) {
            if (e.isDataFlavorSupported(DataFlavor.javaFileListFlavor)) {
                e.acceptDrag(DnDConstants.ACTION_COPY);
            } else {
                behind.dragOver(e);
            }
        }

        @Override
        public synchronized void dropActionChanged(DropTargetDragEvent e) {
            if (!e.isDataFlavorSupported(DataFlavor.javaFileListFlavor)) {
                behind.dropActionChanged(e);
            }
        }

        @Override
        public synchronized void dragExit(DropTargetEvent e) {
            behind.dragExit(e);
        }

        @Override
        public synchronized void drop(DropTargetDropEvent e) {
            if (e.isDataFlavorSupported(DataFlavor.javaFileListFlavor)) {
                e.acceptDrop(DnDConstants.ACTION_COPY);
                e.dropComplete(take(e.getTransferable(), taker));
            } else {
                behind.drop(e);
            }
        }
    }
}
