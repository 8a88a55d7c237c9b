/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Paints the coverage of a season: a row per night, shaded by how squarely each longitude was seen, above them the best of all nights. */
final class CoveragePainter {
    private static final Texts TEXTS = Texts.of(CoveragePainter.class);
    private static final int STRIP_PX = 12;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM uuuu", Locale.ENGLISH);
    private final CoverageScale scale;
    private final Palette colours;

    CoveragePainter(CoverageScale scale, Palette colours) {
        this.scale = scale;
        this.colours = colours;
    }

    void paint(Graphics2D g, Optional<CoverageMap.Place> pointed) {
        int width = scale.mapWidth();
        int height = scale.mapHeight();
        SeasonCoverage shown = scale.coverage();
        g.setColor(colours.raised());
        g.fillRect(CoverageScale.LEFT, CoverageScale.TOP, width, height);
        paintRow(g, shown.bestOfAllDeg(), CoverageScale.TOP - STRIP_PX - 8, STRIP_PX);
        for (SeasonCoverage.Night night : shown.nights()) {
            paintRow(g, night.bestDeg(), scale.yOf(night.evening()), Math.max(2, scale.pxPerDay() - 1));
        }
        paintScale(g, width, height);
        paintDates(g);
        pointed.ifPresent(p -> {
            g.setColor(colours.alarm());
            g.setStroke(new BasicStroke(1.5f));
            int x = (int) (CoverageScale.LEFT + (p.lonDeg() + 0.5) * scale.pxPerDeg());
            int y = (int) scale.yOf(p.night().evening());
            g.drawRect(CoverageScale.LEFT - 2, y - 2, width + 3, (int) Math.max(2, scale.pxPerDay() - 1) + 3);
            g.drawLine(x, CoverageScale.TOP - STRIP_PX - 12, x, y - 2);
        });
    }

    private void paintRow(Graphics2D g, int[] bestDeg, double y, double height) {
        g.setColor(colours.line());
        g.fill(new Rectangle.Double(CoverageScale.LEFT, y, 360 * scale.pxPerDeg(), height));
        int from = 0;
        // Neighbours of one shade are painted as one, so that no seams show between them.
        for (int lon = 1; lon <= 360; lon++) {
            if (lon == 360 || bestDeg[lon] != bestDeg[from]) {
                shade(colours, bestDeg[from]).ifPresent(g::setColor);
                if (bestDeg[from] < SeasonCoverage.UNSEEN_DEG) {
                    int x = (int) Math.round(CoverageScale.LEFT + from * scale.pxPerDeg());
                    int end = (int) Math.round(CoverageScale.LEFT + lon * scale.pxPerDeg());
                    g.fill(new Rectangle.Double(x, y, end - x, height));
                }
                from = lon;
            }
        }
    }

    /** From full tone where it was seen square on to nearly nothing at the limb; a step where it becomes too slantwise to measure well. */
    static Optional<Color> shade(Palette colours, int emissionDeg) {
        if (emissionDeg >= SeasonCoverage.UNSEEN_DEG) {
            return Optional.empty();
        }
        Color tone = colours.accent();
        int strength = emissionDeg <= Coverage.WITHIN_DEG
                ? 255 - 135 * emissionDeg / Coverage.WITHIN_DEG
                : Math.max(6, 62 - 56 * (emissionDeg - Coverage.WITHIN_DEG) / 30);
        return Optional.of(new Color(tone.getRed(), tone.getGreen(), tone.getBlue(), strength));
    }

    private void paintScale(Graphics2D g, int width, int height) {
        g.setFont(Theme.figureFont(-2));
        int step = width > 700 ? 30 : width > 350 ? 60 : 90;
        for (int lon = 0; lon <= 360; lon += step) {
            int x = (int) Math.round(CoverageScale.LEFT + lon * scale.pxPerDeg());
            g.setColor(new Color(colours.quietInk().getRGB() & 0xFFFFFF | 0x30000000, true));
            g.drawLine(x, CoverageScale.TOP - 4, x, CoverageScale.TOP + height);
            g.setColor(colours.quietInk());
            String text = lon + "°";
            g.drawString(text, x - g.getFontMetrics().stringWidth(text) / 2, CoverageScale.TOP - STRIP_PX - 14);
        }
        g.setFont(Theme.bodyFont(-1));
        g.setColor(colours.ink());
        g.drawString(TEXTS.text("coverage.all"), 16, CoverageScale.TOP - 9);
    }

    private void paintDates(Graphics2D g) {
        Font day = Theme.bodyFont(-2);
        double free = CoverageScale.TOP - 1.0;
        double lineHeight = 15;
        int month = -1;
        for (SeasonCoverage.Night night : scale.coverage().nights()) {
            double y = scale.yOf(night.evening());
            if (y < free) {
                continue;
            }
            boolean newMonth = night.evening().getMonthValue() != month;
            month = night.evening().getMonthValue();
            g.setFont(newMonth ? Theme.headFont(-2) : day);
            g.setColor(newMonth ? colours.ink() : colours.quietInk());
            String text = newMonth && scale.pxPerDay() * 28 > 3 * lineHeight
                    ? DAY.format(night.evening()) + " " + night.evening().getYear()
                    : newMonth ? MONTH.format(night.evening()) : DAY.format(night.evening());
            float baseline = (float) (y + Math.max(8, scale.pxPerDay() / 2 + 4));
            g.drawString(text, CoverageScale.LEFT - 10f - g.getFontMetrics().stringWidth(text), baseline);
            free = y + lineHeight;
        }
    }
}
