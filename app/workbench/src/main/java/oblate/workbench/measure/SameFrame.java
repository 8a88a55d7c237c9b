/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import oblate.base.Progress;
import oblate.disc.DiscFrame;
import oblate.disc.MapBuilder;
import oblate.disc.MapFrame;
import oblate.disc.MapProjection;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlanetMap;
import oblate.disc.SurfacePoint;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;
import oblate.sky.RotationSystem;
import oblate.workbench.look.RedLight;
import oblate.workbench.words.Texts;

/**
 * Draws pictures in the frame of a first one: same orientation and scale, if wanted turned on to the same instant, or as maps. As the sky, never mirrored. Immutable.
 *
 * @param first disc of the first picture
 * @param kind what is drawn
 * @param carry how a place of the first picture is followed to others
 * @param southUp south up instead of north
 * @param widthPx width of what is drawn
 * @param heightPx height
 * @param red in red only
 */
record SameFrame(ApparentDisc first, Kind kind, Carry carry, boolean southUp, int widthPx, int heightPx, boolean red) {
    private static final Texts TEXTS = Texts.of(SameFrame.class);
    private static final double ROOM = 1.06;
    private static final double MAP_WIDTH_DEG = 150;
    private static final double MAP_EMISSION_DEG = 75;
    private static final double LOW_SHARE = 0.005;
    private static final double HIGH_SHARE = 0.995;

    /** What is drawn. */
    enum Kind {
        /** Each at its own instant. */
        AS_SEEN,
        /** The second turned on to the instant of the first. */
        CARRIED,
        MAP;

        @Override
        public String toString() {
            return TEXTS.word("compare.kind", this);
        }
    }

    /** A picture in this frame. Slow. */
    BufferedImage draw(OpenPicture picture) {
        DiscFrame frame = picture.frame().orElseThrow();
        PixelGrid drawn = kind == Kind.MAP ? map(picture, frame) : disc(picture.pixels(), frame);
        BufferedImage image = toned(drawn);
        return red ? RedLight.on(image) : image;
    }

    private PixelGrid map(OpenPicture picture, DiscFrame frame) {
        RotationSystem system = carry.system();
        double middle = first.centralMeridianDeg(system)
                + carry.movedDeg(first.time().toInstant(), frame.disc().time().toInstant());
        double cell = MAP_WIDTH_DEG / widthPx;
        int height = (int) Math.min(heightPx, Math.round(170 / cell));
        MapFrame sheet =
                new MapFrame(first.planet(), system, MapProjection.CYLINDRICAL, true, middle, 0, widthPx, height, cell);
        PlanetMap map = new MapBuilder()
                .draw(
                        sheet,
                        List.of(new MapBuilder.Source("", picture.pixels(), frame)),
                        new MapBuilder.Manner(MAP_EMISSION_DEG, true),
                        Progress.SILENT);
        PixelGrid grid = PixelGrid.ranged(widthPx, height, map.planes());
        return southUp ? turned(grid) : grid;
    }

    private static PixelGrid turned(PixelGrid grid) {
        int n = grid.widthPx() * grid.heightPx();
        List<float[]> planes = IntStream.range(0, grid.channels())
                .mapToObj(c -> {
                    float[] turned = new float[n];
                    for (int i = 0; i < n; i++) {
                        turned[i] = grid.plane(c)[n - 1 - i];
                    }
                    return turned;
                })
                .toList();
        return new PixelGrid(grid.widthPx(), grid.heightPx(), planes, grid.low(), grid.high());
    }

    private double radiusPx() {
        double rings = first.planet()
                .rings()
                .map(r -> r.outerRadiusKm() / first.planet().globe().figure().equatorialRadiusKm())
                .orElse(1.0);
        return Math.min(widthPx / rings, heightPx) / (2 * ROOM);
    }

    private PixelGrid disc(PixelGrid pixels, DiscFrame frame) {
        double cx = (widthPx - 1) / 2.0;
        double cy = (heightPx - 1) / 2.0;
        Placement target = new Placement(cx, cy, radiusPx(), southUp ? 180 : 0, false);
        DiscFrame there = new DiscFrame(first, target);
        List<float[]> planes = IntStream.range(0, pixels.channels())
                .mapToObj(c -> new float[widthPx * heightPx])
                .toList();
        IntStream.range(0, heightPx).parallel().forEach(y -> {
            for (int x = 0; x < widthPx; x++) {
                Optional<PixelPoint> from =
                        kind == Kind.AS_SEEN ? plainly(frame, target, x, y) : carried(there, frame, x, y);
                for (int c = 0; c < planes.size(); c++) {
                    planes.get(c)[y * widthPx + x] =
                            from.map(sampleOf(pixels, c)).orElse(Float.NaN);
                }
            }
        });
        return PixelGrid.ranged(widthPx, heightPx, planes);
    }

    private static Optional<PixelPoint> plainly(DiscFrame frame, Placement target, int x, int y) {
        double hand = target.poleAngleDeg() == 0 ? 1 : -1;
        double right = (x - target.centreXPx()) / target.equatorialRadiusPx();
        double up = (target.centreYPx() - y) / target.equatorialRadiusPx();
        return Optional.of(frame.placeOffset(hand * right, hand * up));
    }

    private Optional<PixelPoint> carried(DiscFrame there, DiscFrame frame, int x, int y) {
        Optional<SurfacePoint> place = there.locate(x, y);
        return place.flatMap(p -> frame.place(carry.lonIauDeg(p.lonIauDeg(), first, frame.disc()), p.latGraphicDeg()));
    }

    private static java.util.function.Function<PixelPoint, Float> sampleOf(PixelGrid pixels, int channel) {
        return p -> {
            int x = (int) Math.floor(p.xPx());
            int y = (int) Math.floor(p.yPx());
            if (x < 0 || y < 0 || x + 1 >= pixels.widthPx() || y + 1 >= pixels.heightPx()) {
                return Float.NaN;
            }
            double fx = p.xPx() - x;
            double fy = p.yPx() - y;
            double top = (1 - fx) * pixels.sample(channel, x, y) + fx * pixels.sample(channel, x + 1, y);
            double bottom = (1 - fx) * pixels.sample(channel, x, y + 1) + fx * pixels.sample(channel, x + 1, y + 1);
            return (float) ((1 - fy) * top + fy * bottom);
        };
    }

    /** Black and white at the levels that leave out the darkest and the brightest few, so that two pictures of unlike exposure can be compared. */
    static BufferedImage toned(PixelGrid grid) {
        float[] measured = grid.measuringPlane().clone();
        int known = 0;
        for (float v : measured) {
            if (!Float.isNaN(v)) {
                measured[known++] = v;
            }
        }
        Arrays.sort(measured, 0, known);
        double low = known == 0 ? 0 : measured[(int) (LOW_SHARE * (known - 1))];
        double high = known == 0 ? 1 : measured[(int) (HIGH_SHARE * (known - 1))];
        oblate.image.Tone tone = new oblate.image.Tone(low, Math.max(high, low + 1e-9), 1);
        return new oblate.image.Previews()
                .draw(grid, oblate.image.Crop.all(grid), Math.max(grid.widthPx(), grid.heightPx()), tone)
                .toImage();
    }
}
