/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.Point;
import java.io.PrintStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.Trust;
import oblate.image.PixelGrid;
import oblate.image.Tone;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.ApparentDisc;
import oblate.sky.Sky;
import oblate.workbench.Background;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.SystemLabel;

/**
 * Measures how long the canvas takes to paint a frame: a picture of 4000 × 4000 px in three colours with all layers on, dragged, zoomed and turned in a window of
 * 1400 × 900. {@code CanvasFrames} prints median and 95th percentile in ms of each.
 */
public final class CanvasFrames implements DiscCanvas.Events {
    private static final int SIDE = 4000;
    private static final int FRAMES = 240;
    private DiscCanvas canvas;
    private Background background;

    /** Runs all and prints the table. */
    public static void main(String[] args) throws Exception {
        new CanvasFrames().run(System.out);
    }

    private void run(PrintStream out) throws Exception {
        PixelGrid pixels = picture();
        long start = System.nanoTime();
        Pyramid pyramid = Pyramid.of(pixels);
        out.printf(Locale.ROOT, "pyramid %.0f ms%n", (System.nanoTime() - start) / 1e6);
        SwingUtilities.invokeAndWait(() -> open(pyramid));
        settle();
        for (double scale : new double[] {0.2, 0.5, 1, 3, 8}) {
            SwingUtilities.invokeAndWait(() -> canvas.zoom(scale / canvas.view().scale()));
            settle();
            measure(out, "drag at " + scale, i -> canvas.pan(i % 40 < 20 ? 5 : -5, i % 40 < 20 ? 3 : -3));
        }
        SwingUtilities.invokeAndWait(canvas::showWhole);
        settle();
        measure(out, "zoom", i -> canvas.zoomAt(700, 400, i % 60 < 30 ? 1.08 : 1 / 1.08));
        SwingUtilities.invokeAndWait(canvas::showWhole);
        measure(out, "turn", i -> canvas.turn(24 + i, false));
        measure(out, "pointer", i -> canvas.pointAt(Optional.of(new PixelPoint(1500 + i, 1800))));
        System.exit(0);
    }

    private interface Step {
        void at(int frame);
    }

    private void measure(PrintStream out, String what, Step step) throws Exception {
        double[] ms = new double[FRAMES];
        for (int i = 0; i < FRAMES; i++) {
            int frame = i;
            SwingUtilities.invokeAndWait(() -> {
                long start = System.nanoTime();
                step.at(frame);
                canvas.paintImmediately(0, 0, canvas.getWidth(), canvas.getHeight());
                ms[frame] = (System.nanoTime() - start) / 1e6;
            });
        }
        double[] sorted = Arrays.copyOfRange(ms, FRAMES / 6, FRAMES);
        Arrays.sort(sorted);
        out.printf(
                Locale.ROOT,
                "%-14s median %.1f ms, 95th percentile %.1f ms%n",
                what,
                sorted[sorted.length / 2],
                sorted[(int) (sorted.length * 0.95)]);
    }

    private void settle() throws Exception {
        do {
            Thread.sleep(150);
        } while (!background.isIdle());
    }

    private void open(Pyramid pyramid) {
        Theme.DUSK.install();
        background = new Background(s -> {});
        canvas = new DiscCanvas(Theme.DUSK::palette, background, this);
        JFrame frame = new JFrame();
        frame.add(canvas);
        frame.setBounds(0, 0, 1400, 900);
        frame.setVisible(true);
        canvas.setPicture(Optional.of(pyramid), new Look(new Tone(0, 1, 1), Look.Channel.ALL, 0, false));
        ApparentDisc disc = Sky.bundled().disc(new Jupiter(), Instant.parse("2031-03-24T21:05:30Z"));
        DiscFrame placed = new DiscFrame(disc, new Placement(2000, 2000, 1700, 24, false));
        List<Drawn> plan = new ArrayList<>();
        LayerInput input = new LayerInput(
                placed,
                Trust.TRUSTED,
                SystemLabel.usual(disc.planet()),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                10);
        Layers.all().forEach(l -> plan.addAll(l.plan(input)));
        canvas.setPlan(plan);
        canvas.turn(24, false);
        canvas.setWhole(new PixelPoint(2000, 2000), 1700, true);
    }

    private static PixelGrid picture() {
        float[][] planes = new float[3][SIDE * SIDE];
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                double r = Math.hypot(x - 2000, y - 2000) / 1700;
                double light = r < 1 ? Math.sqrt(1 - r * r) * (0.7 + 0.3 * Math.sin(y / 90.0)) : 0.02;
                for (int c = 0; c < 3; c++) {
                    planes[c][y * SIDE + x] = (float) (Math.round(light * (1 - 0.1 * c) * 65535) / 65535.0);
                }
            }
        }
        return new PixelGrid(SIDE, SIDE, List.of(planes), 0, 1);
    }

    @Override
    public void pointed(Optional<PixelPoint> pixel) {}

    @Override
    public void clicked(PixelPoint pixel, Point screen) {}

    @Override
    public void circled(PixelPoint centre, double radiusPx) {}

    @Override
    public void viewChanged() {}
}
