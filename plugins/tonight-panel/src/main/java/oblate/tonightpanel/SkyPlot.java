/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import oblate.sky.DarkWindow;
import oblate.sky.GroundView;
import oblate.sky.TimeSpan;
import oblate.sky.Twilight;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.timeline.TimeAxis;
import oblate.workbench.words.Texts;

/** The planet's altitude and dispersion through the night, over twilight, with the window lit. */
final class SkyPlot extends NightDrawing {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(SkyPlot.class);
    private static final float[] DASHES = {6, 4};
    private static final float[] DOTS = {1.5f, 4};
    private static final int[] LINES_PX = {5, 8, 12, 18, 0};
    private static final int BRACKET_PX = 5;

    SkyPlot(Supplier<Palette> palette, NightPointer pointer, Supplier<java.time.Instant> now) {
        super(palette, pointer, now);
        setName("tonight.sky");
        getAccessibleContext().setAccessibleName(TEXTS.text("sky.name"));
    }

    @Override
    void paintNight(Graphics2D g, NightSheet sheet, Palette colours) {
        SkyScales scales = SkyScales.of(sheet, getWidth(), getHeight());
        Tints tints = new Tints(colours);
        Shape clip = g.getClip();
        g.clip(scales.plot());
        lights(g, sheet, scales, tints);
        lit(g, sheet, scales, tints);
        grid(g, sheet, scales, colours);
        curves(g, sheet, scales, colours);
        g.setClip(clip);
        twilightNames(g, sheet, scales, colours);
        bracket(g, sheet, scales, colours);
        axes(g, scales, colours);
        marks(g, scales.axis(), scales.topPx(), scales.bottomPx(), true);
    }

    private static void lights(Graphics2D g, NightSheet sheet, SkyScales scales, Tints tints) {
        for (NightSheet.Light light : sheet.lights()) {
            Rectangle2D box = box(scales, light.span());
            g.setColor(tints.light(light.twilight()));
            g.fill(box);
            int step = LINES_PX[light.twilight().ordinal()];
            g.setColor(tints.lightLine());
            g.setStroke(new BasicStroke(0.7f));
            for (double y = scales.bottomPx(); step > 0 && y > scales.topPx(); y -= step) {
                g.draw(new Line2D.Double(box.getMinX(), y, box.getMaxX(), y));
            }
        }
    }

    private static Rectangle2D box(SkyScales scales, TimeSpan span) {
        double left = scales.axis().x(span.from());
        return new Rectangle2D.Double(
                left, scales.topPx(), scales.axis().x(span.to()) - left, scales.bottomPx() - scales.topPx());
    }

    private static void lit(Graphics2D g, NightSheet sheet, SkyScales scales, Tints tints) {
        g.setColor(tints.window());
        sheet.night().windows().forEach(w -> g.fill(box(scales, w.span())));
        g.setColor(tints.best());
        sheet.night().bestHour().ifPresent(h -> g.fill(box(scales, h)));
    }

    private static void grid(Graphics2D g, NightSheet sheet, SkyScales scales, Palette colours) {
        g.setColor(Tints.alpha(colours.quietInk(), 70));
        g.setStroke(new BasicStroke(0.8f));
        for (int deg = degStep(scales); deg < scales.topDeg(); deg += degStep(scales)) {
            double y = scales.altitudeY(deg);
            g.draw(new Line2D.Double(scales.axis().leftPx(), y, scales.axis().rightPx(), y));
        }
        double least = scales.altitudeY(sheet.wish().minAltitudeDeg());
        g.setColor(colours.accent());
        g.setStroke(new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, DOTS, 0));
        g.draw(new Line2D.Double(scales.axis().leftPx(), least, scales.axis().rightPx(), least));
    }

    private static int degStep(SkyScales scales) {
        return scales.topDeg() > 60 ? 15 : 10;
    }

    private static void curves(Graphics2D g, NightSheet sheet, SkyScales scales, Palette colours) {
        g.setColor(colours.ink());
        g.setStroke(new BasicStroke(1.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, DASHES, 0));
        g.draw(curve(
                sheet.track(),
                scales.axis(),
                v -> scales.dispersionY(v.dispersionArcsec(Asked.SHORT_NM, Asked.LONG_NM))));
        g.setColor(colours.accent());
        g.setStroke(new BasicStroke(2.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(curve(sheet.track(), scales.axis(), v -> scales.altitudeY(v.altitudeDeg())));
    }

    /** Left out where the value is no number. */
    private static Path2D curve(List<GroundView> track, TimeAxis axis, ToDoubleFunction<GroundView> y) {
        Path2D path = new Path2D.Double();
        boolean pen = false;
        for (GroundView view : track) {
            double at = y.applyAsDouble(view);
            boolean known = Double.isFinite(at);
            if (known && pen) {
                path.lineTo(axis.x(view.time()), at);
            } else if (known) {
                path.moveTo(axis.x(view.time()), at);
            }
            pen = known;
        }
        return path;
    }

    /** Each in the middle of its stretch where there is room. */
    private static void twilightNames(Graphics2D g, NightSheet sheet, SkyScales scales, Palette colours) {
        g.setFont(Theme.bodyFont(-2));
        g.setColor(colours.quietInk());
        FontMetrics m = g.getFontMetrics();
        for (NightSheet.Light light : sheet.lights()) {
            double from = scales.axis().x(light.span().from());
            double to = scales.axis().x(light.span().to());
            String name = TEXTS.text("light." + light.twilight().word());
            String shown = m.stringWidth(name) + 4 <= to - from
                    ? name
                    : TEXTS.text("light." + light.twilight().word() + ".short");
            if (m.stringWidth(shown) + 2 <= to - from) {
                g.drawString(shown, (float) ((from + to - m.stringWidth(shown)) / 2), HEAD_TEXT_Y);
            }
            if (light.twilight() != Twilight.NIGHT || from > scales.axis().leftPx() + 1) {
                g.setStroke(new BasicStroke(0.8f));
                g.draw(new Line2D.Double(from, SkyScales.HEAD_PX - 14.0, from, SkyScales.HEAD_PX));
            }
        }
    }

    private static final float HEAD_TEXT_Y = SkyScales.HEAD_PX - 4f;

    /** The window as a bar over the plot, its best hour thicker. */
    private static void bracket(Graphics2D g, NightSheet sheet, SkyScales scales, Palette colours) {
        g.setColor(colours.accent());
        double y = 20;
        for (DarkWindow window : sheet.night().windows()) {
            Rectangle2D box = box(scales, window.span());
            g.fill(new Rectangle2D.Double(box.getMinX(), y, box.getWidth(), BRACKET_PX - 2));
            g.fill(new Rectangle2D.Double(box.getMinX(), y - 2, 2, BRACKET_PX + 4));
            g.fill(new Rectangle2D.Double(box.getMaxX() - 2, y - 2, 2, BRACKET_PX + 4));
        }
        sheet.night().bestHour().ifPresent(hour -> {
            Rectangle2D box = box(scales, hour);
            g.fill(new Rectangle2D.Double(box.getMinX(), y - 3, box.getWidth(), BRACKET_PX + 4));
            g.setFont(Theme.headFont(-2));
            FontMetrics m = g.getFontMetrics();
            String text = TEXTS.text("best", Say.span(hour));
            double middle = box.getCenterX() - m.stringWidth(text) / 2.0;
            double x =
                    Math.max(scales.axis().leftPx(), Math.min(scales.axis().rightPx() - m.stringWidth(text), middle));
            g.drawString(text, (float) x, 13);
        });
    }

    private static void axes(Graphics2D g, SkyScales scales, Palette colours) {
        g.setFont(Theme.figureFont(-2));
        FontMetrics m = g.getFontMetrics();
        double left = scales.axis().leftPx() - 6;
        g.setColor(colours.accent());
        for (int deg = 0; deg <= scales.topDeg(); deg += degStep(scales)) {
            String text = deg + "°";
            g.drawString(text, (float) (left - m.stringWidth(text)), middle(m, scales.altitudeY(deg)));
        }
        g.setColor(colours.ink());
        double step = scales.stepArcsec();
        for (int i = 0; i * step <= scales.topArcsec() + 1e-9; i++) {
            g.drawString(
                    Figures.fixed(i * step, step == 0.25 ? 2 : 1) + "″",
                    (float) scales.axis().rightPx() + 6,
                    middle(m, scales.dispersionY(i * step)));
        }
        titles(g, scales, colours);
        hours(g, scales.axis(), (float) (scales.bottomPx() + m.getAscent() + 6), scales.bottomPx(), colours);
    }

    private static float middle(FontMetrics m, double y) {
        return (float) (y + m.getAscent() / 2.0 - 1);
    }

    /** What the two curves are, each with a piece of its line. */
    private static void titles(Graphics2D g, SkyScales scales, Palette colours) {
        g.setFont(Theme.bodyFont(-1));
        FontMetrics m = g.getFontMetrics();
        float y = (float) scales.topPx() + m.getAscent() + 24;
        title(g, colours.accent(), new BasicStroke(2.4f), TEXTS.text("curve.altitude"), y);
        title(
                g,
                colours.ink(),
                new BasicStroke(1.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, DASHES, 0),
                TEXTS.text("curve.dispersion"),
                y + 22);
        g.setFont(Theme.bodyFont(-2));
        g.setColor(colours.quietInk());
        g.drawString(TEXTS.text("curve.colours"), 16f, y + 38);
    }

    private static void title(Graphics2D g, Color colour, BasicStroke stroke, String text, float y) {
        g.setColor(colour);
        g.setStroke(stroke);
        g.draw(new Line2D.Double(16, y - 4, 38, y - 4));
        g.drawString(text, 44f, y);
    }
}
