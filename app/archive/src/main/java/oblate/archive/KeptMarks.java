/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import org.jdbi.v3.core.Handle;

/** The marks of an archive: added, superseded, withdrawn, and what was settled by hand about them; never changed. */
final class KeptMarks {
    private final Ledger ledger;
    private final MarkRows rows;
    private final MarkLongitudes longitudes;
    private final SettlementRows settlements = new SettlementRows();
    private final HistoryRows history = new HistoryRows();

    KeptMarks(Ledger ledger, KeptPictures pictures, List<PlanetModel> planets) {
        this.ledger = ledger;
        this.rows = new MarkRows(ledger.dialect());
        this.longitudes = new MarkLongitudes(pictures, planets);
    }

    StoredMark add(NewMark mark) {
        return ledger.write((handle, now) -> {
            long id = rows.add(handle, mark, longitudes.of(handle, mark), Optional.empty(), now);
            history.add(handle, now, "marked", "mark " + id, mark.what() + " on picture " + mark.pictureId());
            return rows.byId(handle, id).orElseThrow();
        });
    }

    StoredMark supersede(long markId, NewMark mark, String reason) {
        return ledger.write((handle, now) -> {
            StoredMark before = current(handle, markId);
            if (before.mark().pictureId() != mark.pictureId()) {
                throw new ProblemException(ArchiveProblem.NO_SUCH_MARK, markId + " of picture " + mark.pictureId());
            }
            long id = supersede(handle, before, mark, reason, now);
            return rows.byId(handle, id).orElseThrow();
        });
    }

    /** Replaces a mark within a transaction; gives the number of the new one. */
    long supersede(Handle handle, StoredMark before, NewMark mark, String reason, Instant now) {
        Optional<MarkRows.Replacing> replacing = Optional.of(new MarkRows.Replacing(before.id(), reason));
        long id = rows.add(handle, mark, longitudes.of(handle, mark), replacing, now);
        history.add(handle, now, "superseded", "mark " + before.id(), "by mark " + id + ": " + reason);
        return id;
    }

    void withdraw(long markId, String reason) {
        ledger.write((handle, now) -> {
            withdraw(handle, current(handle, markId), reason, now);
            return markId;
        });
    }

    /** Takes a mark out of use within a transaction. */
    void withdraw(Handle handle, StoredMark mark, String reason, Instant now) {
        rows.withdraw(handle, mark.id(), reason, now);
        history.add(handle, now, "withdrawn", "mark " + mark.id(), reason);
    }

    private StoredMark current(Handle handle, long markId) {
        return rows.byId(handle, markId)
                .filter(StoredMark::isCurrent)
                .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_MARK, markId));
    }

    List<StoredMark> find(MarkSearch search) {
        return ledger.read(handle -> find(handle, search));
    }

    List<StoredMark> find(Handle handle, MarkSearch search) {
        return rows.find(handle, search);
    }

    void settleLink(LinkSettlement settlement) {
        ledger.write((handle, now) -> {
            StoredMark mark = rows.byId(handle, settlement.markId())
                    .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_MARK, settlement.markId()));
            settlements.add(handle, settlement, now);
            history.add(handle, now, "settled", "mark " + mark.id(), settlement.sentence());
            return mark.id();
        });
    }

    List<LinkSettlement> linkSettlements() {
        return ledger.read(settlements::current);
    }
}
