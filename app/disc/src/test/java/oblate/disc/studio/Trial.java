/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.DiscFitter;
import oblate.disc.DiscFrame;
import oblate.disc.FitHints;
import oblate.disc.FitOutcome;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;

/**
 * A picture with its truth, ready to be fitted.
 *
 * @param name how it is called in a report
 * @param body the planet
 * @param grade easy, medium or hard
 * @param pixels the picture
 * @param disc what the program's own sky says is in it
 * @param truth where it lies
 * @param marks points on it whose longitude is known
 */
record Trial(
        String name,
        String body,
        String grade,
        PixelGrid pixels,
        ApparentDisc disc,
        Placement truth,
        List<Mark> marks) {
    /** What a hinted pole angle is off by at most, and what it is said to be good to (deg). */
    static final double HINT_DEG = 6;
    /** Standard error of a pick by hand in each direction (px). */
    static final double PICK_PX = 0.7;

    /** A point whose pixel and IAU longitude (deg) are known. */
    record Mark(double xPx, double yPx, double lonDeg) {}

    /**
     * A fit beside its truth.
     *
     * @param trial the picture
     * @param fit what was found, or null when refused
     * @param refusal why refused
     * @param centrePercent error of the centre in percent of the equatorial radius
     * @param radiusPercent error of the radius, signed, in percent
     * @param angleDeg error of the pole angle, signed
     * @param sigmas errors of x, y, radius and angle in their stated standard errors
     * @param lonDeg errors of longitude of the marks at their true pixels
     * @param lonSigmas errors of longitude in stated standard errors, with a picker's error added
     * @param seconds what the fit took
     */
    record Scored(
            Trial trial,
            DiscFit fit,
            String refusal,
            double centrePercent,
            double radiusPercent,
            double angleDeg,
            double[] sigmas,
            List<Double> lonDeg,
            List<Double> lonSigmas,
            double seconds) {

        boolean found() {
            return fit != null;
        }

        boolean trusted() {
            return found() && fit.trust() == Trust.TRUSTED;
        }

        boolean wrongHand() {
            return found() && fit.placement().mirrored() != trial.truth.mirrored();
        }

        /** Worst of centre, radius and angle, in stated sigmas. */
        double worst() {
            double worst = 0;
            for (double s : sigmas) {
                worst = Math.max(worst, Math.abs(s));
            }
            return worst;
        }
    }

    /**
     * Planet, time, parity and a pole angle some degrees off.
     *
     * @param random says by how much
     */
    FitHints hints(Random random) {
        double off = HINT_DEG * (2 * random.nextDouble() - 1);
        return FitHints.of(Math.IEEEremainder(truth.poleAngleDeg() + off, 360), HINT_DEG, truth.mirrored());
    }

    /** Fits the picture and holds what was found against the truth. */
    Scored score(FitHints hints, Random picker) {
        long start = System.nanoTime();
        FitOutcome outcome = new DiscFitter().fit(pixels, disc, hints, Progress.SILENT);
        double seconds = (System.nanoTime() - start) / 1e9;
        if (outcome instanceof FitOutcome.Refused refused) {
            return new Scored(this, null, refused.reason(), 0, 0, 0, new double[4], List.of(), List.of(), seconds);
        }
        DiscFit fit = ((FitOutcome.Fitted) outcome).fit();
        Placement p = fit.placement();
        PlacementCovariance c = fit.covariance();
        double dx = p.centreXPx() - truth.centreXPx();
        double dy = p.centreYPx() - truth.centreYPx();
        double dr = p.equatorialRadiusPx() - truth.equatorialRadiusPx();
        double da = Math.IEEEremainder(p.poleAngleDeg() - truth.poleAngleDeg(), 360);
        List<Double> errors = new ArrayList<>();
        List<Double> sigmas = new ArrayList<>();
        longitudes(fit, picker, errors, sigmas);
        return new Scored(
                this,
                fit,
                "",
                100 * Math.hypot(dx, dy) / truth.equatorialRadiusPx(),
                100 * dr / truth.equatorialRadiusPx(),
                da,
                new double[] {
                    dx / Math.sqrt(c.get(0, 0)),
                    dy / Math.sqrt(c.get(1, 1)),
                    dr / c.sigmaRadiusPx(),
                    da / c.sigmaPoleAngleDeg()
                },
                errors,
                sigmas,
                seconds);
    }

    private void longitudes(DiscFit fit, Random picker, List<Double> errors, List<Double> sigmas) {
        DiscFrame frame = new DiscFrame(disc, fit.placement());
        for (Mark mark : marks) {
            frame.locate(mark.xPx, mark.yPx)
                    .ifPresent(at -> errors.add(Math.abs(Math.IEEEremainder(at.lonIauDeg() - mark.lonDeg, 360))));
            PixelPoint picked = new PixelPoint(
                    mark.xPx + PICK_PX * picker.nextGaussian(), mark.yPx + PICK_PX * picker.nextGaussian());
            Optional<MarkMeasurer.Measured> measured =
                    new MarkMeasurer().measure(frame, fit.covariance(), picked, PICK_PX, 0);
            measured.ifPresent(
                    m -> sigmas.add(Math.abs(Math.IEEEremainder(m.point().lonIauDeg() - mark.lonDeg, 360))
                            / m.errors().totalLonDeg()));
        }
    }
}
