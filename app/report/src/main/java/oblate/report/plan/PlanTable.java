/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import oblate.drift.plan.Expected;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.drift.plan.PlanWish;
import oblate.report.Column;
import oblate.report.ReportTable;
import oblate.report.TableDraft;
import oblate.sky.DarkWindow;
import oblate.sky.GroundEvent;
import oblate.sky.GroundView;
import oblate.sky.Sky;
import oblate.sky.UtcTime;

/**
 * A plan as a table for programs: all that happens, observable or not, in order of time.
 *
 * @param plan the plan
 */
public record PlanTable(Plan plan) {

    /** One line; parts that a kind of line has not are null. */
    private record Row(
            PlanNight night,
            UtcTime time,
            String kind,
            String subject,
            String what,
            Double sigmaS,
            GroundView view,
            Expected expected,
            String whyNot,
            Double longestS) {}

    /** The table, with what holds for all of it. */
    public ReportTable table() {
        PlanWish wish = plan.wish();
        Sky sky = wish.ground().sky();
        TableDraft<Row> t = new TableDraft<>("Plan for " + wish.planet().label());
        facts(t);
        text(t, "night", "date of the evening", r -> r.night().date().toString());
        text(t, "time_utc", "when, as seen from the Earth's centre", r -> r.time()
                .iso(0));
        number(
                t,
                "sigma_min",
                "min",
                2,
                "standard error of the time",
                r -> r.sigmaS() == null ? null : (Double) (r.sigmaS() / 60));
        text(t, "kind", "crossing, moon, window, planet or sun", Row::kind);
        text(t, "subject", "feature, moon or body", Row::subject);
        text(t, "what", "what happens", Row::what);
        text(t, "observable", "yes or no", r -> r.whyNot().isEmpty() ? "yes" : "no");
        text(t, "why_not", "what hinders", r -> r.whyNot().isEmpty() ? null : r.whyNot());
        number(
                t,
                "lon_deg",
                "deg",
                2,
                "expected longitude",
                r -> r.expected() == null ? null : (Double) r.expected().lonDeg());
        number(
                t,
                "sigma_lon_deg",
                "deg",
                2,
                "its standard error",
                r -> r.expected() == null ? null : (Double) r.expected().sigmaLonDeg());
        text(
                t,
                "system",
                "rotation system",
                r -> r.expected() == null ? null : r.expected().system().id());
        number(
                t,
                "days_beyond_arc",
                "d",
                2,
                "days outside the feature's marks",
                r -> r.expected() == null ? null : (Double) r.expected().daysBeyondArc());
        sky(t);
        number(t, "longest_capture_s", "s", 1, "at the night's best moment, for the smear wanted", Row::longestS);
        text(t, "ephemeris", "planetary ephemeris", r -> sky.ephemeris().name());
        text(t, "leap_seconds", "table of leap seconds used", r -> sky.leapSeconds()
                .saidOf(r.time()));
        return t.rows(rows());
    }

    private void facts(TableDraft<Row> t) {
        PlanWish wish = plan.wish();
        t.fact("planet", wish.planet().label())
                .fact(
                        "site",
                        "latitude " + wish.ground().site().latDeg() + " deg, longitude "
                                + wish.ground().site().lonEastDeg() + " deg east")
                .fact(
                        "window",
                        "Sun below " + wish.sunBelowDeg() + " deg, planet above " + wish.minAltitudeDeg() + " deg")
                .fact("smear", wish.smear().said());
        plan.untimed().forEach(u -> t.fact("no time for " + u.feature(), u.why()));
        int number = 0;
        for (String remark : plan.remarks()) {
            t.fact("remark " + ++number, remark);
        }
        number = 0;
        for (String caution : plan.cautions()) {
            t.fact("caution " + ++number, caution);
        }
    }

    private void sky(TableDraft<Row> t) {
        PlanWish wish = plan.wish();
        number(t, "altitude_deg", "deg", 2, "of the planet, without refraction", r -> r.view()
                .altitudeDeg());
        number(t, "azimuth_deg", "deg", 2, "from north through east", r -> r.view()
                .azimuthDeg());
        number(t, "air_mass", "", 2, "1 in the zenith", r -> r.view().airMass());
        number(
                t,
                "dispersion_arcsec",
                "arcsec",
                2,
                "between " + wish.shortNm() + " and " + wish.longNm() + " nm",
                r -> r.view().dispersionArcsec(wish.shortNm(), wish.longNm()));
        number(t, "sun_altitude_deg", "deg", 2, "without refraction", r -> r.view()
                .sunAltitudeDeg());
        number(t, "sun_separation_deg", "deg", 1, "between planet and Sun", r -> r.view()
                .sunSeparationDeg());
        text(t, "twilight", "how light it is", r -> r.view().twilight().word());
    }

    private List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        for (PlanNight night : plan.nights()) {
            List<Row> of = new ArrayList<>();
            night.sun().events().forEach(e -> of.add(course(night, "sun", "sun", e)));
            night.course()
                    .events()
                    .forEach(e ->
                            of.add(course(night, "planet", plan.wish().planet().id(), e)));
            for (DarkWindow window : night.windows()) {
                of.add(window(night, "window opens", window.track().get(0), null));
                of.add(window(
                        night,
                        "window closes",
                        window.track().get(window.track().size() - 1),
                        null));
            }
            Double longest = night.longestCaptureS().isPresent()
                    ? (Double) night.longestCaptureS().getAsDouble()
                    : null;
            night.best().ifPresent(b -> of.add(window(night, "best in window", b, longest)));
            night.items().forEach(i -> of.add(item(night, i)));
            of.sort(Comparator.comparing(Row::time));
            rows.addAll(of);
        }
        return rows;
    }

    private Row course(PlanNight night, String kind, String subject, GroundEvent e) {
        GroundView view = plan.wish().ground().view(plan.wish().planet(), e.time());
        return new Row(night, e.time(), kind, subject, e.kind().word(), e.sigmaS(), view, null, "", null);
    }

    private Row window(PlanNight night, String what, GroundView view, Double longestS) {
        return new Row(night, view.time(), "window", plan.wish().planet().id(), what, null, view, null, "", longestS);
    }

    private static Row item(PlanNight night, PlanItem i) {
        return new Row(
                night,
                i.time(),
                i.kind().name().toLowerCase(Locale.ROOT),
                i.subject(),
                i.what(),
                i.sigmaS(),
                i.view(),
                i.expected().orElse(null),
                i.whyNot(),
                null);
    }

    private static void text(TableDraft<Row> t, String name, String description, Function<Row, String> value) {
        t.column(new Column(name, name, "", "", description, -1), value);
    }

    /** A column of numbers; what is not a number is not there. */
    private static void number(
            TableDraft<Row> t,
            String name,
            String unit,
            int decimals,
            String description,
            Function<Row, Double> value) {
        t.column(new Column(name, name, unit, "", description, decimals), row -> {
            Double number = value.apply(row);
            return number == null || !Double.isFinite(number) ? null : number;
        });
    }
}
