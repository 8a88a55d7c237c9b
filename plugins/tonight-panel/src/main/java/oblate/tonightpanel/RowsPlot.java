/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JComponent;
import oblate.drift.plan.PlanItem;
import oblate.sky.TimeSpan;
import oblate.workbench.actions.Deed;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.timeline.SpanFill;
import oblate.workbench.words.Texts;

/** Features' crossings and moons' events, row by row, under the sky's plot and on the same axis of time. */
final class RowsPlot extends NightDrawing {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(RowsPlot.class);
    /** Within so much of the meridian a feature is in good view (deg). */
    static final double GOOD_VIEW_DEG = 50;

    private static final int LEGEND_PX = 26;
    private static final int NAME_PX = SkyScales.LEFT_PX - 22;

    RowsPlot(Supplier<Palette> palette, NightPointer pointer, Supplier<Instant> now) {
        super(palette, pointer, now);
        setName("tonight.rows");
        getAccessibleContext().setAccessibleName(TEXTS.text("rows.name"));
        setToolTipText("");
        setFocusable(true);
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                requestFocusInWindow();
                itemAt(e).ifPresent(item -> pointer.choose(Optional.of(item)));
            }
        });
        Deed.of(TEXTS, "rows.next", () -> step(1)).bind(this, JComponent.WHEN_FOCUSED);
        Deed.of(TEXTS, "rows.previous", () -> step(-1)).bind(this, JComponent.WHEN_FOCUSED);
    }

    /** Chooses the next thing that can be observed, in order of time. */
    private void step(int by) {
        List<PlanItem> items = sheet().map(s -> s.night().observable()).orElse(List.of());
        if (!items.isEmpty()) {
            int at = pointer().chosen().map(items::indexOf).orElse(-1);
            int next = at < 0 ? (by > 0 ? 0 : items.size() - 1) : Math.floorMod(at + by, items.size());
            pointer().choose(Optional.of(items.get(next)));
        }
    }

    private Optional<PlanItem> itemAt(MouseEvent e) {
        return layoutOf().flatMap(l -> l.itemAt(e.getX(), e.getY()));
    }

    private Optional<RowLayout> layoutOf() {
        return sheet().map(s -> new RowLayout(SkyScales.axis(s, getWidth()), s.rows()));
    }

    @Override
    public String getToolTipText(MouseEvent e) {
        return itemAt(e)
                .map(i -> i.what() + ", " + Say.time(i.time(), i.sigmaS()))
                .orElse(null);
    }

    @Override
    public Dimension getPreferredSize() {
        int rows = sheet().map(s -> s.rows().size()).orElse(0);
        return new Dimension(600, RowLayout.TOP_PX + RowLayout.ROW_PX * Math.max(1, rows) + LEGEND_PX);
    }

    @Override
    void paintNight(Graphics2D g, NightSheet sheet, Palette colours) {
        RowLayout layout = new RowLayout(SkyScales.axis(sheet, getWidth()), sheet.rows());
        int foot = Math.max(layout.heightPx(), RowLayout.TOP_PX + RowLayout.ROW_PX);
        Shape clip = g.getClip();
        g.clip(new Rectangle2D.Double(
                layout.axis().leftPx(),
                0,
                layout.axis().rightPx() - layout.axis().leftPx(),
                foot));
        lit(g, sheet, layout, new Tints(colours), foot);
        g.setClip(clip);
        if (sheet.rows().isEmpty()) {
            g.setFont(Theme.bodyFont(0));
            g.setColor(colours.quietInk());
            boolean none = sheet.plan().untimed().isEmpty()
                    && sheet.night().items().stream().noneMatch(i -> i.kind() == PlanItem.Kind.CROSSING);
            g.drawString(TEXTS.text(none ? "rows.none" : "rows.nothing"), 16f, RowLayout.TOP_PX + 15f);
        }
        // Under the rows, so that no time is struck through; the word for it stands over them, in the plot of the sky.
        marks(g, layout.axis(), 0, foot, false);
        for (int i = 0; i < sheet.rows().size(); i++) {
            row(g, layout, i, colours);
        }
        new RowLegend(colours).paint(g, SkyScales.LEFT_PX, foot, getWidth());
    }

    private static void lit(Graphics2D g, NightSheet sheet, RowLayout layout, Tints tints, int foot) {
        g.setColor(tints.window());
        sheet.night().windows().forEach(w -> fill(g, layout, w.span(), foot));
        g.setColor(tints.best());
        sheet.night().bestHour().ifPresent(h -> fill(g, layout, h, foot));
    }

    private static void fill(Graphics2D g, RowLayout layout, TimeSpan span, int foot) {
        double x = layout.axis().x(span.from());
        g.fill(new Rectangle2D.Double(x, 0, layout.axis().x(span.to()) - x, foot));
    }

    private void row(Graphics2D g, RowLayout layout, int index, Palette colours) {
        NightRow row = layout.rows().get(index);
        Rectangle2D box = layout.row(index);
        boolean chosen = pointer()
                .chosen()
                .filter(c -> c.subject().equals(row.name()) && c.kind() == row.kind())
                .isPresent();
        if (chosen) {
            g.setColor(Tints.alpha(colours.accent(), 40));
            g.fill(new Rectangle2D.Double(8, box.getMinY() + 1, getWidth() - 16.0, box.getHeight() - 2));
        }
        g.setColor(Tints.alpha(colours.quietInk(), 50));
        g.setStroke(new BasicStroke(0.7f));
        g.draw(new Line2D.Double(16, box.getMaxY(), box.getMaxX(), box.getMaxY()));
        g.setFont(row.isObservable() ? Theme.headFont(-1) : Theme.bodyFont(-1));
        g.setColor(row.isObservable() ? colours.ink() : colours.quietInk());
        FontMetrics m = g.getFontMetrics();
        g.drawString(cut(row.name(), m, NAME_PX), 16f, (float) (box.getCenterY() + m.getAscent() / 2.0 - 1));
        Shape clip = g.getClip();
        g.clip(new Rectangle2D.Double(box.getMinX(), box.getMinY(), box.getWidth(), box.getHeight()));
        for (NightRow.Thing thing : row.things()) {
            if (row.kind() == PlanItem.Kind.CROSSING) {
                crossing(g, layout, index, thing, colours);
            } else {
                passage(g, layout, index, thing, colours);
            }
        }
        if (row.kind() == PlanItem.Kind.CROSSING) {
            times(g, layout, index, colours);
        }
        g.setClip(clip);
    }

    private void crossing(Graphics2D g, RowLayout layout, int index, NightRow.Thing thing, Palette colours) {
        PlanItem item = thing.items().get(0);
        Rectangle2D box = layout.box(index, thing);
        TimeSpan view = RowLayout.around(item, GOOD_VIEW_DEG);
        double y = box.getCenterY();
        g.setColor(colours.quietInk());
        g.setStroke(new BasicStroke(1.2f));
        g.draw(new Line2D.Double(layout.axis().x(view.from()), y, layout.axis().x(view.to()), y));
        (item.isObservable() ? SpanFill.FILLED : SpanFill.HOLLOW)
                .paint(g, box, item.isObservable() ? colours.accent() : colours.quietInk());
        ring(g, item, box, colours);
    }

    private void passage(Graphics2D g, RowLayout layout, int index, NightRow.Thing thing, Palette colours) {
        Rectangle2D box = layout.box(index, thing);
        SpanFill.of(RowLayout.kind(thing).orElseThrow())
                .paint(g, box, thing.isObservable() ? colours.ink() : colours.quietInk());
        // strokes at the ends that the Earth sees, thick where planet and Sun allow to
        for (PlanItem item : thing.items()) {
            double x = layout.axis().x(item.time());
            g.setColor(item.isObservable() ? colours.accent() : colours.quietInk());
            g.setStroke(new BasicStroke(item.isObservable() ? 3 : 1.2f));
            g.draw(new Line2D.Double(x, box.getMinY() - 1, x, box.getMaxY() + 1));
            ring(g, item, new Rectangle2D.Double(x - 3, box.getMinY(), 6, box.getHeight()), colours);
        }
    }

    /** A ring about what is chosen. */
    private void ring(Graphics2D g, PlanItem item, Rectangle2D box, Palette colours) {
        if (pointer().chosen().equals(Optional.of(item))) {
            g.setColor(colours.ink());
            g.setStroke(new BasicStroke(1.6f));
            g.draw(new Rectangle2D.Double(
                    box.getMinX() - 3, box.getMinY() - 3, box.getWidth() + 6, box.getHeight() + 6));
        }
    }

    /** The clock times beside the bars, where they have room. */
    private static void times(Graphics2D g, RowLayout layout, int index, Palette colours) {
        g.setFont(Theme.figureFont(-2));
        FontMetrics m = g.getFontMetrics();
        List<NightRow.Thing> things = layout.rows().get(index).things();
        List<Rectangle2D> boxes = things.stream().map(t -> layout.box(index, t)).toList();
        for (int i = 0; i < things.size(); i++) {
            PlanItem item = things.get(i).items().get(0);
            String text = Say.clock(item.time());
            Rectangle2D box = boxes.get(i);
            double w = m.stringWidth(text);
            double right = boxes.stream()
                    .map(Rectangle2D::getMinX)
                    .filter(x -> x > box.getMinX())
                    .min(Comparator.naturalOrder())
                    .orElse(layout.axis().rightPx());
            if (box.getCenterX() < layout.axis().leftPx()
                    || box.getCenterX() > layout.axis().rightPx()) {
                continue;
            }
            boolean fits = box.getMaxX() + 6 + w <= right - 4;
            double x = fits ? box.getMaxX() + 6 : box.getMinX() - 6 - w;
            Rectangle2D plate = new Rectangle2D.Double(x - 2, box.getMinY() - 1, w + 4, box.getHeight() + 2);
            g.setColor(Tints.alpha(colours.ground(), 190));
            g.fill(plate);
            g.setColor(item.isObservable() ? colours.ink() : colours.quietInk());
            g.drawString(text, (float) x, (float) (box.getCenterY() + m.getAscent() / 2.0 - 1));
        }
    }

    static String cut(String text, FontMetrics m, int widthPx) {
        if (m.stringWidth(text) <= widthPx) {
            return text;
        }
        int length = text.length();
        while (length > 1 && m.stringWidth(text.substring(0, length) + "…") > widthPx) {
            length--;
        }
        return text.substring(0, length) + "…";
    }
}
