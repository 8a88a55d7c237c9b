/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import oblate.archive.ArchivedPicture;

/** Which pictures are to be measured next. Stateless. */
final class NextPictures {
    private NextPictures() {}

    /**
     * Pictures of the same planet without marks that have all that measuring needs: those after a picture first, then those before it, each in order of time.
     *
     * @param all pictures in order of time
     */
    static List<ArchivedPicture> unmeasured(List<ArchivedPicture> all, ArchivedPicture here) {
        List<ArchivedPicture> after = new ArrayList<>();
        List<ArchivedPicture> before = new ArrayList<>();
        boolean passed = false;
        for (ArchivedPicture picture : all) {
            if (picture.id() == here.id()) {
                passed = true;
            } else if (picture.markCount() == 0
                    && picture.time().isPresent()
                    && picture.planetId().isPresent()
                    && picture.planetId().equals(here.planetId())) {
                (passed ? after : before).add(picture);
            }
        }
        after.addAll(before);
        return List.copyOf(after);
    }
}
