/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;
import oblate.sky.MoonPlace;
import oblate.sky.Sky;
import oblate.sky.UtcTime;

/** Where the moons should show beside a disc, and which of the small lights found there are they. One thread. */
final class MoonsBeside {
    /** How far a model of the sky and a placed disc may be off (px). */
    static final double MODEL_PX = 0.5;

    private final Sky sky;
    private final Plane plane;
    private final DiscFrame frame;
    private final PlacementCovariance errors;
    private final PointFinder finder;
    private final List<PointLight> lights;

    MoonsBeside(Sky sky, Plane plane, DiscFrame frame, PlacementCovariance errors) {
        this.sky = sky;
        this.plane = plane;
        this.frame = frame;
        this.errors = errors;
        finder = new PointFinder(plane, frame);
        lights = finder.find();
    }

    /**
     * Where a moon should show.
     *
     * @param moon the moon
     * @param x pixel
     * @param y pixel
     */
    record Spot(MoonPlace moon, double x, double y) {}

    /**
     * A moon and the light taken for it.
     *
     * @param moon its name
     * @param light the light
     * @param x where it should show (px)
     * @param y where it should show (px)
     */
    record Hit(String moon, PointLight light, double x, double y) {}

    /** The small lights beside the disc. */
    List<PointLight> lights() {
        return lights;
    }

    /** The disc as it was placed. */
    DiscFrame frame() {
        return frame;
    }

    /** The errors of that. */
    PlacementCovariance errors() {
        return errors;
    }

    /** The moons so many seconds after the stated time. */
    List<MoonPlace> moons(double offsetS) {
        UtcTime time = UtcTime.of(frame.disc().time().toInstant().plusMillis(Math.round(offsetS * 1000)));
        return sky.moons(frame.disc().planet(), time);
    }

    /** Moons that should show beside the disc in the frame. */
    List<Spot> expected(Placement placement, List<MoonPlace> moons) {
        DiscFrame as = new DiscFrame(frame.disc(), placement);
        List<Spot> spots = new ArrayList<>();
        for (MoonPlace moon : moons) {
            if (moon.inTransit() || moon.occulted() || moon.eclipsed()) {
                continue;
            }
            PixelPoint p = as.placeOffset(moon.xWestRadii(), moon.yNorthRadii());
            boolean inFrame = p.xPx() > 3 && p.yPx() > 3 && p.xPx() < plane.width() - 4 && p.yPx() < plane.height() - 4;
            if (inFrame && finder.beside(p.xPx(), p.yPx())) {
                spots.add(new Spot(moon, p.xPx(), p.yPx()));
            }
        }
        return spots;
    }

    /** How far a moon may lie from where it is expected, one standard error (px). */
    double tolerance(Spot spot, PointLight light) {
        Placement p = frame.placement();
        double away = Math.hypot(spot.x() - p.centreXPx(), spot.y() - p.centreYPx());
        double scale = away * errors.sigmaRadiusPx() / p.equatorialRadiusPx();
        double angle = away * Math.toRadians(Math.min(5, errors.sigmaPoleAngleDeg()));
        double arcsec = frame.disc().diameterEquatorialArcsec() / (2 * p.equatorialRadiusPx());
        double own = spot.moon().offsetSigmaArcsec() / arcsec;
        return Math.sqrt(errors.sigmaCentrePx() * errors.sigmaCentrePx()
                + scale * scale
                + angle * angle
                + own * own
                + MODEL_PX * MODEL_PX
                + light.sigmaPx() * light.sigmaPx());
    }

    /** The lights nearest to where the moons should show, each for one moon. */
    List<Hit> hits(Placement placement, List<MoonPlace> moons) {
        List<Hit> hits = new ArrayList<>();
        boolean[] used = new boolean[lights.size()];
        for (Spot spot : expected(placement, moons)) {
            int best = -1;
            double least = 16;
            for (int i = 0; i < lights.size(); i++) {
                PointLight light = lights.get(i);
                double tolerance = tolerance(spot, light);
                double squares = (Math.pow(light.xPx() - spot.x(), 2) + Math.pow(light.yPx() - spot.y(), 2))
                        / (tolerance * tolerance);
                if (!used[i] && squares < least) {
                    least = squares;
                    best = i;
                }
            }
            if (best >= 0) {
                used[best] = true;
                PointLight light = lights.get(best);
                hits.add(new Hit(spot.moon().name(), light, spot.x(), spot.y()));
            }
        }
        return hits;
    }
}
