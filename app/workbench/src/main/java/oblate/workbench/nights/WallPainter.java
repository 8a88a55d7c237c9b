/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.archive.FitSummary;
import oblate.image.CaptureTime;
import oblate.workbench.Bearing;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.StateGlyph;
import oblate.workbench.look.Theme;
import oblate.workbench.pictures.PictureState;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/** Paints headers and tiles of the wall; one per painting. */
final class WallPainter {
    private static final Texts TEXTS = Texts.of(WallPainter.class);
    private static final int BAR_PX = 240;
    private static final int ROOM_FOR_BAR_PX = 420;
    private final Graphics2D g;
    private final PanelContext context;
    private final Palette colours;
    private final SystemChoice systems;
    private final Font words = Theme.bodyFont(-1);
    private final Font small = Theme.bodyFont(-3);
    private final Font figures = Theme.figureFont(-1);
    private final Font smallFigures = Theme.figureFont(-2);

    WallPainter(Graphics2D g, PanelContext context, SystemChoice systems) {
        this.g = g;
        this.context = context;
        this.colours = context.palette();
        this.systems = systems;
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    void header(NightHeader header, Rectangle at) {
        boolean bar = header.system().isPresent() && at.width > ROOM_FOR_BAR_PX + BAR_PX;
        int room = at.width - 2 * WallLayout.MARGIN - (bar ? BAR_PX + 24 : 0);
        g.setFont(Theme.headFont(3));
        g.setColor(colours.ink());
        g.drawString(header.title(), WallLayout.MARGIN, at.y + 32);
        g.setFont(words);
        g.setColor(colours.quietInk());
        g.drawString(shortened(header.summary(), room), WallLayout.MARGIN, at.y + 51);
        if (bar) {
            coverage(header, at.width - WallLayout.MARGIN - BAR_PX, at.y + 38);
        }
    }

    private void coverage(NightHeader header, int x, int y) {
        g.setColor(colours.line());
        g.fill(new RoundRectangle2D.Double(x, y, BAR_PX, 6, 6, 6));
        Color tone = colours.accent();
        for (int px = 0; px < BAR_PX; px++) {
            int away = header.bestDistanceDeg()[px * 360 / BAR_PX];
            if (away <= Coverage.WITHIN_DEG) {
                int strength = 255 - 130 * away / Coverage.WITHIN_DEG;
                g.setColor(new Color(tone.getRed(), tone.getGreen(), tone.getBlue(), strength));
                g.fillRect(x + px, y, 1, 6);
            }
        }
        g.setFont(small);
        g.setColor(colours.quietInk());
        String seen = TEXTS.text(
                "wall.seen",
                Integer.toString(Coverage.seenDeg(header.bestDistanceDeg())),
                header.system().orElseThrow().label());
        g.drawString(seen, x + BAR_PX - g.getFontMetrics().stringWidth(seen), y - 6);
        g.drawString("0°", x, y + 18);
        g.drawString("180°", x + BAR_PX / 2f - 10, y + 18f);
        g.drawString("360°", x + BAR_PX - 22, y + 18);
    }

    void tile(WallLayout.Tile tile, Optional<BufferedImage> image, boolean chosen, boolean hover) {
        Rectangle b = tile.bounds();
        ArchivedPicture picture = tile.picture();
        g.setColor(colours.raised());
        g.fill(new RoundRectangle2D.Double(b.x, b.y, b.width, b.height, 10, 10));
        g.setColor(colours.night());
        g.fill(new RoundRectangle2D.Double(b.x, b.y, b.width, b.width, 10, 10));
        if (image.isPresent()) {
            g.drawImage(image.get(), b.x + 6, b.y + 6, b.width - 12, b.width - 12, null);
        } else {
            g.setColor(new Color(colours.nightInk().getRGB() & 0xFFFFFF | 0x30000000, true));
            g.setStroke(new BasicStroke(1.2f));
            g.draw(new Ellipse2D.Double(b.x + b.width * 0.2, b.y + b.width * 0.22, b.width * 0.6, b.width * 0.56));
        }
        onPicture(picture, b);
        caption(picture, b);
        if (chosen || hover) {
            g.setColor(chosen ? colours.accent() : colours.line());
            g.setStroke(new BasicStroke(chosen ? 2.2f : 1.5f));
            g.draw(new RoundRectangle2D.Double(b.x + 1, b.y + 1, b.width - 2, b.height - 2, 10, 10));
        }
    }

    /** The filter, and in words what is not as everywhere else: an unfitted picture cannot be turned, a mirrored one stays so. */
    private void onPicture(ArchivedPicture picture, Rectangle b) {
        g.setFont(small);
        g.setColor(colours.nightInk());
        picture.filter().ifPresent(f -> g.drawString(shortened(f, b.width - 16), b.x + 8, b.y + b.width - 6));
        Optional<FitSummary> fit = context.shelf().fit(picture.id());
        String way = "";
        if (fit.isEmpty() && context.bearing() != Bearing.AS_TAKEN) {
            way = Bearing.AS_TAKEN.words();
        } else if (fit.filter(FitSummary::mirrored).isPresent()) {
            way = TEXTS.text("wall.mirrored");
        }
        g.drawString(way, b.x + 8, b.y + 14);
    }

    private void caption(ArchivedPicture picture, Rectangle b) {
        int base = b.y + b.width;
        StateGlyph.State state = PictureState.of(picture, context.shelf());
        StateGlyph.paint(g, state, b.x + b.width - 19.0, base + 5.0, 12, PictureState.tone(state, colours));
        g.setFont(figures);
        g.setColor(colours.ink());
        String time =
                picture.time().map(CaptureTime::midUtc).map(Figures::clockUt).orElse(TEXTS.text("wall.no.time"));
        g.drawString(time, b.x + 8, base + 16);
        g.setFont(smallFigures);
        g.setColor(colours.quietInk());
        systems.meridianDeg(picture)
                .ifPresent(lon -> g.drawString(
                        TEXTS.text(
                                "wall.cm",
                                SystemLabel.brief(systems.of(picture).orElseThrow()),
                                Figures.longitude(lon)),
                        b.x + 8,
                        base + 32));
    }

    void empty(Rectangle seen, String sentence, String more) {
        double cx = seen.getCenterX();
        double cy = seen.getCenterY() - 30;
        g.setColor(colours.line());
        g.setStroke(new BasicStroke(2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {6, 6}, 0));
        Shape ring = new Ellipse2D.Double(cx - 70, cy - 65, 140, 130);
        g.draw(ring);
        centred(sentence, Theme.bodyFont(2), colours.ink(), cx, cy + 100);
        centred(more, Theme.bodyFont(0), colours.quietInk(), cx, cy + 124);
    }

    private void centred(String text, Font font, Color ink, double cx, double y) {
        g.setFont(font);
        g.setColor(ink);
        g.drawString(text, (float) (cx - g.getFontMetrics().stringWidth(text) / 2.0), (float) y);
    }

    private String shortened(String text, int roomPx) {
        FontMetrics metrics = g.getFontMetrics();
        if (metrics.stringWidth(text) <= roomPx) {
            return text;
        }
        int end = text.length();
        while (end > 1 && metrics.stringWidth(text.substring(0, end) + "…") > roomPx) {
            end--;
        }
        return text.substring(0, end) + "…";
    }
}
