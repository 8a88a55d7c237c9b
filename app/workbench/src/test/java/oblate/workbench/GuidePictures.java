/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Component;
import java.awt.event.MouseEvent;
import java.io.IOException;
import java.nio.file.Path;
import oblate.archive.ArchivedPicture;
import oblate.base.PluginHost;
import oblate.workbench.look.Theme;

/** Takes the pictures of the guide: {@code GuidePictures ARCHIVE OUT [THEME]}, on the sample season's archive. */
public final class GuidePictures {
    private GuidePictures() {}

    /** Shows every panel in turn and writes one picture of each. */
    public static void main(String[] args) throws IOException {
        Path out = Path.of(args[1]);
        try (WindowPictures window =
                new WindowPictures(Path.of(args[0]), out.resolve("settings"), PluginHost.bundledOnly())) {
            String suffix = "";
            if (args.length > 2) {
                Theme theme = Theme.valueOf(args[2]);
                suffix = "-" + args[2].toLowerCase(java.util.Locale.ROOT);
                WindowPictures.act(() -> window.workbench().setTheme(theme));
            }
            WindowPictures.act(() -> window.workbench().frame().setBounds(0, 0, 1600, 1000));
            window.settle();
            ArchivedPicture best = WindowPictures.ask(() -> window.workbench().shelf().pictures().stream()
                    .filter(p -> p.channels() == 3)
                    .max(java.util.Comparator.comparingInt(ArchivedPicture::markCount))
                    .orElseThrow());
            WindowPictures.act(() -> window.workbench().selection().choosePicture(best.id()));
            for (String panel : new String[] {"nights", "measure", "longitude-date", "report", "plug-ins"}) {
                WindowPictures.act(() -> window.workbench().showPanel(panel));
                window.settle();
                if (panel.equals("measure")) {
                    Component canvas = window.find("canvas");
                    WindowPictures.act(() -> canvas.dispatchEvent(new MouseEvent(
                            canvas,
                            MouseEvent.MOUSE_MOVED,
                            0,
                            0,
                            canvas.getWidth() / 2 + 150,
                            canvas.getHeight() / 2 + 110,
                            0,
                            false)));
                    window.settle();
                }
                window.save(out.resolve(panel + suffix + ".png"));
            }
        }
    }
}
