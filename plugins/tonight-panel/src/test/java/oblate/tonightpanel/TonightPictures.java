/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.IntStream;
import javax.swing.AbstractButton;
import oblate.base.PluginHost;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;

/** Takes pictures of the panel for the guide. */
public final class TonightPictures {
    private TonightPictures() {}

    /** Writes a picture: archive folder, output file, theme, date, and perhaps what to click ("oval A") or "month". */
    public static void main(String[] args) throws IOException {
        Path out = Path.of(args[1]);
        try (OpenWindow window = new OpenWindow(
                Path.of(args[0]),
                out.resolveSibling("settings-" + args[2].toLowerCase(Locale.ROOT)),
                PluginHost.bundledOnly())) {
            OpenWindow.act(() -> window.workbench().setTheme(Theme.valueOf(args[2])));
            window.show("tonight", 1500, 940);
            window.enter("tonight.date", args[3]);
            String more = args.length > 4 ? args[4] : "";
            if (more.equals("month")) {
                AbstractButton month = (AbstractButton) window.find("tonight.month.toggle");
                OpenWindow.act(month::doClick);
            } else if (!more.isEmpty()) {
                click(window, more);
            }
            window.settle();
            window.save(out);
        }
    }

    /** Clicks the first thing of a row, and lets the pointer rest a little later in the night. */
    static void click(OpenWindow window, String name) {
        RowsPlot rows = (RowsPlot) window.find("tonight.rows");
        OpenWindow.act(() -> {
            RowLayout layout = new RowLayout(
                    SkyScales.axis(rows.sheet().orElseThrow(), rows.getWidth()),
                    rows.sheet().orElseThrow().rows());
            int index = IntStream.range(0, layout.rows().size())
                    .filter(i -> layout.rows().get(i).name().equals(name))
                    .findFirst()
                    .orElseThrow();
            NightRow.Thing thing = layout.foremost(layout.rows().get(index));
            Rectangle2D box = layout.box(index, thing);
            int x = (int) Math.round(box.getCenterX());
            int y = (int) Math.round(box.getCenterY());
            rows.dispatchEvent(
                    new MouseEvent(rows, MouseEvent.MOUSE_PRESSED, 0, 0, x, y, 1, false, MouseEvent.BUTTON1));
            rows.dispatchEvent(new MouseEvent(rows, MouseEvent.MOUSE_MOVED, 0, 0, x + 30, y, 0, false));
        });
        window.settle();
    }
}
