/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.disc.ErrorBudget;
import oblate.disc.SurfacePoint;
import oblate.sky.RotationSystem;

/**
 * One mark with everything a report says of it.
 *
 * @param mark the mark, on the globe
 * @param picture its picture
 * @param fit the fit it was measured with, if there is one
 * @param feature its feature, once it has a name
 * @param system system its longitude is stated in
 */
record Position(
        StoredMark mark,
        ArchivedPicture picture,
        Optional<StoredFit> fit,
        Optional<Feature> feature,
        RotationSystem system) {

    SurfacePoint point() {
        return mark.mark().point().orElseThrow();
    }

    Optional<ErrorBudget> errors() {
        return mark.mark().errors();
    }
}
