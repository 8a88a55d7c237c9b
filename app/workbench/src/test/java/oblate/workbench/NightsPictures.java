/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Component;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import javax.swing.JComponent;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.TransferHandler;
import oblate.archive.ArchivedPicture;
import oblate.base.PluginHost;
import oblate.workbench.look.Theme;
import oblate.workbench.testing.OpenWindow;

/** Takes the pictures of the panel of nights: {@code NightsPictures ARCHIVE OUT THEME FILES…}, on an archive that {@code oblate demo} makes. */
public final class NightsPictures {
    private final OpenWindow window;
    private final Path out;
    private final String suffix;

    private NightsPictures(OpenWindow window, Path out, String suffix) {
        this.window = window;
        this.out = out;
        this.suffix = suffix;
    }

    /** Writes one picture of each view. */
    public static void main(String[] args) throws IOException {
        Path out = Path.of(args[1]);
        Theme theme = Theme.valueOf(args[2]);
        String suffix = "-" + args[2].toLowerCase(Locale.ROOT) + System.getProperty("sun.java2d.uiScale", "");
        try (OpenWindow window =
                new OpenWindow(Path.of(args[0]), out.resolve("settings" + suffix), PluginHost.bundledOnly())) {
            OpenWindow.act(() -> {
                window.workbench().setTheme(theme);
                window.workbench().frame().setBounds(0, 0, 1500, 940);
            });
            window.settle();
            new NightsPictures(window, out, suffix)
                    .takeAll(List.of(args).subList(3, args.length).stream()
                            .map(Path::of)
                            .toList());
        }
    }

    private void takeAll(List<Path> files) throws IOException {
        OpenWindow.act(() -> window.workbench().showPanel("nights"));
        window.settle();
        OpenWindow.act(() -> window.workbench().selection().choosePicture(ofLargestNight()));
        window.settle();
        save("nights");
        view("coverage");
        save("coverage");
        view("todo");
        save("todo");
        view("pictures");
        List<ArchivedPicture> all =
                OpenWindow.ask(() -> window.workbench().shelf().pictures());
        OpenWindow.act(() -> window.workbench()
                .selection()
                .chooseSpan(Optional.of(new Selection.Span(
                        all.get(0).time().orElseThrow().midUtc(),
                        all.get(all.size() / 3).time().orElseThrow().midUtc()))));
        JTextField search = (JTextField) window.find("search");
        OpenWindow.act(search::requestFocusInWindow);
        OpenWindow.await("the caret", search::isFocusOwner);
        OpenWindow.act(() -> search.setText("state:measured red fil"));
        window.settle();
        save("search");
        OpenWindow.act(() -> {
            search.setText("");
            window.workbench().selection().chooseSpan(Optional.empty());
        });
        JComponent pane = (JComponent) window.workbench().frame().getContentPane();
        OpenWindow.act(() -> pane.getTransferHandler()
                .importData(new TransferHandler.TransferSupport(
                        pane, new FileList(files.stream().map(Path::toFile).toList()))));
        window.settle();
        save("filing");
    }

    private long ofLargestNight() {
        return window.workbench().shelf().pictures().stream()
                .filter(p -> p.night().isPresent())
                .collect(Collectors.groupingBy(p -> p.night().orElseThrow()))
                .values()
                .stream()
                .max(Comparator.comparingInt(List::size))
                .orElseThrow()
                .get(1)
                .id();
    }

    private void view(String name) {
        OpenWindow.act(() -> ((JToggleButton) window.find("view." + name)).doClick());
        window.settle();
    }

    /** As dense as the screen is. */
    private void save(String name) throws IOException {
        BufferedImage image = OpenWindow.ask(() -> {
            Component pane = window.workbench().frame().getRootPane();
            double density =
                    pane.getGraphicsConfiguration().getDefaultTransform().getScaleX();
            BufferedImage drawn = new BufferedImage(
                    (int) (pane.getWidth() * density), (int) (pane.getHeight() * density), BufferedImage.TYPE_INT_RGB);
            Graphics2D g = drawn.createGraphics();
            g.scale(density, density);
            pane.printAll(g);
            g.dispose();
            return drawn;
        });
        ImageIO.write(image, "png", out.resolve(name + suffix + ".png").toFile());
    }
}
