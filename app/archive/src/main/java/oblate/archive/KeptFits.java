/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;
import oblate.disc.DiscFit;

/** The disc fits of an archive: kept, withdrawn, never changed. */
final class KeptFits {
    private final Ledger ledger;
    private final KeptPictures pictures;
    private final FitRows rows = new FitRows();

    KeptFits(Ledger ledger, KeptPictures pictures) {
        this.ledger = ledger;
        this.pictures = pictures;
    }

    StoredFit keep(long pictureId, DiscFit fit, String ephemeris, String software) {
        return ledger.write((handle, now) -> {
            pictures.existing(handle, pictureId);
            return rows.add(handle, new FitRows.NewFit(pictureId, fit, ephemeris, software), now);
        });
    }

    void withdraw(long fitId, String reason) {
        ledger.write((handle, now) -> {
            StoredFit fit = rows.pictureOf(handle, fitId).map(p -> rows.ofPicture(handle, p)).stream()
                    .flatMap(List::stream)
                    .filter(f -> f.id() == fitId && f.withdrawnReason().isEmpty())
                    .findFirst()
                    .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_FIT_TO_WITHDRAW, fitId));
            rows.withdraw(handle, fit, reason, now);
            return fitId;
        });
    }

    Optional<StoredFit> current(long pictureId) {
        return ledger.read(handle -> rows.current(handle, pictureId));
    }

    List<StoredFit> ofPicture(long pictureId) {
        return ledger.read(handle -> rows.ofPicture(handle, pictureId));
    }

    List<FitSummary> summaries() {
        return ledger.read(handle -> new FitSummaryRows().all(handle));
    }
}
