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

    /**
     * @param disc what the sky says at the picture's mid-time
     * @param placement where the disc lies
     */
    public DiscFrame(ApparentDisc disc, Placement placement) {
        this.disc = disc;
        this.placement = placement;
    }

    /** The apparent disc. */
    public ApparentDisc disc() {
        return disc;
    }

    /** Where it lies. */
    public Placement placement() {
        return placement;
    }

    /** The place on the globe seen at a pixel, or empty off the disc. */
    public Optional<SurfacePoint> locate(double xPx, double yPx) {
        throw new UnsupportedOperationException();
    }

    /** The pixel at which a place is seen, or empty when it is on the far side. */
    public Optional<PixelPoint> place(double lonIauDeg, double latGraphicDeg) {
        throw new UnsupportedOperationException();
    }

    /** Pixel of a point beside or before the globe: x to the sky's west along the equator as seen, y north across it, in equatorial radii. */
    public PixelPoint placeOffset(double xWestRadii, double yNorthRadii) {
        throw new UnsupportedOperationException();
    }

    /** The outline of the whole globe. */
    public Polyline outline() {
        throw new UnsupportedOperationException();
    }

    /** The line between day and night on the visible side; empty when the whole visible side is lit. */
    public Optional<Polyline> terminator() {
        throw new UnsupportedOperationException();
    }

    /** Visible parts of meridians (of a system) and parallels (planetographic) at multiples of a step (deg, 1…90), central meridian and equator. */
    public List<Polyline> grid(RotationSystem system, double stepDeg) {
        throw new UnsupportedOperationException();
    }

    /** Outer and inner edges of the rings as seen before and behind the globe; empty without rings. */
    public List<Polyline> rings() {
        throw new UnsupportedOperationException();
    }
}
