/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Component;
import java.awt.event.MouseEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.TransferHandler;
import oblate.archive.ArchivedPicture;
import oblate.archive.MarkSearch;
import oblate.base.PluginHost;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;

/**
 * Takes the pictures of the guide: {@code GuidePictures ARCHIVE OUT [THEME]}, on a copy of the archive that {@code oblate demo} makes. It drops a
 * mark on the way, so that the archive is changed.
 */
public final class GuidePictures {
    private static final String STAR = "red oval";
    private final OpenWindow window;
    private final Path out;
    private final String suffix;

    private GuidePictures(OpenWindow window, Path out, String suffix) {
        this.window = window;
        this.out = out;
        this.suffix = suffix;
    }

    /** Shows every panel in turn and writes one picture of each. */
    public static void main(String[] args) throws IOException {
        Path out = Path.of(args[1]);
        Theme theme = args.length > 2 ? Theme.valueOf(args[2]) : Theme.DUSK;
        String suffix = args.length > 2 ? "-" + args[2].toLowerCase(Locale.ROOT) : "";
        try (OpenWindow window =
                new OpenWindow(Path.of(args[0]), out.resolve("settings" + suffix), PluginHost.bundledOnly())) {
            OpenWindow.act(() -> {
                window.workbench().setTheme(theme);
                window.workbench().frame().setBounds(0, 0, 1500, 940);
            });
            window.settle();
            new GuidePictures(window, out, suffix).takeAll();
        }
    }

    private void takeAll() throws IOException {
        ArchivedPicture best = best();
        OpenWindow.act(() -> window.workbench().selection().choosePicture(best.id()));
        show("nights");
        save("nights");
        show("measure");
        moveOn(0.62, 0.60);
        save("measure");
        click(0.56, 0.44);
        window.settle();
        save("naming");
        OpenWindow.act(() -> window.workbench().selection().chooseFeature(Optional.of("oval A")));
        show("longitude-date");
        save("drift");
        show("report");
        save("report");
        show("plug-ins");
        save("plug-ins");
        JComponent pane = (JComponent) window.workbench().frame().getContentPane();
        OpenWindow.act(() -> pane.getTransferHandler()
                .importData(new TransferHandler.TransferSupport(
                        pane,
                        new FileList(List.of(out.toFile(), Path.of("night").toFile())))));
        window.settle();
        save("filing");
    }

    /** A colour picture that shows the red oval and much else. */
    private ArchivedPicture best() {
        List<Long> withStar = window.context().archive().marks(MarkSearch.all()).stream()
                .filter(m -> m.featureName().equals(Optional.of(STAR)))
                .filter(m -> m.mark().point().orElseThrow().emissionDeg() < 50)
                .map(m -> m.mark().pictureId())
                .toList();
        return OpenWindow.ask(() -> window.workbench().shelf().pictures().stream()
                .filter(p -> p.channels() == 3 && withStar.contains(p.id()))
                .max(Comparator.comparingInt(ArchivedPicture::markCount))
                .orElseThrow());
    }

    private void show(String panel) {
        OpenWindow.act(() -> window.workbench().showPanel(panel));
        window.settle();
    }

    private void save(String name) throws IOException {
        window.save(out.resolve(name + suffix + ".png"));
    }

    private void moveOn(double across, double down) {
        Component canvas = window.find("canvas");
        OpenWindow.act(() -> canvas.dispatchEvent(event(canvas, MouseEvent.MOUSE_MOVED, across, down)));
        window.settle();
    }

    private void click(double across, double down) {
        Component canvas = window.find("canvas");
        OpenWindow.act(() -> {
            canvas.dispatchEvent(event(canvas, MouseEvent.MOUSE_PRESSED, across, down));
            canvas.dispatchEvent(event(canvas, MouseEvent.MOUSE_RELEASED, across, down));
        });
    }

    private static MouseEvent event(Component canvas, int what, double across, double down) {
        int x = (int) (canvas.getWidth() * across);
        int y = (int) (canvas.getHeight() * down);
        int button = what == MouseEvent.MOUSE_MOVED ? MouseEvent.NOBUTTON : MouseEvent.BUTTON1;
        return new MouseEvent(canvas, what, 0, 0, x, y, 1, false, button);
    }
}
