/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.List;
import oblate.archive.PictureFacts;

/**
 * What a correction did to one picture. Immutable.
 *
 * @param pictureId the picture
 * @param before its facts before
 * @param after its facts after
 * @param conflicts sentences about disagreeing times that stood there before
 */
record FactsChange(long pictureId, PictureFacts before, PictureFacts after, List<String> conflicts) {
    /** Copies the list. */
    FactsChange {
        conflicts = List.copyOf(conflicts);
    }
}
