/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import oblate.disc.ForwardStage.Found;
import oblate.sky.ApparentDisc;

/** How sure a fit is of where the disc lies. */
final class FitErrors {
    /** The sandwich over sectors was found to be about this factor too small, because the model's own faults run round the limb. */
    private static final double SANDWICH_FACTOR = 2;

    private static final double CENTRE_FLOOR_CORES = 0.03;
    private static final double SUN_FLOOR_CORES = 0.1;
    private static final double FULL_SUN_FLOOR_PHASE_DEG = 5;
    /** Centres of belted planets err by so much less than the parts below add up to; by more where the limb law differs from north to south. */
    private static final double HELD_CENTRE = 0.85;

    private static final double BELTED_RADIUS_FLOOR = 0.1;
    private static final double RINGED_RADIUS_FLOOR = 0.08;
    private static final double OTHER_RADIUS_FLOOR = 0.4;
    private static final double POLE_FLOOR_DEG = 0.1;
    private static final double RING_POLE_FLOOR_DEG = 0.03;
    private static final double FOLLOWED_DEG = 25;
    /** Turn of a terminator per relative scatter of the brightness along it (deg). */
    private static final double MARKINGS_TURN_DEG = 8;
    /** Standard error of an angle nobody knows: that of an even spread over the circle (deg). */
    private static final double UNKNOWN_DEG = 104;

    private FitErrors() {}

    /**
     * The sandwich over sectors, widened by what two reasonable laws of limb darkening and two models of sharpening differ by: in cores of the blur,
     * across and along the Sun line, in radius, and 0.1° of pole angle, because belts are not exact parallels.
     */
    static PlacementCovariance of(ApparentDisc disc, Found found, FitHints hints) {
        double[][] c = found.covariance();
        double[][] out = new double[4][4];
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                out[i][j] = SANDWICH_FACTOR * SANDWICH_FACTOR * c[i][j];
            }
        }
        double core = found.corePx();
        double across = CENTRE_FLOOR_CORES * core;
        double along = SUN_FLOOR_CORES * core * Math.min(1, disc.phaseAngleDeg() / FULL_SUN_FLOOR_PHASE_DEG);
        double[] sun = sunDirection(disc, found.place());
        for (int i = 0; i < 2; i++) {
            out[i][i] += across * across;
            for (int j = 0; j < 2; j++) {
                out[i][j] += along * along * sun[i] * sun[j];
            }
        }
        if (disc.planet().globe().figure().flattening() > Orientation.OBLATE) {
            narrowCentre(out);
        }
        double radius = radiusFloorCores(disc) * core;
        out[2][2] += radius * radius;
        double pole = disc.planet().rings().isPresent()
                ? RING_POLE_FLOOR_DEG
                : POLE_FLOOR_DEG + turnedByMarkings(disc, found);
        out[3][3] += pole * pole;
        if (!Orientation.angleSeen(disc)) {
            double sigma = hints.poleAngle().map(FitHints.Angle::sigmaDeg).orElse(UNKNOWN_DEG);
            followAngle(out, found.angleResponse(), sigma);
        }
        return new PlacementCovariance(out);
    }

    /** The mirror image puts the unlit sliver on the other side, and with it the centre: as likely as that is, it counts as an error. */
    static PlacementCovariance withMirrorImage(PlacementCovariance covariance, Orientation.Choice choice) {
        if (choice.mirrorImage().isEmpty() || choice.parity().isEmpty()) {
            return covariance;
        }
        Placement other = choice.mirrorImage().get();
        Placement winner = choice.rough().place();
        double[] apart = {other.centreXPx() - winner.centreXPx(), other.centreYPx() - winner.centreYPx()};
        double[][] matrix = covariance.toArray();
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                matrix[i][j] += (1 - choice.parity().get()) * apart[i] * apart[j];
            }
        }
        return new PlacementCovariance(matrix);
    }

    /** Belts and rings hold the centre better than the doubled sandwich and the floors say. */
    private static void narrowCentre(double[][] out) {
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 4; j++) {
                out[i][j] *= HELD_CENTRE;
                out[j][i] *= HELD_CENTRE;
            }
        }
    }

    /** A terminator seems turned where dark and bright places lie along it. */
    private static double turnedByMarkings(ApparentDisc disc, Found found) {
        boolean belted = disc.planet().globe().figure().flattening() > Orientation.OBLATE;
        return belted ? 0 : MARKINGS_TURN_DEG * found.solution().markings();
    }

    /** Where the angle was held, centre and radius err together with it; beyond a small turn the shift no longer grows in proportion. */
    private static void followAngle(double[][] out, double[] response, double sigmaDeg) {
        double reach = Math.min(1, FOLLOWED_DEG / sigmaDeg);
        for (int i = 0; i < 3; i++) {
            out[i][3] = response[i] * sigmaDeg * sigmaDeg * reach;
            out[3][i] = out[i][3];
            for (int j = 0; j < 3; j++) {
                out[i][j] += response[i] * response[j] * sigmaDeg * sigmaDeg * reach * reach;
            }
        }
        out[3][3] = sigmaDeg * sigmaDeg;
    }

    private static double radiusFloorCores(ApparentDisc disc) {
        if (disc.planet().rings().isPresent()) {
            return RINGED_RADIUS_FLOOR;
        }
        return disc.planet().globe().figure().flattening() > Orientation.OBLATE
                        && disc.phaseAngleDeg() < Orientation.CRESCENT_DEG
                ? BELTED_RADIUS_FLOOR
                : OTHER_RADIUS_FLOOR;
    }

    /** Pixel direction in which the Sun stands. */
    private static double[] sunDirection(ApparentDisc disc, Placement place) {
        GlobeView view = new GlobeView(disc);
        double x = view.sunY;
        double y = view.sightY(view.sunX, view.sunZ);
        double length = Math.max(1e-9, Math.hypot(x, y));
        double a = Math.toRadians(place.poleAngleDeg());
        int hand = place.mirrored() ? -1 : 1;
        return new double[] {
            (hand * x * Math.cos(a) - y * Math.sin(a)) / length, (-hand * x * Math.sin(a) - y * Math.cos(a)) / length
        };
    }
}
