/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.plan;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.sky.DarkWindow;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;

/** A plan as iCalendar, RFC 5545: one entry per window and per thing that can be observed. Times are UTC; entries keep their UID in a newer plan. */
public final class PlanCalendar {
    private static final double LEAST_CROSSING_S = 300;
    private static final double LEAST_LENGTH_S = 60;

    private final Plan plan;
    private final String place;
    private final Instant madeAt;
    private final CalendarLines lines = new CalendarLines();

    private PlanCalendar(Plan plan, String place, Instant madeAt) {
        this.plan = plan;
        this.place = place;
        this.madeAt = madeAt;
    }

    /**
     * The calendar's text, with CR LF line ends, to be written in UTF-8.
     *
     * @param place name of the site as people know it
     * @param madeAt when the plan was made
     */
    public static String of(Plan plan, String place, Instant madeAt) {
        PlanCalendar calendar = new PlanCalendar(plan, place, madeAt);
        calendar.write();
        return calendar.lines.toString();
    }

    private void write() {
        lines.plain("BEGIN", "VCALENDAR")
                .plain("VERSION", "2.0")
                .plain("PRODID", "-//Oblate//Plan of nights//EN")
                .plain("CALSCALE", "GREGORIAN");
        for (PlanNight night : plan.nights()) {
            int number = 0;
            for (DarkWindow window : night.windows()) {
                window(night, window, ++number);
            }
            night.observable().forEach(item -> item(night, item));
        }
        lines.plain("END", "VCALENDAR");
    }

    private void window(PlanNight night, DarkWindow window, int number) {
        List<String> said = new ArrayList<>();
        said.add("Window: " + PlanWords.rule(plan.wish(), ", ") + ".");
        night.best()
                .filter(b -> window.span().contains(b.time()))
                .ifPresent(b ->
                        said.add("Best hour " + PlanWords.span(night.bestHour().orElseThrow()) + " UTC, "
                                + PlanWords.stand(b, plan.wish()) + "."));
        String capture = PlanWords.capture(night, plan.wish());
        if (!capture.isEmpty()) {
            said.add("Capture: " + capture + ".");
        }
        said.addAll(plan.cautions());
        entry(
                night,
                "window/" + number,
                plan.wish().planet().label() + " can be observed",
                window.span(),
                String.join("\n", said),
                "WINDOW");
    }

    private void item(PlanNight night, PlanItem item) {
        List<String> said = new ArrayList<>();
        said.add((PlanWords.clock(item.time()) + " UTC " + PlanWords.error(item)).strip());
        said.add(PlanWords.stand(item.view(), plan.wish()) + ", "
                + item.view().twilight().word());
        said.add(PlanWords.detail(item));
        said.removeIf(String::isBlank);
        boolean crossing = item.kind() == PlanItem.Kind.CROSSING;
        double half = Math.max(LEAST_CROSSING_S, item.sigmaS());
        TimeSpan span = crossing
                ? new TimeSpan(item.time().plusClockSeconds(-half), item.time().plusClockSeconds(half))
                : item.span();
        entry(
                night,
                item.key(),
                plan.wish().planet().label() + ": " + item.what(),
                span,
                String.join("\n", said).strip(),
                item.kind().name());
    }

    private void entry(PlanNight night, String key, String summary, TimeSpan span, String said, String category) {
        UtcTime least = span.from().plusClockSeconds(LEAST_LENGTH_S);
        UtcTime to = span.to().compareTo(least) < 0 ? least : span.to();
        lines.plain("BEGIN", "VEVENT")
                .plain("UID", uid(night, key))
                .time("DTSTAMP", madeAt)
                .time("DTSTART", span.from().toInstant())
                .time("DTEND", to.toInstant())
                .text("SUMMARY", summary)
                .text("DESCRIPTION", said)
                .text("LOCATION", place.isBlank() ? PlanWords.site(plan.wish()) : place)
                .plain(
                        "GEO",
                        PlanWords.of(
                                "%.4f;%.4f",
                                plan.wish().ground().site().latDeg(),
                                Math.IEEEremainder(plan.wish().ground().site().lonEastDeg(), 360)))
                .text("CATEGORIES", category)
                .plain("TRANSP", "TRANSPARENT")
                .plain("END", "VEVENT");
    }

    /** The same for the same thing of the same night and planet over the same place, to 0.01 deg. */
    private String uid(PlanNight night, String key) {
        String name = PlanWords.of(
                "oblate/plan/%s/%.2f/%.2f/%s/%s",
                plan.wish().planet().id(),
                plan.wish().ground().site().latDeg(),
                Math.IEEEremainder(plan.wish().ground().site().lonEastDeg(), 360),
                night.date(),
                key);
        return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)).toString();
    }
}
