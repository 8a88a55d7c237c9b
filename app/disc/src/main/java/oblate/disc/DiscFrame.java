/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.List;
import java.util.Optional;
import oblate.sky.ApparentDisc;
import oblate.sky.RotationSystem;

/**
 * Pixel ↔ longitude and latitude on a placed disc, exactly inverse on the visible side. Immutable.
 *
 * <p>Orthographic along the line of sight through the centre: at planet distances perspective is below 0.0005 radii.
 */
public final class DiscFrame {
    private final ApparentDisc disc;
    private final Placement placement;
    private final GlobeView view;
    private final double rightX;
    private final double rightY;
    private final double upX;
    private final double upY;

    /**
     * @param disc what the sky says at the picture's mid-time
     * @param placement where the disc lies
     */
    public DiscFrame(ApparentDisc disc, Placement placement) {
        this.disc = disc;
        this.placement = placement;
        view = new GlobeView(disc);
        double angle = Math.toRadians(placement.poleAngleDeg());
        int hand = placement.mirrored() ? -1 : 1;
        rightX = hand * Math.cos(angle);
        rightY = -hand * Math.sin(angle);
        upX = -Math.sin(angle);
        upY = -Math.cos(angle);
    }

    /** The apparent disc. */
    public ApparentDisc disc() {
        return disc;
    }

    /** Where it lies. */
    public Placement placement() {
        return placement;
    }

    /** The globe as seen. */
    GlobeView view() {
        return view;
    }

    /** X of a pixel in the sight frame (equatorial radii, to the sky's west with the pole up). */
    double sightX(double xPx, double yPx) {
        return ((xPx - placement.centreXPx()) * rightX + (yPx - placement.centreYPx()) * rightY)
                / placement.equatorialRadiusPx();
    }

    /** Y of a pixel in the sight frame (equatorial radii, along the projected north pole). */
    double sightY(double xPx, double yPx) {
        return ((xPx - placement.centreXPx()) * upX + (yPx - placement.centreYPx()) * upY)
                / placement.equatorialRadiusPx();
    }

    /** The place on the globe seen at a pixel, or empty off the disc. */
    public Optional<SurfacePoint> locate(double xPx, double yPx) {
        double x = sightX(xPx, yPx);
        double y = sightY(xPx, yPx);
        double z = view.depth(x, y);
        if (Double.isNaN(z)) {
            return Optional.empty();
        }
        return Optional.of(surfacePoint(view.bodyX(y, z), x, view.bodyZ(y, z)));
    }

    private SurfacePoint surfacePoint(double bx, double by, double bz) {
        double rho = Math.hypot(bx, by);
        double normalZ = view.k * bz;
        double length = Math.sqrt(rho * rho + normalZ * normalZ);
        double emission = (bx * view.cosB + normalZ * view.sinB) / length;
        double incidence = (bx * view.sunX + by * view.sunY + normalZ * view.sunZ) / length;
        double east = Math.toDegrees(Math.atan2(by, bx));
        return new SurfacePoint(
                view.longitudeDeg(bx, by),
                Math.toDegrees(Math.atan2(normalZ, rho)),
                Math.toDegrees(Math.atan2(bz, rho)),
                Math.toDegrees(Math.acos(Math.max(0, Math.min(1, emission)))),
                Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, incidence)))),
                view.eastSign * east);
    }

    /** The pixel at which a place is seen, or empty when it is on the far side. */
    public Optional<PixelPoint> place(double lonIauDeg, double latGraphicDeg) {
        return place(surface(lonIauDeg, latGraphicDeg));
    }

    /** Emission angle (deg, 0…180) of a place, above 90 when it is on the far side. */
    double emissionDeg(double lonIauDeg, double latGraphicDeg) {
        double[] p = surface(lonIauDeg, latGraphicDeg);
        double normalZ = view.k * p[2];
        double cos =
                (p[0] * view.cosB + normalZ * view.sinB) / Math.sqrt(p[0] * p[0] + p[1] * p[1] + normalZ * normalZ);
        return Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, cos))));
    }

    /** Incidence angle (deg, 0…180) of a place. */
    double incidenceDeg(double lonIauDeg, double latGraphicDeg) {
        double[] p = surface(lonIauDeg, latGraphicDeg);
        double normalZ = view.k * p[2];
        double cos = (p[0] * view.sunX + p[1] * view.sunY + normalZ * view.sunZ)
                / Math.sqrt(p[0] * p[0] + p[1] * p[1] + normalZ * normalZ);
        return Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, cos))));
    }

    /** Where a place is in the body frame (equatorial radii). */
    double[] surface(double lonIauDeg, double latGraphicDeg) {
        double lat = Math.toRadians(latGraphicDeg);
        double east = Math.toRadians(view.eastSign * (lonIauDeg - view.meridianDeg));
        double scale = 1 / Math.hypot(Math.cos(lat), view.q * Math.sin(lat));
        double rho = Math.cos(lat) * scale;
        return new double[] {rho * Math.cos(east), rho * Math.sin(east), view.q * view.q * Math.sin(lat) * scale};
    }

    private Optional<PixelPoint> place(double[] p) {
        if (p[0] * view.cosB + view.k * p[2] * view.sinB < 0) {
            return Optional.empty();
        }
        return Optional.of(project(p));
    }

    /** The pixel of a point of the body frame, seen or not. */
    PixelPoint project(double[] p) {
        return placeOffset(p[1], view.sightY(p[0], p[2]));
    }

    /** Pixel of a point beside or before the globe: x to the sky's west along the equator as seen, y north across it, in equatorial radii. */
    public PixelPoint placeOffset(double xWestRadii, double yNorthRadii) {
        double r = placement.equatorialRadiusPx();
        return new PixelPoint(
                placement.centreXPx() + r * (xWestRadii * rightX + yNorthRadii * upX),
                placement.centreYPx() + r * (xWestRadii * rightY + yNorthRadii * upY));
    }

    /** The outline of the whole globe. */
    public Polyline outline() {
        return new FrameLines(this).outline();
    }

    /**
     * The line between day and night on the visible side, from limb to limb; empty when the whole visible side is lit.
     */
    public Optional<Polyline> terminator() {
        return new FrameLines(this).terminator();
    }

    /**
     * Visible parts of meridians (of a system) and parallels (planetographic) at multiples of a step (deg, 1…90), central meridian and equator.
     *
     * @throws IllegalArgumentException when the step is out of range
     */
    public List<Polyline> grid(RotationSystem system, double stepDeg) {
        return new FrameLines(this).grid(system, stepDeg);
    }

    /** Outer and inner edges of the rings as seen before and behind the globe; empty without rings. What the globe hides is left out. */
    public List<Polyline> rings() {
        return new FrameLines(this).rings();
    }
}
