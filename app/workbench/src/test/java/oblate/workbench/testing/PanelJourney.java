/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.testing;

import java.nio.file.Path;
import oblate.base.PluginHost;
import oblate.workbench.WorkbenchContext;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A test of a panel in the real window, on a screen: an archive and settings of its own, what ships on the class path, and the window closed at the end. */
@Tag("window")
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@ExtendWith(OnScreen.class)
public abstract class PanelJourney {
    /** Holds {@code archive} and {@code settings}. */
    @TempDir
    protected Path folder;

    /** What ships on the class path. */
    protected PluginHost plugins;

    /** The window, once {@link #open} was called. */
    protected OpenWindow window;

    @BeforeEach
    void findPlugins() {
        plugins = PluginHost.bundledOnly();
    }

    @AfterEach
    void close() {
        if (window != null) {
            window.close();
        }
        plugins.close();
    }

    /** Where the archive is, or will be when first opened. */
    protected Path archiveFolder() {
        return folder.resolve("archive");
    }

    /** What the window would be opened with, to fill the archive beforehand; its archive is the caller's to close. */
    protected WorkbenchContext context() {
        return OpenWindow.context(archiveFolder(), folder.resolve("settings"), plugins);
    }

    /** Opens the window, 1400 pixels by 900, with a panel shown. */
    protected void open(String panel) {
        window = new OpenWindow(context());
        window.show(panel, 1400, 900);
    }
}
