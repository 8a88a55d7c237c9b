/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.plan;

import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.drift.plan.PlanWish;
import oblate.sky.DarkWindow;
import oblate.sky.GroundCourse;
import oblate.sky.GroundEvent;
import oblate.sky.UtcTime;

/** A plan to read at the telescope: one screen for a night, a few lines per night for several. */
public final class PlanText {
    private final Plan plan;
    private final PlanWish wish;
    private final String place;
    private final TextLines out = new TextLines();

    private PlanText(Plan plan, String place) {
        this.plan = plan;
        this.wish = plan.wish();
        this.place = place;
    }

    /**
     * The text, with lines of at most 96 characters.
     *
     * @param place name of the site as people know it; blank for one without
     */
    public static String of(Plan plan, String place) {
        PlanText text = new PlanText(plan, place);
        if (plan.wish().isOneNight()) {
            text.oneNight(plan.nights().get(0));
        } else {
            text.manyNights();
        }
        text.foot();
        return text.out.toString();
    }

    /** A line in the list. */
    private record Line(UtcTime time, String error, String what, String altitude, String more) {}

    private void oneNight(PlanNight night) {
        out.line(
                "%s, night of %s to %s, all times UTC",
                wish.planet().label(),
                night.date(),
                night.date().plusDays(1).toString().substring(8));
        out.line("%s", where());
        out.blank();
        head(night);
        if (night.windows().isEmpty()) {
            return;
        }
        out.blank();
        List<Line> list = new ArrayList<>();
        for (DarkWindow window : night.windows()) {
            list.add(new Line(
                    window.span().from(),
                    "",
                    "-- window opens",
                    altitude(window.track().get(0)),
                    ""));
            list.add(new Line(
                    window.span().to(),
                    "",
                    "-- window closes",
                    altitude(window.track().get(window.track().size() - 1)),
                    ""));
        }
        night.best()
                .filter(b -> night.windows().stream()
                        .noneMatch(w -> b.time().equals(w.span().from())
                                || b.time().equals(w.span().to())))
                .ifPresent(b -> list.add(new Line(b.time(), "", "-- highest", altitude(b), "")));
        night.observable()
                .forEach(i ->
                        list.add(new Line(i.time(), PlanWords.error(i), i.what(), altitude(i.view()), shortDetail(i))));
        list.sort(Comparator.comparing(Line::time));
        int wide = list.stream().mapToInt(l -> l.what().length()).max().orElse(0);
        int most = Math.min(wide, 44);
        for (Line l : list) {
            out.line(
                    "  %s %-8s  %-" + most + "s  %7s  %s",
                    PlanWords.clock(l.time()),
                    l.error(),
                    cut(l.what(), most),
                    l.altitude(),
                    l.more());
        }
        if (night.observable().isEmpty()) {
            out.line("  Neither a followed feature on the meridian nor a moon event falls into the window.");
        }
        missed(night);
    }

    private String where() {
        return (place.isBlank() ? "" : place + ", ") + PlanWords.site(wish);
    }

    private void head(PlanNight night) {
        String planet = wish.planet().label();
        if (night.windows().isEmpty()) {
            out.item("Window", PlanWords.of("none: at no time is %s", PlanWords.rule(wish, " and ")));
            out.item(
                    "",
                    plan.nextWindow()
                            .map(d -> "the next such night is about " + d)
                            .orElse("no such night within two years"));
        } else {
            out.item(
                    "Window",
                    night.windows().stream().map(w -> PlanWords.span(w.span())).collect(Collectors.joining(" and "))
                            + PlanWords.of(" (%.1f h): %s", night.windowHours(), PlanWords.rule(wish, ", ")));
        }
        out.item(planet, course(night.course()));
        out.item("Sun", sun(night.sun()));
        night.best()
                .ifPresent(b -> out.item(
                        "Best hour", PlanWords.span(night.bestHour().orElseThrow()) + ": " + PlanWords.stand(b, wish)));
        String capture = PlanWords.capture(night, wish);
        if (!capture.isEmpty()) {
            out.item("Capture", capture);
        }
    }

    private static String course(GroundCourse course) {
        if (course.neverUp()) {
            return "does not rise";
        }
        List<String> said = new ArrayList<>();
        if (course.alwaysUp()) {
            said.add("never sets");
        }
        for (GroundEvent e : course.events()) {
            switch (e.kind()) {
                case RISE -> said.add("rises " + PlanWords.clock(e.time()));
                case SET -> said.add("sets " + PlanWords.clock(e.time()));
                case UPPER_TRANSIT ->
                    said.add(PlanWords.of("highest %s at %.0f deg", PlanWords.clock(e.time()), e.altitudeDeg()));
                default -> {}
            }
        }
        return String.join(", ", said);
    }

    private static String sun(GroundCourse sun) {
        if (sun.alwaysUp()) {
            return "does not set";
        }
        List<String> said = new ArrayList<>();
        if (sun.neverUp()) {
            said.add("does not rise");
        }
        pair(sun, GroundEvent.Kind.SET, GroundEvent.Kind.RISE, "sets", "rises").ifPresent(said::add);
        pair(sun, GroundEvent.Kind.CIVIL_DUSK, GroundEvent.Kind.CIVIL_DAWN, "civil dusk", "dawn")
                .ifPresent(said::add);
        pair(sun, GroundEvent.Kind.ASTRONOMICAL_DUSK, GroundEvent.Kind.ASTRONOMICAL_DAWN, "full night from", "to")
                .ifPresentOrElse(said::add, () -> said.add("no full night"));
        return String.join("; ", said);
    }

    private static Optional<String> pair(
            GroundCourse sun, GroundEvent.Kind down, GroundEvent.Kind up, String first, String second) {
        Optional<String> one = sun.first(down).map(e -> first + " " + PlanWords.clock(e.time()));
        Optional<String> other = sun.first(up).map(e -> second + " " + PlanWords.clock(e.time()));
        return one.isEmpty()
                ? other
                : other.isEmpty() ? one : Optional.of(one.get() + (second.equals("to") ? " " : ", ") + other.get());
    }

    /** Features whose crossings all fall outside the window, each with the crossing nearest to it. */
    private void missed(PlanNight night) {
        List<PlanItem> crossings = night.items().stream()
                .filter(i -> i.kind() == PlanItem.Kind.CROSSING)
                .toList();
        List<String> seen = crossings.stream()
                .filter(PlanItem::isObservable)
                .map(PlanItem::subject)
                .toList();
        Comparator<PlanItem> nearness = Comparator.comparingDouble(i -> awayS(night, i));
        List<String> said = crossings.stream()
                .filter(i -> !seen.contains(i.subject()))
                .collect(Collectors.groupingBy(PlanItem::subject, TreeMap::new, Collectors.minBy(nearness)))
                .values()
                .stream()
                .flatMap(Optional::stream)
                .map(i -> TextLines.together(i.subject() + " " + PlanWords.clock(i.time()) + " (" + i.whyNot() + ")"))
                .toList();
        if (!said.isEmpty()) {
            out.blank();
            out.wrapped("  Outside the window: ", String.join(", ", said));
        }
    }

    /** Seconds from a window's nearest end. */
    private static double awayS(PlanNight night, PlanItem item) {
        return night.windows().stream()
                .mapToDouble(w -> Math.max(
                        w.span().from().clockSecondsSince(item.time()),
                        item.time().clockSecondsSince(w.span().to())))
                .min()
                .orElse(0);
    }

    private void manyNights() {
        out.line("%s, nights of %s to %s, all times UTC", wish.planet().label(), wish.first(), wish.last());
        out.line("%s", where());
        out.wrapped(
                "Window: ",
                PlanWords.rule(wish, ", ") + ". After it the best moment, its altitude, the longest capture for "
                        + wish.smear().said()
                        + ", the number of moon events; below it crossings of the meridian, errors in minutes.");
        out.blank();
        for (PlanNight night : plan.nights()) {
            String day =
                    night.date() + " " + night.date().getDayOfWeek().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
            if (night.windows().isEmpty()) {
                out.line("%s  no window", day);
                continue;
            }
            long moons = night.observable().stream()
                    .filter(i -> i.kind() == PlanItem.Kind.MOON)
                    .count();
            out.line(
                    "%s  %s  best %s %2.0f deg  %s%s",
                    day,
                    night.windows().stream().map(w -> PlanWords.span(w.span())).collect(Collectors.joining(" and ")),
                    PlanWords.clock(night.best().orElseThrow().time()),
                    night.best().orElseThrow().altitudeDeg(),
                    night.longestCaptureS().isPresent()
                            ? PlanWords.of("%.0f s", night.longestCaptureS().getAsDouble())
                            : "",
                    wish.planet().moons().isEmpty() ? "" : "  moons " + moons);
            List<String> crossings = night.observable().stream()
                    .filter(i -> i.kind() == PlanItem.Kind.CROSSING)
                    .map(i -> TextLines.together(PlanWords.clock(i.time()) + " " + i.subject() + " "
                            + PlanWords.error(i).replace(" min", "")))
                    .toList();
            if (!crossings.isEmpty()) {
                out.wrapped("                ", String.join(", ", crossings));
            }
        }
        if (!plan.hasWindow()) {
            out.line(
                    "%s",
                    plan.nextWindow()
                            .map(d -> "The next night with a window is about " + d + ".")
                            .orElse("No night with a window within two years."));
        }
    }

    private void foot() {
        if (!plan.untimed().isEmpty() || !plan.remarks().isEmpty()) {
            out.blank();
        }
        plan.untimed().forEach(u -> out.wrapped("  No time for: ", u.feature() + ": " + u.why()));
        plan.remarks().forEach(r -> out.wrapped("  ", r));
        out.blank();
        plan.cautions().forEach(c -> out.wrapped("  ", c));
    }

    private static String altitude(oblate.sky.GroundView view) {
        return PlanWords.of("%.0f deg", view.altitudeDeg());
    }

    private static String shortDetail(PlanItem item) {
        return item.expected()
                .map(e -> PlanWords.of(
                                "lon %.1f ± %.1f %s",
                                e.lonDeg(), e.sigmaLonDeg(), e.system().label())
                        + (e.daysBeyondArc() >= 1 ? PlanWords.of(", %.0f d old", e.daysBeyondArc()) : ""))
                .orElse(item.note());
    }

    private static String cut(String text, int most) {
        return text.length() <= most ? text : text.substring(0, most - 1) + "…";
    }
}
