/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import oblate.sky.ApparentDisc;

/**
 * Where a disc lies and how surely.
 *
 * @param place the disc's place
 * @param covariance its errors
 */
record PlacedFit(Placement place, PlacementCovariance covariance) {
    private static final double DISAGREE = 4;

    /** Combines a picture's word on the pole angle with the hint's by weight; what hangs together with the angle moves along. */
    static PlacedFit of(ApparentDisc disc, FitHints hints, Placement place, PlacementCovariance covariance) {
        if (hints.poleAngle().isEmpty() || !Orientation.angleSeen(disc)) {
            return new PlacedFit(place, covariance);
        }
        FitHints.Angle hint = hints.poleAngle().get();
        double off = Math.IEEEremainder(hint.valueDeg() - place.poleAngleDeg(), 360);
        double variance = covariance.get(3, 3) + hint.sigmaDeg() * hint.sigmaDeg();
        if (off * off > DISAGREE * DISAGREE * variance) {
            return new PlacedFit(place, covariance);
        }
        double[] gain = new double[4];
        double[][] matrix = covariance.toArray();
        for (int i = 0; i < 4; i++) {
            gain[i] = covariance.get(i, 3) / variance;
        }
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                matrix[i][j] -= gain[i] * covariance.get(3, j);
            }
        }
        return new PlacedFit(
                new Placement(
                        place.centreXPx() + gain[0] * off,
                        place.centreYPx() + gain[1] * off,
                        Math.max(1, place.equatorialRadiusPx() + gain[2] * off),
                        place.poleAngleDeg() + gain[3] * off,
                        place.mirrored()),
                new PlacementCovariance(matrix));
    }
}
