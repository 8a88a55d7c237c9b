/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import oblate.archive.FilingOutcome;
import oblate.base.ProblemException;
import oblate.workbench.Job;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** From dropped files to filed pictures: the sheet, the work in the background, what became of each. */
final class FilingDesk {
    private static final Texts TEXTS = Texts.of(FilingDesk.class);
    private final PanelContext context;
    private final SlideIn place;
    private final Runnable whenClosed;
    private Optional<FilingSheet> sheet = Optional.empty();
    private Optional<OutcomeList> outcomes = Optional.empty();

    /** What came of an order; without outcomes when all of it failed. */
    private record Result(List<FilingOutcome> outcomes, Optional<String> trouble) {}

    /**
     * @param place where the sheet slides in
     * @param whenClosed called when a sheet is taken away
     */
    FilingDesk(PanelContext context, SlideIn place, Runnable whenClosed) {
        this.context = context;
        this.place = place;
        this.whenClosed = whenClosed;
    }

    /** The sheet, made when files come for the first time. */
    private FilingSheet sheet() {
        if (sheet.isEmpty()) {
            sheet = Optional.of(new FilingSheet(context, this::file, this::close));
            place.hold(sheet.get());
        }
        return sheet.get();
    }

    private OutcomeList outcomes() {
        if (outcomes.isEmpty()) {
            outcomes = Optional.of(new OutcomeList(context, this::close));
            place.hold(outcomes.get());
        }
        return outcomes.get();
    }

    /** Takes on the colours of another theme. */
    void lookChanged() {
        sheet.ifPresent(FilingSheet::lookChanged);
        outcomes.ifPresent(OutcomeList::colour);
    }

    private void close() {
        place.close();
        whenClosed.run();
    }

    /** Asks what holds for files that were dropped or chosen. */
    void ask(List<Path> paths) {
        if (context.archive().isReadOnly()) {
            context.say(TEXTS.text("filing.read.only"));
            return;
        }
        if (!paths.isEmpty()) {
            place.open(sheet());
            sheet().ask(paths);
        }
    }

    private void file(FilingSheet.Order order) {
        place.close();
        AtomicReference<Result> result = new AtomicReference<>(new Result(List.of(), Optional.empty()));
        AtomicReference<Job> job = new AtomicReference<>();
        job.set(context.background()
                .run(
                        TEXTS.text("filing"),
                        progress -> {
                            try {
                                result.set(new Result(
                                        context.workbench().filing().file(order.paths(), order.facts(), progress),
                                        Optional.empty()));
                            } catch (ProblemException e) {
                                result.set(new Result(List.of(), Optional.of(e.getMessage())));
                            }
                            return true;
                        },
                        done -> {}));
        // Also when it was stopped: what was filed until then is shown.
        job.get().whenEnded(() -> ended(result.get(), job.get().isCancelled()));
    }

    private void ended(Result result, boolean stopped) {
        if (result.trouble().isPresent()) {
            // What was typed is still in the sheet: mend the trouble, press Enter again.
            place.open(sheet());
            sheet().sayTrouble(result.trouble().get());
            sheet().requestFocusInWindow();
            context.say(result.trouble().get());
            return;
        }
        outcomes().show(result.outcomes(), stopped);
        context.say(outcomes().sum());
        place.open(outcomes());
        outcomes().requestFocusInWindow();
        result.outcomes().stream()
                .filter(FilingOutcome.Filed.class::isInstance)
                .map(o -> ((FilingOutcome.Filed) o).picture().id())
                .findFirst()
                .ifPresent(context.selection()::choosePicture);
        context.shelf().refresh();
    }
}
