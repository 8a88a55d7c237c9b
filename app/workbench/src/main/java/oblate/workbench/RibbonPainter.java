/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.workbench.look.Palette;
import oblate.workbench.look.StateGlyph.State;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Paints the season ribbon: size curve behind, events, ticks, the span chosen, today, the axis; one per painting. */
final class RibbonPainter {
    private static final Texts TEXTS = Texts.of(RibbonPainter.class);
    static final int AXIS_PX = 18;
    private static final int HEAD_ROOM_PX = 16;
    private static final double ROOM_FOR_HEADS_PX = 5;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM uuuu", Locale.ENGLISH);
    private final Graphics2D g;
    private final Palette colours;
    private final RibbonScale scale;
    private final int width;
    private final int height;
    private final int base;

    RibbonPainter(Graphics2D g, Palette colours, RibbonScale scale, int height) {
        this.g = g;
        this.colours = colours;
        this.scale = scale;
        this.width = (int) Math.round(scale.widthPx());
        this.height = height;
        base = height - AXIS_PX;
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    void ground(boolean focused) {
        g.setColor(colours.raised());
        g.fillRect(0, 0, width, height);
        g.setColor(focused ? colours.accent() : colours.line());
        g.fillRect(0, 0, width, focused ? 2 : 1);
    }

    void empty() {
        g.setFont(Theme.bodyFont(-1));
        g.setColor(colours.quietInk());
        g.drawString(TEXTS.text("ribbon.empty"), 16, base / 2 + 12);
    }

    private static Color faint(Color colour, int alpha) {
        return new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), alpha);
    }

    /** The apparent diameter as a soft curve, from 0 at the foot to the largest of the season near the top. */
    void sizes(List<Season.Size> sizes) {
        if (sizes.size() < 2) {
            return;
        }
        double largest =
                sizes.stream().mapToDouble(Season.Size::diameterArcsec).max().orElse(1);
        Path2D edge = new Path2D.Double();
        double first = scale.xPx(sizes.get(0).time());
        double last = first;
        for (Season.Size size : sizes) {
            last = scale.xPx(size.time());
            double y = base - (base - 6) * 0.9 * size.diameterArcsec() / largest;
            if (edge.getCurrentPoint() == null) {
                edge.moveTo(last, y);
            }
            edge.lineTo(last, y);
        }
        Path2D area = new Path2D.Double(edge);
        area.lineTo(last, base);
        area.lineTo(first, base);
        area.closePath();
        g.setColor(faint(colours.accent(), 22));
        g.fill(area);
        g.setColor(faint(colours.accent(), 80));
        g.setStroke(new BasicStroke(1f));
        g.draw(edge);
    }

    void axis() {
        g.setColor(colours.line());
        g.setStroke(new BasicStroke(1f));
        g.drawLine(0, base, width, base);
        g.setFont(Theme.bodyFont(-2));
        for (RibbonScale.Notch notch : scale.notches(64)) {
            g.setColor(colours.line());
            g.draw(new Line2D.Double(notch.xPx(), base, notch.xPx(), base + 5));
            g.setColor(colours.quietInk());
            String text =
                    switch (notch.step()) {
                        case DAY, WEEK -> DAY.format(notch.date());
                        case MONTH -> MONTH.format(notch.date());
                        case YEAR -> Integer.toString(notch.date().getYear());
                    };
            g.drawString(text, (float) notch.xPx() + 4, height - 5f);
        }
    }

    /** Opposition as a full disc, conjunction as a ring with a point, the Sun's sign; the word where there is room for it. */
    void events(List<Season.Event> events) {
        g.setFont(Theme.bodyFont(-2));
        FontMetrics metrics = g.getFontMetrics();
        double free = 0;
        for (Season.Event event : events) {
            double x = scale.xPx(event.time());
            if (x < 0 || x > width) {
                continue;
            }
            g.setColor(faint(colours.quietInk(), 150));
            g.setStroke(new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {3, 3}, 0));
            g.draw(new Line2D.Double(x, HEAD_ROOM_PX, x, base));
            g.setStroke(new BasicStroke(1.2f));
            g.setColor(colours.quietInk());
            Ellipse2D disc = new Ellipse2D.Double(x - 4, 5, 8, 8);
            g.draw(disc);
            if (event.name().equals(Season.CONJUNCTION)) {
                g.fill(new Ellipse2D.Double(x - 1.2, 7.8, 2.4, 2.4));
            } else {
                g.fill(disc);
            }
            double wide = metrics.stringWidth(event.name());
            double left = x + 8 + wide > width - 4 ? x - 8 - wide : x + 8;
            double right = left + wide + 8;
            // A word over the next event's sign would read as its name.
            boolean clear = events.stream()
                    .mapToDouble(e -> scale.xPx(e.time()))
                    .noneMatch(other -> other != x && other > left - 8 && other < right);
            if (left >= free && clear) {
                g.drawString(event.name(), (float) left, 13f);
                free = left + wide + 8;
            }
        }
    }

    void ticks(List<RibbonTicks.Column> columns) {
        double tallest = base - HEAD_ROOM_PX;
        double thick = Math.max(1.2, Math.min(3, scale.widthPx() / scale.spanDays() / 200));
        g.setStroke(new BasicStroke((float) thick));
        for (int i = 0; i < columns.size(); i++) {
            RibbonTicks.Column column = columns.get(i);
            double top = base - tallest * column.height() * 0.9;
            g.setColor(tone(column.state()));
            g.draw(new Line2D.Double(column.xPx(), base, column.xPx(), top));
            boolean room = (i == 0 || column.xPx() - columns.get(i - 1).xPx() > ROOM_FOR_HEADS_PX)
                    && (i + 1 == columns.size() || columns.get(i + 1).xPx() - column.xPx() > ROOM_FOR_HEADS_PX);
            if (room || column.state() == State.NEEDS_A_LOOK) {
                head(column, top);
            }
        }
        g.setStroke(new BasicStroke(1));
    }

    /** State by shape as well as tone: nothing for new, a ring for fitted, a dot for measured, a triangle for what needs a look. */
    private void head(RibbonTicks.Column column, double top) {
        double x = column.xPx();
        switch (column.state()) {
            case FITTED -> {
                g.setStroke(new BasicStroke(1.2f));
                Ellipse2D ring = new Ellipse2D.Double(x - 2.5, top - 4, 5, 5);
                g.setColor(colours.raised());
                g.fill(ring);
                g.setColor(tone(column.state()));
                g.draw(ring);
            }
            case MEASURED, REPORTED -> g.fill(new Ellipse2D.Double(x - 2.5, top - 3.5, 5, 5));
            case NEEDS_A_LOOK -> {
                Path2D triangle = new Path2D.Double();
                triangle.moveTo(x, top - 6);
                triangle.lineTo(x + 4, top + 1);
                triangle.lineTo(x - 4, top + 1);
                triangle.closePath();
                g.fill(triangle);
            }
            default -> {
                // a new picture is a bare tick
            }
        }
    }

    private Color tone(State state) {
        return switch (state) {
            case NEW -> colours.quietInk();
            case FITTED -> blend(colours.accent(), colours.quietInk());
            case MEASURED, REPORTED -> colours.accent();
            case NEEDS_A_LOOK -> colours.alarm();
        };
    }

    private static Color blend(Color a, Color b) {
        return new Color(
                (a.getRed() + b.getRed()) / 2, (a.getGreen() + b.getGreen()) / 2, (a.getBlue() + b.getBlue()) / 2);
    }

    /** The chosen picture: a full-height line with a foot on the axis. */
    void chosen(ArchivedPicture picture) {
        double x = scale.xPx(picture.time().orElseThrow().midUtc());
        g.setColor(colours.ink());
        g.setStroke(new BasicStroke(1.6f));
        g.draw(new Line2D.Double(x, HEAD_ROOM_PX - 2, x, base));
        Path2D foot = new Path2D.Double();
        foot.moveTo(x, base);
        foot.lineTo(x + 5, base + 6);
        foot.lineTo(x - 5, base + 6);
        foot.closePath();
        g.fill(foot);
    }

    /** The span lies clear, the rest under a veil. */
    void span(Selection.Span span, Optional<String> words) {
        double from = Math.max(0, Math.min(width, scale.xPx(span.from())));
        double to = Math.max(0, Math.min(width, scale.xPx(span.to())));
        g.setColor(faint(colours.ground(), 150));
        g.fill(new Rectangle2D.Double(0, 1, from, base - 1));
        g.fill(new Rectangle2D.Double(to, 1, width - to, base - 1));
        g.setColor(colours.accent());
        g.setStroke(new BasicStroke(1.4f));
        g.draw(new Line2D.Double(from, 1, from, base));
        g.draw(new Line2D.Double(to, 1, to, base));
        g.fill(new Rectangle2D.Double(from, base - 1.0, to - from, 3));
        words.ifPresent(text -> {
            g.setFont(Theme.bodyFont(-1));
            double wide = g.getFontMetrics().stringWidth(text);
            double left = Math.max(4, Math.min(width - wide - 12, (from + to - wide) / 2 - 4));
            g.setColor(colours.raised());
            g.fill(new Rectangle2D.Double(left, 2, wide + 8, 16));
            g.setColor(colours.ink());
            g.drawString(text, (float) left + 4, 14f);
        });
    }

    /** Today's line, or an arrow at the edge beyond which it lies. */
    void today(Instant now) {
        double x = scale.xPx(now);
        g.setFont(Theme.bodyFont(-2));
        g.setColor(colours.alarm());
        double wide = g.getFontMetrics().stringWidth(TEXTS.text("ribbon.today"));
        if (x >= 0 && x <= width) {
            g.setStroke(new BasicStroke(1f));
            g.draw(new Line2D.Double(x, 1, x, base));
            double left = x + 5 + wide > width ? x - 5 - wide : x + 5;
            g.drawString(TEXTS.text("ribbon.today"), (float) left, base - 4f);
        } else if (x > width) {
            g.drawString(TEXTS.text("ribbon.today") + " ›", (float) (width - wide - 14), base - 4f);
        } else {
            g.drawString("‹ " + TEXTS.text("ribbon.today"), 4, base - 4);
        }
    }
}
