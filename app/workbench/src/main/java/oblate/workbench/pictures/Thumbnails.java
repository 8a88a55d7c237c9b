/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredFit;
import oblate.base.ProblemException;
import oblate.disc.Placement;
import oblate.image.Crop;
import oblate.image.PixelGrid;
import oblate.image.Previews;
import oblate.image.Tone;
import oblate.workbench.Bearing;
import oblate.workbench.PanelContext;
import oblate.workbench.look.RedLight;

/**
 * Small images of pictures, cut to the disc and turned the way the window shows discs; made off the event thread, kept while there is room. On
 * the event thread only.
 */
public final class Thumbnails {
    private static final int SIDE_PX = 192;
    private static final int MOST = 500;
    private static final double ROOM = 1.12;
    private final PanelContext context;
    private final Runnable whenReady;
    private final Set<Key> wanted = new HashSet<>();
    private final Map<Key, Optional<BufferedImage>> kept = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Optional<BufferedImage>> eldest) {
            return size() > MOST;
        }
    };

    private record Key(long id, boolean fitted, Bearing bearing, boolean red) {}

    /**
     * @param context where the pictures are
     * @param whenReady called on the event thread when another image is there
     */
    public Thumbnails(PanelContext context, Runnable whenReady) {
        this.context = context;
        this.whenReady = whenReady;
    }

    /** The image when it is there; else it is asked for, and {@code whenReady} is called once it is. */
    public Optional<BufferedImage> of(ArchivedPicture picture) {
        Key key = new Key(
                picture.id(),
                picture.fitted(),
                context.bearing(),
                context.palette().picturesRed());
        Optional<BufferedImage> known = kept.get(key);
        if (known != null) {
            return known;
        }
        if (wanted.add(key)) {
            context.background().aside(() -> make(picture, key), image -> {
                wanted.remove(key);
                kept.put(key, image);
                whenReady.run();
            });
        }
        return Optional.empty();
    }

    private Optional<BufferedImage> make(ArchivedPicture picture, Key key) {
        try {
            PixelGrid pixels = context.workbench()
                    .reader()
                    .decode(context.archive().fileOf(picture))
                    .pixels();
            Optional<Placement> placement = context.archive()
                    .currentFit(picture.id())
                    .map(StoredFit::fit)
                    .map(f -> f.placement());
            BufferedImage image = draw(pixels, placement, key.bearing());
            return Optional.of(key.red() ? RedLight.on(image) : image);
        } catch (ProblemException e) {
            // A broken file has no small image; opening it tells why.
            return Optional.empty();
        }
    }

    /** Cuts to the disc and turns it. */
    static BufferedImage draw(PixelGrid pixels, Optional<Placement> placement, Bearing bearing) {
        Crop crop = placement.map(Thumbnails::around).orElseGet(() -> BrightBox.of(pixels));
        Tone tone = BrightBox.tone(pixels, crop);
        Crop inside = crop.within(pixels);
        double scale = SIDE_PX / (double) Math.max(crop.widthPx(), crop.heightPx());
        int most = (int) Math.ceil(Math.max(inside.widthPx(), inside.heightPx()) * Math.min(1, scale));
        BufferedImage cut = new Previews().draw(pixels, inside, most, tone).toImage();
        BufferedImage out = new BufferedImage(SIDE_PX, SIDE_PX, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = out.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g.translate(SIDE_PX / 2.0, SIDE_PX / 2.0);
        placement.ifPresent(p -> g.rotate(Math.toRadians(bearing.turnDeg(p.poleAngleDeg()))));
        g.scale(scale, scale);
        g.translate(
                inside.leftPx() - crop.leftPx() - crop.widthPx() / 2.0,
                inside.topPx() - crop.topPx() - crop.heightPx() / 2.0);
        g.scale(inside.widthPx() / (double) cut.getWidth(), inside.heightPx() / (double) cut.getHeight());
        g.drawImage(cut, 0, 0, null);
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
}
