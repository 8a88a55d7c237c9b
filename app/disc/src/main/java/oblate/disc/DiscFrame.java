/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleFunction;
import oblate.sky.ApparentDisc;
import oblate.sky.Rings;
import oblate.sky.RotationSystem;

/**
 * Pixel ↔ longitude and latitude on a placed disc, exactly inverse on the visible side. Immutable.
 *
 * <p>Orthographic along the line of sight through the centre: at planet distances perspective is below 0.0005 radii.
 */
public final class DiscFrame {
    private static final int OUTLINE_POINTS = 360;
    private static final double LINE_STEP_DEG = 2;
    /** Below this sine of the angle between Sun and observer there is no terminator worth drawing. */
    private static final double NO_PHASE = 1e-6;

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

    private double[] surface(double lonIauDeg, double latGraphicDeg) {
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

    private PixelPoint project(double[] p) {
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
        List<PixelPoint> points = new ArrayList<>();
        for (int i = 0; i <= OUTLINE_POINTS; i++) {
            double t = 2 * Math.PI * (i % OUTLINE_POINTS) / OUTLINE_POINTS;
            points.add(placeOffset(Math.cos(t), view.axisRatio * Math.sin(t)));
        }
        return new Polyline("outline", "", points);
    }

    /**
     * The line between day and night on the visible side, from limb to limb; empty when the whole visible side is lit.
     *
     * <p>Stretching the polar axis by 1/q makes the globe a sphere and the terminator the great circle at right angles to the stretched Sun.
     */
    public Optional<Polyline> terminator() {
        double[] sun = unit(view.sunX, view.sunY, view.sunZ / view.q);
        double[] sight = unit(view.cosB, 0, view.sinB / view.q);
        double along = sun[0] * sight[0] + sun[1] * sight[1] + sun[2] * sight[2];
        double[] rest = {sight[0] - along * sun[0], sight[1] - along * sun[1], sight[2] - along * sun[2]};
        if (Math.sqrt(rest[0] * rest[0] + rest[1] * rest[1] + rest[2] * rest[2]) < NO_PHASE) {
            return Optional.empty();
        }
        double[] mid = unit(rest[0], rest[1], rest[2]);
        double[] side = {
            sun[1] * mid[2] - sun[2] * mid[1], sun[2] * mid[0] - sun[0] * mid[2], sun[0] * mid[1] - sun[1] * mid[0]
        };
        List<PixelPoint> points = new ArrayList<>();
        for (int i = -90; i <= 90; i++) {
            double c = Math.cos(Math.toRadians(i));
            double s = Math.sin(Math.toRadians(i));
            points.add(project(new double[] {
                c * mid[0] + s * side[0], c * mid[1] + s * side[1], view.q * (c * mid[2] + s * side[2])
            }));
        }
        return Optional.of(new Polyline("terminator", "", points));
    }

    private static double[] unit(double x, double y, double z) {
        double length = Math.sqrt(x * x + y * y + z * z);
        return new double[] {x / length, y / length, z / length};
    }

    /**
     * Visible parts of meridians (of a system) and parallels (planetographic) at multiples of a step (deg, 1…90), central meridian and equator.
     *
     * @throws IllegalArgumentException when the step is out of range
     */
    public List<Polyline> grid(RotationSystem system, double stepDeg) {
        if (!(stepDeg >= 1 && stepDeg <= 90)) {
            throw new IllegalArgumentException("step " + stepDeg);
        }
        RotationSystem iau = disc.planet().globe().iauSystem();
        List<Polyline> lines = new ArrayList<>();
        for (double lon = 0; lon < 360 - 1e-9; lon += stepDeg) {
            double iauLon = disc.convertLonDeg(lon, system, iau);
            addVisible(lines, "meridian", label(lon), -90, 90, lat -> surface(iauLon, lat));
        }
        for (double lat = -stepDeg * Math.floor(89.999 / stepDeg); lat < 90; lat += stepDeg) {
            double parallel = lat;
            String role = Math.abs(lat) < 1e-9 ? "equator" : "parallel";
            addVisible(lines, role, label(lat), -180, 180, east -> surface(view.meridianDeg + east, parallel));
        }
        addVisible(
                lines,
                "central-meridian",
                label(disc.centralMeridianDeg(system)),
                -90,
                90,
                lat -> surface(view.meridianDeg, lat));
        return lines;
    }

    private static String label(double deg) {
        return deg == Math.rint(deg) ? Long.toString(Math.round(deg)) : String.format(Locale.ROOT, "%.1f", deg);
    }

    private boolean visible(double[] p) {
        return p[0] * view.cosB + view.k * p[2] * view.sinB >= 0;
    }

    /** Adds the runs of a curve that are on the visible side, each ending exactly on the limb. */
    private void addVisible(
            List<Polyline> lines, String role, String label, double from, double to, DoubleFunction<double[]> curve) {
        List<PixelPoint> run = new ArrayList<>();
        int steps = (int) Math.round((to - from) / LINE_STEP_DEG);
        double before = from;
        boolean seenBefore = visible(curve.apply(from));
        if (seenBefore) {
            run.add(project(curve.apply(from)));
        }
        for (int i = 1; i <= steps; i++) {
            double t = from + i * (to - from) / steps;
            boolean seen = visible(curve.apply(t));
            if (seen != seenBefore) {
                run.add(project(curve.apply(crossing(curve, before, t))));
                if (!seen) {
                    close(lines, role, label, run);
                }
            }
            if (seen) {
                run.add(project(curve.apply(t)));
            }
            seenBefore = seen;
            before = t;
        }
        close(lines, role, label, run);
    }

    private static void close(List<Polyline> lines, String role, String label, List<PixelPoint> run) {
        if (run.size() > 1) {
            lines.add(new Polyline(role, label, run));
        }
        run.clear();
    }

    private double crossing(DoubleFunction<double[]> curve, double from, double to) {
        boolean start = visible(curve.apply(from));
        double low = from;
        double high = to;
        for (int i = 0; i < 50; i++) {
            double mid = (low + high) / 2;
            if (visible(curve.apply(mid)) == start) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return (low + high) / 2;
    }

    /** Outer and inner edges of the rings as seen before and behind the globe; empty without rings. What the globe hides is left out. */
    public List<Polyline> rings() {
        Optional<Rings> rings = disc.planet().rings();
        if (rings.isEmpty()) {
            return List.of();
        }
        double equatorKm = disc.planet().globe().figure().equatorialRadiusKm();
        List<Polyline> lines = new ArrayList<>();
        addRing(lines, rings.get().outerRadiusKm() / equatorKm);
        addRing(lines, rings.get().innerRadiusKm() / equatorKm);
        return lines;
    }

    private void addRing(List<Polyline> lines, double radius) {
        List<PixelPoint> run = new ArrayList<>();
        List<PixelPoint> first = null;
        for (int i = 0; i <= OUTLINE_POINTS; i++) {
            double t = 2 * Math.PI * (i % OUTLINE_POINTS) / OUTLINE_POINTS;
            double x = radius * Math.sin(t);
            double bodyX = radius * Math.cos(t);
            double y = view.sightY(bodyX, 0);
            double surface = view.depth(x, y);
            if (Double.isNaN(surface) || view.sightZ(bodyX, 0) >= surface) {
                run.add(placeOffset(x, y));
            } else {
                first = keepRing(lines, run, first);
            }
        }
        if (first != null) {
            run.addAll(first.subList(1, first.size()));
        }
        close(lines, "ring", "", run);
    }

    /** Ends a run; the first one is kept back, because the curve started in its middle. */
    private static List<PixelPoint> keepRing(List<Polyline> lines, List<PixelPoint> run, List<PixelPoint> first) {
        if (first == null && !run.isEmpty()) {
            List<PixelPoint> kept = List.copyOf(run);
            run.clear();
            return kept;
        }
        close(lines, "ring", "", run);
        return first;
    }
}
