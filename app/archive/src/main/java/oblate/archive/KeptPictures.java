/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import oblate.base.ProblemException;
import oblate.image.TimeClaim;
import org.jdbi.v3.core.Handle;

/** The pictures of an archive: entered, found, and what people say of them afterwards. */
final class KeptPictures {
    private static final Pattern NUMBER = Pattern.compile("[0-9]{1,18}");
    private static final Pattern START_OF_SHA = Pattern.compile("[0-9a-f]{8,64}");

    private final Ledger ledger;
    private final PictureRows rows;
    private final PictureEntering entering = new PictureEntering();
    private final PictureCorrecting correcting = new PictureCorrecting();
    private final HistoryRows history = new HistoryRows();

    KeptPictures(Ledger ledger) {
        this.ledger = ledger;
        this.rows = new PictureRows(ledger.dialect());
    }

    List<ArchivedPicture> find(PictureSearch search) {
        return ledger.read(handle -> rows.find(handle, search));
    }

    Optional<ArchivedPicture> byId(long id) {
        return ledger.read(handle -> rows.byId(handle, id));
    }

    Optional<ArchivedPicture> bySha(String sha256) {
        return ledger.read(handle -> rows.bySha(handle, sha256));
    }

    boolean isEntered(String relativePath) {
        return ledger.read(handle -> !rows.called(handle, relativePath, false).isEmpty());
    }

    ArchivedPicture called(String word) {
        return ledger.read(handle -> called(handle, word));
    }

    private ArchivedPicture called(Handle handle, String word) {
        if (NUMBER.matcher(word).matches()) {
            Optional<ArchivedPicture> byNumber = rows.byId(handle, Long.parseLong(word));
            if (byNumber.isPresent()) {
                return byNumber.get();
            }
        }
        String lower = word.toLowerCase(Locale.ROOT);
        boolean maybeSha = START_OF_SHA.matcher(lower).matches();
        List<ArchivedPicture> found = rows.called(handle, maybeSha ? lower : word, maybeSha);
        if (found.isEmpty()) {
            throw new ProblemException(ArchiveProblem.NO_SUCH_PICTURE, word);
        }
        if (found.size() > 1) {
            throw new ProblemException(ArchiveProblem.AMBIGUOUS_PICTURE, word, found.size());
        }
        return found.get(0);
    }

    /** A picture that has to be there. */
    ArchivedPicture existing(Handle handle, long id) {
        return rows.byId(handle, id).orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_PICTURE, id));
    }

    Optional<ArchivedPicture> enter(PictureEntry entry) {
        return ledger.write((handle, now) -> entering.enter(handle, entry, now).flatMap(id -> rows.byId(handle, id)));
    }

    List<TimeClaim> timeClaims(long id) {
        return ledger.read(handle -> new ClaimRows().ofPicture(handle, id));
    }

    void settleTime(long id, String reason) {
        ledger.write((handle, now) -> {
            correcting.settleTime(handle, existing(handle, id), reason, now);
            return id;
        });
    }

    void reopenTime(long id, List<String> conflicts, String reason) {
        ledger.write((handle, now) -> {
            correcting.reopenTime(handle, existing(handle, id), conflicts, reason, now);
            return id;
        });
    }

    void noteReported(List<Long> ids, String where) {
        ledger.write((handle, now) -> {
            ids.forEach(id -> {
                existing(handle, id);
                history.add(handle, now, HistoryRows.REPORTED, "picture " + id, where);
            });
            return ids.size();
        });
    }

    Set<Long> reported() {
        return ledger.read(history::reportedPictures);
    }
}
