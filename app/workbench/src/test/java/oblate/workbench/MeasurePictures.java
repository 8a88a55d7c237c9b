/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.swing.Action;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import oblate.archive.ArchivedPicture;
import oblate.archive.MarkSearch;
import oblate.base.PluginHost;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;

/**
 * Takes pictures of the measuring desk in every theme at 1x and 2x: {@code MeasurePictures ARCHIVE OUT}, on a copy of the archive that {@code oblate demo}
 * makes. It drops marks on the way, so that the archive is changed.
 */
public final class MeasurePictures {
    private static final String STAR = "red oval";
    private final OpenWindow window;
    private final Path out;

    private MeasurePictures(OpenWindow window, Path out) {
        this.window = window;
        this.out = out;
    }

    /** Shows every state of the desk in turn and writes pictures of each. */
    public static void main(String[] args) throws IOException {
        Path out = Path.of(args[1]);
        Files.createDirectories(out);
        try (OpenWindow window = new OpenWindow(Path.of(args[0]), out.resolve("settings"), PluginHost.bundledOnly())) {
            OpenWindow.act(() -> window.workbench().frame().setBounds(0, 0, 1500, 940));
            window.settle();
            MeasurePictures pictures = new MeasurePictures(window, out);
            for (Theme theme : Theme.values()) {
                OpenWindow.act(() -> window.workbench().setTheme(theme));
                pictures.takeAll(theme.name().toLowerCase(Locale.ROOT));
            }
        }
    }

    private void takeAll(String theme) throws IOException {
        ArchivedPicture best = best();
        OpenWindow.act(() -> window.workbench().openPicture(best.id()));
        window.settle();
        moveOn(0.62, 0.60);
        save("measure-" + theme);
        key("canvas", "whole");
        click(0.56, 0.44);
        window.settle();
        save("naming-" + theme);
        key("naming.text", "naming.27.0");
        window.settle();
        key("canvas", "withdraw");
        window.settle();
        key("canvas", "hand");
        moveOn(0.30, 0.55);
        save("hand-" + theme);
        key("canvas", "none");
        key("canvas", "layer.belts");
        key("canvas", "flip");
        key("canvas", "turn.right.far");
        window.settle();
        save("layers-" + theme);
        key("canvas", "straight");
        key("canvas", "layer.belts");
        key("canvas", "compare");
        window.settle();
        choose("compare.kind", 0);
        choose("compare.manner", 0);
        save("pair-" + theme);
        choose("compare.kind", 2);
        choose("compare.manner", 2);
        save("slider-" + theme);
        key("canvas", "compare");
        moveOn(0.52, 0.62);
        key("canvas", "season");
        window.settle();
        save("season-" + theme);
        key("canvas", "season");
        window.settle();
    }

    private void choose(String box, int index) {
        OpenWindow.act(() -> ((JComboBox<?>) window.find(box)).setSelectedIndex(index));
        window.settle();
    }

    /** Performs what a key of a component does. */
    private void key(String component, String id) {
        JComponent where = (JComponent) window.find(component);
        OpenWindow.act(() -> {
            Action action = where.getActionMap().get(id);
            action.actionPerformed(new java.awt.event.ActionEvent(where, 0, id));
        });
        window.settle();
    }

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

    private void save(String name) throws IOException {
        window.save(out.resolve(name + ".png"));
        BufferedImage twice = OpenWindow.ask(() -> {
            Component pane = window.workbench().frame().getRootPane();
            Dimension size = pane.getSize();
            BufferedImage image = new BufferedImage(2 * size.width, 2 * size.height, BufferedImage.TYPE_INT_RGB);
            Graphics2D g = image.createGraphics();
            g.scale(2, 2);
            pane.printAll(g);
            g.dispose();
            return image;
        });
        ImageIO.write(twice, "png", out.resolve(name + "@2x.png").toFile());
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
