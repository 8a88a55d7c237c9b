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

/** Lines to draw on a placed disc, as {@link DiscFrame} offers them. */
final class FrameLines {
    private static final int OUTLINE_POINTS = 360;
    private static final double LINE_STEP_DEG = 2;
    /** Below this sine of the angle between Sun and observer there is no terminator worth drawing. */
    private static final double NO_PHASE = 1e-6;

    private final DiscFrame frame;
    private final ApparentDisc disc;
    private final GlobeView view;

    FrameLines(DiscFrame frame) {
        this.frame = frame;
        disc = frame.disc();
        view = frame.view();
    }

    Polyline outline() {
        List<PixelPoint> points = new ArrayList<>();
        for (int i = 0; i <= OUTLINE_POINTS; i++) {
            double t = 2 * Math.PI * (i % OUTLINE_POINTS) / OUTLINE_POINTS;
            points.add(frame.placeOffset(Math.cos(t), view.axisRatio * Math.sin(t)));
        }
        return new Polyline("outline", "", points);
    }

    /** Stretching the polar axis by 1/q makes the globe a sphere and the terminator the great circle at right angles to the stretched Sun. */
    Optional<Polyline> terminator() {
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
            points.add(frame.project(new double[] {
                c * mid[0] + s * side[0], c * mid[1] + s * side[1], view.q * (c * mid[2] + s * side[2])
            }));
        }
        return Optional.of(new Polyline("terminator", "", points));
    }

    private static double[] unit(double x, double y, double z) {
        double length = Math.sqrt(x * x + y * y + z * z);
        return new double[] {x / length, y / length, z / length};
    }

    List<Polyline> grid(RotationSystem system, double stepDeg) {
        if (!(stepDeg >= 1 && stepDeg <= 90)) {
            throw new IllegalArgumentException("step " + stepDeg);
        }
        RotationSystem iau = disc.planet().globe().iauSystem();
        List<Polyline> lines = new ArrayList<>();
        for (double lon = 0; lon < 360 - 1e-9; lon += stepDeg) {
            double iauLon = disc.convertLonDeg(lon, system, iau);
            addVisible(lines, "meridian", label(lon), -90, 90, lat -> frame.surface(iauLon, lat));
        }
        for (double lat = -stepDeg * Math.floor(89.999 / stepDeg); lat < 90; lat += stepDeg) {
            double parallel = lat;
            String role = Math.abs(lat) < 1e-9 ? "equator" : "parallel";
            addVisible(lines, role, label(lat), -180, 180, east -> frame.surface(view.meridianDeg + east, parallel));
        }
        addVisible(
                lines,
                "central-meridian",
                label(disc.centralMeridianDeg(system)),
                -90,
                90,
                lat -> frame.surface(view.meridianDeg, lat));
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
            run.add(frame.project(curve.apply(from)));
        }
        for (int i = 1; i <= steps; i++) {
            double t = from + i * (to - from) / steps;
            boolean seen = visible(curve.apply(t));
            if (seen != seenBefore) {
                run.add(frame.project(curve.apply(crossing(curve, before, t))));
                if (!seen) {
                    close(lines, role, label, run);
                }
            }
            if (seen) {
                run.add(frame.project(curve.apply(t)));
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

    List<Polyline> rings() {
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
                run.add(frame.placeOffset(x, y));
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
