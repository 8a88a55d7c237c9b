/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.Optional;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;

/**
 * A moon or a shadow marked on a picture whose disc is fitted.
 *
 * @param shot the picture
 * @param subject what was marked
 * @param placement where the disc lies
 * @param covariance how sure that is
 * @param pixel where the middle of the moon or shadow was marked
 * @param pickSigmaPx standard error of that in each direction (px)
 * @param caution what speaks against it from the start, such as a doubtful fit; empty when nothing does
 */
public record PlaceMark(
        Shot shot,
        MoonSubject subject,
        Placement placement,
        PlacementCovariance covariance,
        PixelPoint pixel,
        double pickSigmaPx,
        Optional<String> caution) {}
