/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import javax.swing.JTable;
import oblate.base.PluginHost;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;

/** Takes pictures of the panels of this module for the guide. */
public final class DriftPictures {
    private DriftPictures() {}

    /** Writes the picture of a panel: archive folder, output file, theme, panel, and perhaps the feature that is chosen. */
    public static void main(String[] args) throws IOException {
        Path out = Path.of(args[1]);
        try (OpenWindow window = new OpenWindow(
                Path.of(args[0]),
                out.resolveSibling("settings-" + args[2].toLowerCase(Locale.ROOT)),
                PluginHost.bundledOnly())) {
            OpenWindow.act(() -> window.workbench().setTheme(Theme.valueOf(args[2])));
            window.show(args[3], 1580, 960);
            if (args.length > 4) {
                JTable table = (JTable) window.find("drifts");
                OpenWindow.act(() -> {
                    for (int row = 0; row < table.getRowCount(); row++) {
                        if (table.getValueAt(row, 0).equals(args[4])) {
                            table.setRowSelectionInterval(row, row);
                        }
                    }
                });
                OpenWindow.pause(900);
                window.settle();
            }
            window.save(out);
        }
    }
}
