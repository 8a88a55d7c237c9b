/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.StoredMark;
import oblate.disc.Trust;
import oblate.workbench.words.Texts;

/** What would embarrass whoever sends a table of positions, one sentence each. Not on the event thread. */
final class Worries {
    private static final Texts TEXTS = Texts.of(Worries.class);
    private static final int NAMED = 3;
    private final Archive archive;

    Worries(Archive archive) {
        this.archive = archive;
    }

    List<String> of(List<StoredMark> marks) {
        Set<Long> measured = new HashSet<>();
        marks.forEach(m -> measured.add(m.mark().pictureId()));
        List<ArchivedPicture> pictures = measured.stream()
                .sorted()
                .flatMap(id -> archive.picture(id).stream())
                .toList();
        List<String> worries = new ArrayList<>();
        long unnamed = marks.stream().filter(m -> m.featureName().isEmpty()).count();
        tell(worries, "worry.unnamed", unnamed, "");
        long anonymous = pictures.stream().filter(p -> p.observer().isEmpty()).count();
        tell(worries, "worry.observer", anonymous, "");
        List<ArchivedPicture> doubtful =
                pictures.stream().filter(this::isDoubtful).toList();
        tell(worries, "worry.doubtful", doubtful.size(), names(doubtful));
        List<ArchivedPicture> torn =
                pictures.stream().filter(p -> !p.timeConflicts().isEmpty()).toList();
        tell(worries, "worry.conflict", torn.size(), names(torn));
        Set<Long> sent = archive.reportedPictures();
        tell(worries, "worry.sent", measured.stream().filter(sent::contains).count(), "");
        return worries;
    }

    private boolean isDoubtful(ArchivedPicture picture) {
        return archive.currentFit(picture.id())
                .filter(f -> f.fit().trust() == Trust.DOUBTFUL)
                .isPresent();
    }

    private static void tell(List<String> worries, String key, long count, String names) {
        if (count > 0) {
            worries.add(TEXTS.text(count == 1 ? key + ".one" : key, Long.toString(count), names));
        }
    }

    private static String names(List<ArchivedPicture> pictures) {
        String first = String.join(
                ", ", pictures.stream().limit(NAMED).map(ArchivedPicture::name).toList());
        return pictures.size() > NAMED
                ? TEXTS.text("worry.more", first, Integer.toString(pictures.size() - NAMED))
                : first;
    }
}
