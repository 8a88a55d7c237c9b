/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.Optional;
import oblate.disc.ErrorBudget;
import oblate.disc.PixelPoint;
import oblate.disc.SurfacePoint;

/**
 * A mark to be added: one measured point on one picture.
 *
 * @param pictureId picture
 * @param fitId disc fit it was measured with; empty for a point beside the disc on an unfitted picture
 * @param featureId feature it belongs to; empty while unnamed
 * @param pixel place in the picture
 * @param pickSigmaPx standard error of the pick (px)
 * @param point place on the globe; empty for a moon beside or before the disc
 * @param errors its errors; empty when {@code point} is
 * @param what what was measured: "centre", "preceding end", "following end", "north edge", "south edge"
 * @param measurer who measured, or the name of the detector
 */
public record NewMark(
        long pictureId,
        Optional<Long> fitId,
        Optional<Long> featureId,
        PixelPoint pixel,
        double pickSigmaPx,
        Optional<SurfacePoint> point,
        Optional<ErrorBudget> errors,
        String what,
        String measurer) {}
