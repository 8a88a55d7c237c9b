/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ServiceLoader;
import javax.imageio.ImageIO;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.disc.Polyline;
import oblate.image.PixelGrid;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/** A sheet of hard cases with their fitted outlines, for the docs and for looking at; by hand: main with the file to write. */
final class StudioOverlays {
    private static final int TILE = 260;
    private static final int COLUMNS = 5;
    private static final int FOOT = 34;

    private StudioOverlays() {}

    private static List<StudioPicture> hard() {
        List<StudioPicture> chosen = new ArrayList<>();
        for (StudioPicture p : StudioPicture.set()) {
            long same = chosen.stream()
                    .filter(c -> c.how.body().equals(p.how.body()))
                    .count();
            boolean wanted =
                    switch (p.how.body()) {
                        case "jupiter" -> p.grade == StudioPicture.Grade.HARD && same < 2;
                        case "saturn" ->
                            same < 2 && (p.grade == StudioPicture.Grade.HARD || Math.abs(p.how.earthLat()) < 3);
                        case "mars" -> same < 2 && p.how.phase() > 36;
                        case "mercury", "venus" -> same < 1 && p.how.phase() > 60;
                        default -> same < 1;
                    };
            if (wanted) {
                chosen.add(p);
            }
        }
        return chosen;
    }

    private static void path(Graphics2D g, Polyline line, double x0, double y0, double scale) {
        Path2D path = new Path2D.Double();
        boolean first = true;
        for (PixelPoint p : line.points()) {
            double x = x0 + (p.xPx() + 0.5) * scale;
            double y = y0 + (p.yPx() + 0.5) * scale;
            if (first) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
            first = false;
        }
        g.draw(path);
    }

    private static BufferedImage picture(PixelGrid pixels) {
        BufferedImage image = new BufferedImage(pixels.widthPx(), pixels.heightPx(), BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < pixels.heightPx(); y++) {
            for (int x = 0; x < pixels.widthPx(); x++) {
                int rgb = 0;
                for (int c = 0; c < 3; c++) {
                    float v = pixels.sample(pixels.channels() == 3 ? c : 0, x, y);
                    rgb = rgb << 8 | Math.round(255 * Math.max(0, Math.min(1, v)));
                }
                image.setRGB(x, y, rgb);
            }
        }
        return image;
    }

    public static void main(String[] words) throws IOException {
        StudioScore score = new StudioScore();
        Sky sky = Sky.bundled();
        List<StudioPicture> cases = hard();
        int rows = (cases.size() + COLUMNS - 1) / COLUMNS;
        BufferedImage sheet = new BufferedImage(COLUMNS * TILE, rows * (TILE + FOOT), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = sheet.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 12));
        for (int i = 0; i < cases.size(); i++) {
            StudioPicture p = cases.get(i);
            StudioScore.Row row = score.score(p, true);
            PixelGrid pixels = p.draw();
            double scale = Math.min((TILE - 8.0) / p.width, (TILE - 8.0) / p.height);
            double x0 = i % COLUMNS * TILE + (TILE - scale * p.width) / 2;
            double y0 = i / COLUMNS * (TILE + FOOT) + (TILE - scale * p.height) / 2;
            g.setClip(i % COLUMNS * TILE, i / COLUMNS * (TILE + FOOT), TILE, TILE);
            g.drawImage(picture(pixels), (int) x0, (int) y0, (int) (scale * p.width), (int) (scale * p.height), null);
            g.setColor(new Color(255, 210, 60));
            g.setStroke(new BasicStroke(1f));
            String words2 = "refused";
            if (row.found()) {
                PlanetModel planet = ServiceLoader.load(PlanetModel.class).stream()
                        .map(ServiceLoader.Provider::get)
                        .filter(m -> m.id().equals(p.how.body()))
                        .findFirst()
                        .orElseThrow();
                DiscFrame frame = new DiscFrame(
                        sky.disc(planet, Instant.parse(p.how.time())), row.fit().placement());
                path(g, frame.outline(), x0, y0, scale);
                g.setColor(new Color(90, 190, 255));
                frame.terminator().ifPresent(t -> path(g, t, x0, y0, scale));
                frame.rings().forEach(r -> path(g, r, x0, y0, scale));
                words2 = String.format(
                        Locale.ROOT,
                        "off %.2f px, radius %+.2f %%, %s",
                        row.centrePercent() * p.radius / 100,
                        row.radiusPercent(),
                        row.fit().trust().name().toLowerCase(Locale.ROOT));
            }
            g.setClip(null);
            g.setColor(Color.LIGHT_GRAY);
            int foot = i / COLUMNS * (TILE + FOOT) + TILE + 12;
            g.drawString(
                    String.format(Locale.ROOT, "%s, R %.0f px, phase %.0f°", planetName(p), p.radius, p.how.phase()),
                    i % COLUMNS * TILE + 6,
                    foot);
            g.drawString(words2, i % COLUMNS * TILE + 6, foot + 15);
        }
        g.dispose();
        ImageIO.write(sheet, "png", new File(words[0]));
    }

    private static String planetName(StudioPicture p) {
        return p.how.body().substring(0, 1).toUpperCase(Locale.ROOT)
                + p.how.body().substring(1)
                + (p.mirrored ? ", mirrored" : "");
    }
}
