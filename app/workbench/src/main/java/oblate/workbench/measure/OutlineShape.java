/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.geom.Path2D;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;

/**
 * An outline being drawn by hand and the handles it is drawn by. Immutable.
 *
 * @param placement where it lies
 * @param axisRatio short axis of the outline by its long one, 0…1
 */
record OutlineShape(Placement placement, double axisRatio) {
    static final double LEAST_RADIUS_PX = 4;

    /** The pole's handle stands inside the edge, so that it is in sight whenever the disc is (share of the way to the pole). */
    private static final double POLE_AT = 0.62;

    private static final int POINTS = 180;

    /** What it is drawn by: right and up are along the equator and the pole as displayed before mirroring. */
    enum Handle {
        CENTRE(0, 0),
        EQUATOR_RIGHT(1, 0),
        EQUATOR_LEFT(-1, 0),
        NORTH(0, 1),
        SOUTH(0, -1),
        POLE(0, 1);

        private final int right;
        private final int up;

        Handle(int right, int up) {
            this.right = right;
            this.up = up;
        }
    }

    private PixelPoint at(double right, double up) {
        double a = Math.toRadians(placement.poleAngleDeg());
        double r = placement.equatorialRadiusPx();
        return new PixelPoint(
                placement.centreXPx() + r * (right * Math.cos(a) - up * Math.sin(a)),
                placement.centreYPx() + r * (-right * Math.sin(a) - up * Math.cos(a)));
    }

    /** Where a handle is. */
    PixelPoint at(Handle handle) {
        double up = axisRatio * (handle == Handle.POLE ? POLE_AT : handle.up);
        return at(handle.right, up);
    }

    /** The outline after a handle was dragged to a place. */
    OutlineShape moved(Handle handle, PixelPoint to) {
        double dx = to.xPx() - placement.centreXPx();
        double dy = to.yPx() - placement.centreYPx();
        double a = Math.toRadians(placement.poleAngleDeg());
        return switch (handle) {
            case CENTRE -> with(to.xPx(), to.yPx(), placement.equatorialRadiusPx(), placement.poleAngleDeg());
            case EQUATOR_RIGHT, EQUATOR_LEFT -> withRadius(handle.right * (dx * Math.cos(a) - dy * Math.sin(a)));
            case NORTH, SOUTH -> withRadius(handle.up * (-dx * Math.sin(a) - dy * Math.cos(a)) / axisRatio);
            case POLE ->
                with(
                        placement.centreXPx(),
                        placement.centreYPx(),
                        placement.equatorialRadiusPx(),
                        Math.toDegrees(Math.atan2(-dx, -dy)));
        };
    }

    private OutlineShape with(double x, double y, double radius, double angleDeg) {
        return new OutlineShape(new Placement(x, y, radius, angleDeg, placement.mirrored()), axisRatio);
    }

    private OutlineShape withRadius(double radiusPx) {
        return with(
                placement.centreXPx(),
                placement.centreYPx(),
                Math.max(LEAST_RADIUS_PX, radiusPx),
                placement.poleAngleDeg());
    }

    /** With its centre moved by so much (picture px). */
    OutlineShape shifted(double dxPx, double dyPx) {
        return with(
                placement.centreXPx() + dxPx,
                placement.centreYPx() + dyPx,
                placement.equatorialRadiusPx(),
                placement.poleAngleDeg());
    }

    /** Larger by so much (px). */
    OutlineShape grown(double px) {
        return withRadius(placement.equatorialRadiusPx() + px);
    }

    /** Turned counter-clockwise as displayed in the picture (deg). */
    OutlineShape turned(double deg) {
        return with(
                placement.centreXPx(),
                placement.centreYPx(),
                placement.equatorialRadiusPx(),
                placement.poleAngleDeg() + deg);
    }

    /** Mirror image or not. */
    OutlineShape mirrored(boolean mirrored) {
        Placement p = placement;
        return new OutlineShape(
                new Placement(p.centreXPx(), p.centreYPx(), p.equatorialRadiusPx(), p.poleAngleDeg(), mirrored),
                axisRatio);
    }

    /** The edge, in picture pixels. */
    Path2D path() {
        Path2D path = new Path2D.Double();
        for (int i = 0; i <= POINTS; i++) {
            double t = 2 * Math.PI * i / POINTS;
            PixelPoint p = at(Math.cos(t), axisRatio * Math.sin(t));
            if (i == 0) {
                path.moveTo(p.xPx(), p.yPx());
            } else {
                path.lineTo(p.xPx(), p.yPx());
            }
        }
        return path;
    }
}
