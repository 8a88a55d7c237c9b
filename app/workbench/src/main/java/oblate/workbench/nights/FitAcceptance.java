/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.List;
import java.util.Optional;
import oblate.archive.StoredFit;
import oblate.disc.DiscFit;
import oblate.disc.Trust;
import oblate.workbench.Edit;
import oblate.workbench.EditHistory;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** A person looked at a doubtful fit and finds it good, or takes it out of use; both can be taken back. */
final class FitAcceptance {
    private static final Texts TEXTS = Texts.of(FitAcceptance.class);
    private static final String BY_EYE = ", accepted by eye";
    private final PanelContext context;

    FitAcceptance(PanelContext context) {
        this.context = context;
    }

    /** Keeps the same fit as a trusted one, which says that a person accepted it. */
    void accept(long pictureId) {
        context.edits()
                .perform(
                        () -> {
                            Optional<StoredFit> before = context.archive().currentFit(pictureId);
                            Optional<StoredFit> kept = before.map(f -> keep(f, accepted(f.fit())));
                            return new EditHistory.Done<>(
                                    kept.map(f -> new Edit.FitKept(
                                            pictureId, before.map(StoredFit::id), f.id(), Edit.Origin.ACCEPTED)),
                                    pictureId);
                        },
                        done -> context.shelf().refresh(),
                        context::say);
    }

    private StoredFit keep(StoredFit stored, DiscFit fit) {
        return context.archive()
                .keepFit(
                        stored.pictureId(),
                        fit,
                        stored.ephemeris(),
                        context.workbench().software());
    }

    private static DiscFit accepted(DiscFit fit) {
        String method = fit.method().endsWith(BY_EYE) ? fit.method() : fit.method() + BY_EYE;
        return new DiscFit(
                fit.placement(),
                fit.covariance(),
                Trust.TRUSTED,
                List.of(),
                method,
                fit.channel(),
                fit.rmsPx(),
                fit.edgePoints(),
                fit.witnesses());
    }

    /** Takes the current fit out of use. */
    void withdraw(long pictureId) {
        context.edits()
                .perform(
                        () -> {
                            Optional<StoredFit> fit = context.archive().currentFit(pictureId);
                            fit.ifPresent(f -> context.archive().withdrawFit(f.id(), TEXTS.text("why.fit.wrong")));
                            return new EditHistory.Done<>(
                                    fit.map(f -> new Edit.FitWithdrawn(pictureId, f.id())), pictureId);
                        },
                        done -> context.shelf().refresh(),
                        context::say);
    }
}
