/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.Optional;
import oblate.disc.Placement;
import oblate.image.Crop;
import oblate.image.PixelGrid;
import oblate.image.Previews;
import oblate.image.Tone;

/** Draws the small image of a picture: cut to the disc, as taken; and turns it. */
final class SmallImage {
    /** Side of the image that is kept (px): enough for the largest tile at twice the density. */
    static final int SIDE_PX = 288;

    private static final double ROOM = 1.12;

    private SmallImage() {}

    /** Cuts to the disc where it is known, else to what is bright; as taken, on black. */
    static BufferedImage cut(PixelGrid pixels, Optional<Placement> placement) {
        Crop crop = placement.map(SmallImage::around).orElseGet(() -> BrightBox.of(pixels));
        Tone tone = BrightBox.tone(pixels, crop);
        Crop inside = crop.within(pixels);
        double scale = SIDE_PX / (double) Math.max(crop.widthPx(), crop.heightPx());
        int most = (int) Math.ceil(Math.max(inside.widthPx(), inside.heightPx()) * Math.min(1, scale));
        BufferedImage part = new Previews().draw(pixels, inside, most, tone).toImage();
        BufferedImage out = new BufferedImage(SIDE_PX, SIDE_PX, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = smooth(out);
        g.translate(SIDE_PX / 2.0, SIDE_PX / 2.0);
        g.scale(scale, scale);
        g.translate(
                inside.leftPx() - crop.leftPx() - crop.widthPx() / 2.0,
                inside.topPx() - crop.topPx() - crop.heightPx() / 2.0);
        g.scale(inside.widthPx() / (double) part.getWidth(), inside.heightPx() / (double) part.getHeight());
        g.drawImage(part, 0, 0, null);
        g.dispose();
        return out;
    }

    private static Crop around(Placement placement) {
        double half = placement.equatorialRadiusPx() * ROOM;
        int side = (int) Math.ceil(2 * half);
        return new Crop(
                (int) Math.round(placement.centreXPx() - half),
                (int) Math.round(placement.centreYPx() - half),
                side,
                side);
    }

    /**
     * A turned and resized copy; what was outside is clear.
     *
     * @param turnDeg clockwise (deg)
     * @param sidePx side of the copy (px)
     */
    static BufferedImage turned(BufferedImage image, double turnDeg, int sidePx) {
        // Halved until near the size wanted, since one big step of interpolation leaves out pixels.
        BufferedImage source = image;
        while (source.getWidth() >= 2 * sidePx) {
            source = drawn(source, 0, source.getWidth() / 2);
        }
        return drawn(source, turnDeg, sidePx);
    }

    private static BufferedImage drawn(BufferedImage source, double turnDeg, int sidePx) {
        BufferedImage out = new BufferedImage(sidePx, sidePx, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = smooth(out);
        double scale = sidePx / (double) source.getWidth();
        g.translate(sidePx / 2.0, sidePx / 2.0);
        g.rotate(Math.toRadians(turnDeg));
        g.scale(scale, scale);
        g.translate(-source.getWidth() / 2.0, -source.getHeight() / 2.0);
        g.drawImage(source, 0, 0, null);
        g.dispose();
        return out;
    }

    private static Graphics2D smooth(BufferedImage image) {
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        return g;
    }
}
