/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.List;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.disc.DiscFrame;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;
import oblate.image.PixelGrid;

/**
 * The picture on the desk, for a measuring tool. Immutable.
 *
 * @param picture its entry in the archive
 * @param pixels what it shows
 * @param fit its current fit; empty before the disc is fitted
 * @param frame from pixels to the globe and back; there when the fit is
 * @param timeSigmaS standard error of its time (s)
 * @param pickSigmaPx how well a hand places the pointer, each way (px)
 * @param marks its current marks
 */
public record ToolPicture(
        ArchivedPicture picture,
        PixelGrid pixels,
        Optional<StoredFit> fit,
        Optional<DiscFrame> frame,
        double timeSigmaS,
        double pickSigmaPx,
        List<StoredMark> marks) {
    /** Copies the list. */
    public ToolPicture {
        marks = List.copyOf(marks);
    }

    /** The place on the globe at a pixel with its errors; empty without a fit, beside the disc, or too near the limb to measure. */
    public Optional<MarkMeasurer.Measured> measure(PixelPoint at) {
        return frame.flatMap(
                f -> new MarkMeasurer().measure(f, fit.orElseThrow().fit().covariance(), at, pickSigmaPx, timeSigmaS));
    }
}
