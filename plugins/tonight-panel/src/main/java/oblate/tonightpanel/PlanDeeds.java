/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.Component;
import java.awt.Toolkit;
import java.awt.datatransfer.StringSelection;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.YearMonth;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import oblate.drift.plan.Plan;
import oblate.report.ReportFormat;
import oblate.report.plan.PlanCalendar;
import oblate.report.plan.PlanTable;
import oblate.report.plan.PlanText;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** What may be done with the plan that is shown: into a calendar, a table, or onto the clipboard; the same files as the command line writes. */
final class PlanDeeds {
    private static final Texts TEXTS = Texts.of(PlanDeeds.class);
    private final PanelContext context;
    private final Clock clock;
    private final Supplier<Optional<Plan>> plan;
    private final Supplier<String> placeName;
    private final PlanFiles files;

    PlanDeeds(
            PanelContext context,
            Component owner,
            Clock clock,
            Supplier<Optional<Plan>> plan,
            Supplier<String> placeName) {
        this.context = context;
        this.clock = clock;
        this.plan = plan;
        this.placeName = placeName;
        files = new PlanFiles(context, owner);
    }

    private void withPlan(Consumer<Plan> deed) {
        plan.get().ifPresentOrElse(deed, () -> context.say(TEXTS.text("noplan")));
    }

    private static String fileName(Plan plan, String suffix) {
        String span = plan.wish().isOneNight()
                ? plan.wish().first().toString()
                : YearMonth.from(plan.wish().first()).toString();
        return plan.wish().planet().id() + "-" + span + suffix;
    }

    void saveCalendar() {
        String where = placeName.get();
        withPlan(shown -> files.save(
                TEXTS.text("deed.calendar"),
                fileName(shown, ".ics"),
                () -> PlanCalendar.of(shown, where, clock.instant())));
    }

    void copyText() {
        withPlan(shown -> {
            Toolkit.getDefaultToolkit()
                    .getSystemClipboard()
                    .setContents(new StringSelection(PlanText.of(shown, placeName.get())), null);
            context.say(TEXTS.text("copied"));
        });
    }

    void saveCsv() {
        Optional<ReportFormat> csv = context.workbench().reportFormats().stream()
                .filter(f -> f.id().equals("csv"))
                .findFirst();
        if (csv.isEmpty()) {
            context.say(TEXTS.text("nocsv"));
            return;
        }
        withPlan(shown -> files.save(TEXTS.text("deed.csv"), fileName(shown, ".csv"), () -> written(csv.get(), shown)));
    }

    private static String written(ReportFormat format, Plan plan) {
        StringWriter out = new StringWriter();
        try {
            format.write(new PlanTable(plan).table(), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }
}
