/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.IntStream;
import javax.swing.JComboBox;
import javax.swing.JTabbedPane;
import javax.swing.JTable;
import oblate.base.PluginHost;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;

/** Takes pictures of the panel for the guide. */
public final class MoonsPictures {
    private MoonsPictures() {}

    /** Writes a picture: archive folder, output file, theme, and perhaps planet, date, and event ("Shadow Io"), or "timings", or "states" and a date, in their place. */
    public static void main(String[] args) throws IOException {
        Path out = Path.of(args[1]);
        try (OpenWindow window = new OpenWindow(
                Path.of(args[0]),
                out.resolveSibling("settings-" + args[2].toLowerCase(Locale.ROOT)),
                PluginHost.bundledOnly())) {
            OpenWindow.act(() -> window.workbench().setTheme(Theme.valueOf(args[2])));
            window.show("moons", 1500, 940);
            if (args.length == 4 && args[3].equals("timings")) {
                JTabbedPane tabs = (JTabbedPane) window.find("moons.tabs");
                OpenWindow.act(() -> tabs.setSelectedIndex(1));
                window.settle();
                choose(window, "moons.timings.rows", 6);
            } else if (args.length == 5 && args[3].equals("states")) {
                JTabbedPane tabs = (JTabbedPane) window.find("moons.tabs");
                window.enter("moons.date", args[4]);
                OpenWindow.act(() -> tabs.setSelectedIndex(2));
                window.settle();
                choose(window, "moons.states.rows", 1);
            } else {
                if (args.length > 4) {
                    JComboBox<?> planet = (JComboBox<?>) window.find("moons.planet");
                    OpenWindow.act(() -> planet.setSelectedItem(args[3]));
                    window.enter("moons.date", args[4]);
                }
                JTable events = (JTable) window.find("moons.events");
                choose(window, "moons.events", args.length > 5 ? rowOf(events, args[5]) : 0);
            }
            window.save(out);
        }
    }

    private static void choose(OpenWindow window, String table, int row) {
        JTable rows = (JTable) window.find(table);
        OpenWindow.act(() -> rows.setRowSelectionInterval(row, row));
        window.settle();
    }

    private static int rowOf(JTable table, String kindAndMoon) {
        return OpenWindow.ask(() -> IntStream.range(0, table.getRowCount())
                .filter(r -> kindAndMoon.equals(table.getValueAt(r, 0) + " " + table.getValueAt(r, 1)))
                .findFirst()
                .orElseThrow());
    }
}
