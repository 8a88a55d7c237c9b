/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.stream.Stream;

/** The program's own picture: a flattened, banded disc. */
final class AppIcon {
    private AppIcon() {}

    static List<Image> images() {
        return Stream.of(16, 32, 48, 128).map(AppIcon::image).toList();
    }

    private static Image image(int sizePx) {
        BufferedImage image = new BufferedImage(sizePx, sizePx, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.scale(sizePx / 32.0, sizePx / 32.0);
        Ellipse2D disc = new Ellipse2D.Double(1, 2.5, 30, 27);
        g.setColor(new Color(0xE6D3B0));
        g.fill(disc);
        g.clip(disc);
        g.setColor(new Color(0xA8744A));
        g.fill(new Rectangle2D.Double(0, 9, 32, 4.5));
        g.fill(new Rectangle2D.Double(0, 18, 32, 4.5));
        g.setColor(new Color(0xC8552B));
        g.fill(new Ellipse2D.Double(18, 19.5, 8, 5));
        g.dispose();
        return image;
    }
}
