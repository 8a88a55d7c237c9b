/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.List;
import java.util.Optional;
import oblate.archive.StoredFit;
import oblate.disc.DiscFit;
import oblate.disc.Trust;
import oblate.workbench.EditHistory;
import oblate.workbench.PanelContext;

/** A person looked at a doubtful fit and finds it good, or takes it out of use; both can be taken back. */
final class FitAcceptance {
    private static final String BY_EYE = ", accepted by eye";
    private final PanelContext context;

    FitAcceptance(PanelContext context) {
        this.context = context;
    }

    /** Keeps the same fit as a trusted one, which says that a person accepted it. */
    void accept(long pictureId) {
        context.background()
                .quietly(
                        () -> context.archive()
                                .currentFit(pictureId)
                                .map(stored -> keep(stored, accepted(stored.fit()))),
                        kept -> kept.ifPresent(fit -> done(new Accepted(fit))));
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
        context.background()
                .quietly(
                        () -> {
                            Optional<StoredFit> fit = context.archive().currentFit(pictureId);
                            fit.ifPresent(f -> context.archive().withdrawFit(f.id(), "found wrong by eye"));
                            return fit;
                        },
                        fit -> fit.ifPresent(f -> done(new Withdrawn(f))));
    }

    private void done(EditHistory.Edit edit) {
        context.edits().add(edit);
        context.shelf().refresh();
    }

    private void later(Runnable deed) {
        context.background()
                .quietly(
                        () -> {
                            deed.run();
                            return true;
                        },
                        done -> context.shelf().refresh());
    }

    /** An acceptance; undoing withdraws the accepted fit, so that the doubtful one counts again. */
    private final class Accepted implements EditHistory.Edit {
        private StoredFit fit;

        Accepted(StoredFit fit) {
            this.fit = fit;
        }

        @Override
        public String what() {
            return "accepted fit";
        }

        @Override
        public void undo() {
            later(() -> context.archive().withdrawFit(fit.id(), "acceptance taken back"));
        }

        @Override
        public void redo() {
            later(() -> fit = keep(fit, fit.fit()));
        }
    }

    /** A withdrawal; undoing keeps the same fit anew. */
    private final class Withdrawn implements EditHistory.Edit {
        private StoredFit fit;

        Withdrawn(StoredFit fit) {
            this.fit = fit;
        }

        @Override
        public String what() {
            return "withdrawn fit";
        }

        @Override
        public void undo() {
            later(() -> fit = keep(fit, fit.fit()));
        }

        @Override
        public void redo() {
            later(() -> context.archive().withdrawFit(fit.id(), "found wrong by eye"));
        }
    }
}
