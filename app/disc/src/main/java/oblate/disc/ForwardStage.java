/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;
import oblate.disc.ForwardFit.Solution;
import oblate.sky.ApparentDisc;

/** One forward fit of a plane at one binning: cuts out the disc's surroundings, sets the start and turns the answer back into picture pixels. */
final class ForwardStage {
    /** Below this radius the belts get finer knots: coarse ones pass for a wrong radius there. */
    private static final double SMALL_RADIUS_PX = 60;

    private static final int MOST_KNOTS = 48;

    private static final int MOST_RING_KNOTS = 36;
    /** Rings are modelled when the sine of their opening is above this. */
    static final double LEAST_OPENING = Math.sin(Math.toRadians(1));

    private final ApparentDisc disc;
    private final Plane picture;
    private final boolean belts;

    /**
     * A placement found, in pixels of the whole picture.
     *
     * @param place where
     * @param shared parameters of blur, photometry and tone, lengths in picture pixels
     * @param covariance of centre, radius (px) and angle (deg)
     * @param angleResponse by how much centre and radius (px) would follow a turn of the held pole angle (per deg)
     * @param solution what the fit said
     */
    record Found(Placement place, double[] shared, double[][] covariance, double[] angleResponse, Solution solution) {
        double corePx() {
            return shared[Slot.CORE];
        }
    }

    ForwardStage(ApparentDisc disc, Plane picture, boolean belts) {
        this.disc = disc;
        this.picture = picture;
        this.belts = belts;
    }

    /** Starting values of the shared parameters, lengths in picture pixels. */
    double[] startShape(double corePx, double ring) {
        double[] p = new double[Slot.PATTERN];
        double exponent = disc.planet().appearance().limbDarkening();
        p[Slot.SUN] = exponent;
        p[Slot.VIEW] = exponent - 1;
        p[Slot.CORE] = corePx;
        p[Slot.RING] = ring;
        p[Slot.RING_WIDTH] = 1.6;
        p[Slot.HALO] = 0.05;
        p[Slot.HALO_WIDTH] = 3.5;
        p[Slot.HARD] = 0.05;
        p[Slot.BLACK] = 0.005;
        p[Slot.TONE] = 1;
        return p;
    }

    /**
     * Fits.
     *
     * @param start where to begin
     * @param shared starting values as {@link #startShape} gives them
     * @param angle prior on the pole angle, or null to leave it free
     * @param bin side of the squares of pixels that are averaged
     * @param placeSteps steps with blur, photometry and tone held
     * @param steps steps with everything free
     */
    Found fit(Placement start, double[] shared, FitHints.Angle angle, int bin, int placeSteps, int steps) {
        double r = start.equatorialRadiusPx() / bin;
        int pad = (int) Math.ceil(Math.max(8, 0.15 * r + 6));
        GlobeView view = new GlobeView(disc);
        boolean ringed = view.ringOuter > 0 && Math.abs(view.sinB) > LEAST_OPENING;
        int half = (int) Math.ceil(r * (ringed ? view.ringOuter : 1)) + pad;
        int cx = (int) Math.round(start.centreXPx() / bin);
        int cy = (int) Math.round(start.centreYPx() / bin);
        int x0 = cx - half;
        int y0 = cy - half;
        Plane plane = picture.cut(x0 * bin, y0 * bin, (2 * half + 1) * bin, (2 * half + 1) * bin)
                .binned(bin);
        double[] p = start(plane, start, shared, bin, x0, y0);
        double noise = plane.pixelNoise();
        boolean clipped = clipped(plane, p);
        double least = Math.max(0.0015, noise / 4);
        double exponent = disc.planet().appearance().limbDarkening();
        FitLimits limits = angle == null
                ? FitLimits.usual(exponent, bin, 0, Double.POSITIVE_INFINITY, least)
                : FitLimits.usual(
                        exponent, bin, Math.toRadians(angle.valueDeg()), Math.toRadians(angle.sigmaDeg()), least);
        // Tried on belted planets only; on a coarse pattern the black level would take up what the pattern cannot show.
        if (!clipped || !belts) {
            limits.holdBlack();
            p[Slot.BLACK] = 0;
        }
        Pattern pattern = pattern(r, p[Slot.CORE], ringed, start.equatorialRadiusPx() < SMALL_RADIUS_PX);
        ForwardModel model =
                new ForwardModel(view, start.mirrored(), pattern, plane, clipped, Math.max(0.001, noise / 3));
        double[] full = Arrays.copyOf(p, Slot.PATTERN + model.pattern.size());
        PatternStart.set(plane, model, full);
        ForwardFit fit = new ForwardFit(plane, model, limits, full);
        Solution solution = placeSteps > 0 ? fit.run(placeSteps, true) : null;
        if (steps > 0) {
            solution = fit.run(steps, false);
        }
        return found(solution, start.mirrored(), bin, x0, y0);
    }

    private double[] start(Plane plane, Placement start, double[] shared, int bin, int x0, int y0) {
        double[] p = shared.clone();
        p[Slot.X] = (start.centreXPx() - (bin - 1) / 2.0) / bin - x0;
        p[Slot.Y] = (start.centreYPx() - (bin - 1) / 2.0) / bin - y0;
        p[Slot.RADIUS] = start.equatorialRadiusPx() / bin;
        p[Slot.ANGLE] = Math.toRadians(start.poleAngleDeg());
        p[Slot.CORE] = Math.max(Math.max(0.6, 1.2 / bin), shared[Slot.CORE] / bin);
        p[Slot.BACK] = outside(plane, p, 1.08, 9, 0.5);
        return p;
    }

    private Pattern pattern(double r, double core, boolean ringed, boolean small) {
        int rings = ringed ? (int) Math.max(8, Math.min(MOST_RING_KNOTS, 1.2 * r / Math.max(2.2, core))) : 0;
        if (belts) {
            // On larger discs knots as fine as that would lead the search for the axis astray.
            double spacing = small ? Math.max(2, core) : Math.max(3.5, 2 * core);
            return new Pattern(true, (int) Math.max(7, Math.min(MOST_KNOTS, 2 * r / spacing)), rings);
        }
        // On a crescent a finer grid would turn with the terminator.
        boolean crescent = disc.phaseAngleDeg() > Orientation.CRESCENT_DEG;
        return new Pattern(false, r < 25 ? 3 : crescent ? 4 : r < 60 ? 5 : 7, rings);
    }

    /** A quantile of the samples between two distances from the centre (radii). */
    private static double outside(Plane plane, double[] p, double from, double to, double quantile) {
        float[] found = new float[plane.samples().length];
        int n = 0;
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                double d = Math.hypot(x - p[Slot.X], y - p[Slot.Y]) / p[Slot.RADIUS];
                float v = plane.at(x, y);
                if (d > from && d < to && !Float.isNaN(v)) {
                    found[n++] = v;
                }
            }
        }
        Arrays.sort(found, 0, n);
        return n == 0 ? 0 : found[(int) (quantile * (n - 1))];
    }

    /** Undershoot that was not cut at black leaves samples well below the background close to the limb. */
    private static boolean clipped(Plane plane, double[] p) {
        double level = p[Slot.BACK];
        double scatter = level - outside(plane, p, 1.08, 9, 0.16);
        double low = outside(plane, p, 1.0, 1.12, 0.03);
        return low > level - Math.max(0.02, 3.5 * scatter);
    }

    private static Found found(Solution s, boolean mirrored, int bin, int x0, int y0) {
        double[] p = s.p();
        Placement place = new Placement(
                (p[Slot.X] + x0) * bin + (bin - 1) / 2.0,
                (p[Slot.Y] + y0) * bin + (bin - 1) / 2.0,
                p[Slot.RADIUS] * bin,
                Math.toDegrees(p[Slot.ANGLE]),
                mirrored);
        double[] shared = Arrays.copyOf(p, Slot.PATTERN);
        shared[Slot.CORE] *= bin;
        double[] unit = {bin, bin, bin, Math.toDegrees(1)};
        double[][] covariance = new double[4][4];
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                covariance[i][j] = s.covariance()[i][j] * unit[i] * unit[j];
            }
        }
        double[] response = new double[3];
        for (int i = 0; i < 3; i++) {
            response[i] = s.angleResponse()[i] * bin / unit[3];
        }
        return new Found(place, shared, covariance, response, s);
    }
}
