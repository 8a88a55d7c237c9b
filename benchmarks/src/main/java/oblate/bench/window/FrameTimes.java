/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench.window;

import java.awt.Component;
import java.awt.Toolkit;
import java.awt.event.InputEvent;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureSearch;
import oblate.disc.DiscFit;
import oblate.disc.DiscFitter;
import oblate.disc.FitHints;
import oblate.disc.FitOutcome;
import oblate.sky.ApparentDisc;
import oblate.workbench.WorkbenchContext;

/**
 * Drags and zooms a picture of 4000 × 4000 px, 16 bits, with the grid on, in a window of 1600 × 1000, and prints how long it takes from the
 * mouse's event to the painted canvas.
 */
public final class FrameTimes {
    private static final int SIDE_PX = 4000;
    private static final int FRAMES = 300;

    private FrameTimes() {}

    /** No words. */
    public static void main(String[] words) throws IOException {
        Path work = Files.createTempDirectory("frames");
        DrawnPictures.write(work.resolve("in"), SIDE_PX, Instant.parse("2024-12-07T20:58:00Z"), 1);
        Files.createDirectories(work.resolve("settings"));
        Files.writeString(work.resolve("settings/workbench.properties"), "panel.measure.fit.new=false\n");
        WorkbenchContext context = BenchWindow.context(work.resolve("archive"), work.resolve("settings"));
        DrawnPictures.file(context, work.resolve("in"));
        ArchivedPicture picture =
                context.archive().pictures(PictureSearch.all()).get(0);
        keepAFit(context, picture);
        try (BenchWindow window = new BenchWindow(context)) {
            BenchWindow.ask(() -> {
                window.workbench().openPicture(picture.id());
                return true;
            });
            BenchWindow.await(() -> window.workbench().background().isIdle());
            window.settle();
            JComponent canvas = (JComponent) window.find("canvas").orElseThrow();
            for (boolean warm : new boolean[] {false, true}) {
                List<Double> pans = new ArrayList<>();
                List<Double> zooms = new ArrayList<>();
                for (int i = 0; i < FRAMES; i++) {
                    int frame = i;
                    zooms.add(BenchWindow.ask(() -> zoom(canvas, frame)));
                    pans.add(BenchWindow.ask(() -> pan(canvas, frame)));
                }
                if (warm) {
                    System.out.println("zooming  " + Figures.of(zooms));
                    System.out.println("dragging " + Figures.of(pans));
                }
            }
        }
        System.exit(0);
    }

    private static void keepAFit(WorkbenchContext context, ArchivedPicture picture) {
        ApparentDisc disc = context.sky()
                .disc(
                        context.planets().stream()
                                .filter(p -> p.id().equals("jupiter"))
                                .findFirst()
                                .orElseThrow(),
                        picture.time().orElseThrow().midUtc());
        var pixels = context.reader().decode(context.archive().fileOf(picture)).pixels();
        FitOutcome outcome = new DiscFitter()
                .fit(
                        pixels,
                        disc,
                        new FitHints(
                                java.util.Optional.of(new FitHints.Angle(0, 2)),
                                java.util.Optional.of(false),
                                java.util.Optional.empty()),
                        oblate.base.Progress.SILENT);
        if (!(outcome instanceof FitOutcome.Fitted fitted)) {
            throw new IllegalStateException(outcome.toString());
        }
        DiscFit fit = fitted.fit();
        context.archive().keepFit(picture.id(), fit, disc.ephemeris(), context.software());
    }

    /** Turns the wheel by one click, in and out in turn. */
    private static double zoom(JComponent canvas, int frame) {
        int sense = frame / 8 % 2 == 0 ? -1 : 1;
        return timed(
                canvas,
                () -> canvas.dispatchEvent(new MouseWheelEvent(
                        canvas,
                        MouseEvent.MOUSE_WHEEL,
                        System.currentTimeMillis(),
                        0,
                        canvas.getWidth() / 3 + frame % 50,
                        canvas.getHeight() / 3,
                        0,
                        false,
                        MouseWheelEvent.WHEEL_UNIT_SCROLL,
                        3,
                        sense)));
    }

    /** Drags by some pixels, to and fro. */
    private static double pan(JComponent canvas, int frame) {
        int step = frame / 10 % 2 == 0 ? 14 : -14;
        int x = canvas.getWidth() / 2;
        int y = canvas.getHeight() / 2;
        canvas.dispatchEvent(mouse(canvas, MouseEvent.MOUSE_PRESSED, x, y));
        double ms = timed(
                canvas, () -> canvas.dispatchEvent(mouse(canvas, MouseEvent.MOUSE_DRAGGED, x + step, y + step / 2)));
        canvas.dispatchEvent(mouse(canvas, MouseEvent.MOUSE_RELEASED, x + step, y + step / 2));
        return ms;
    }

    private static MouseEvent mouse(Component canvas, int id, int x, int y) {
        int held = id == MouseEvent.MOUSE_RELEASED ? 0 : InputEvent.BUTTON1_DOWN_MASK;
        return new MouseEvent(canvas, id, System.currentTimeMillis(), held, x, y, 1, false, MouseEvent.BUTTON1);
    }

    private static double timed(JComponent canvas, Runnable event) {
        long begun = System.nanoTime();
        event.run();
        canvas.paintImmediately(0, 0, canvas.getWidth(), canvas.getHeight());
        Toolkit.getDefaultToolkit().sync();
        return (System.nanoTime() - begun) / 1e6;
    }
}
