/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import oblate.drift.plan.Expected;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.drift.plan.PlanWish;
import oblate.report.ReportTable;
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
record PlanTable(Plan plan) {

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

    ReportTable table() {
        PlanWish wish = plan.wish();
        Sky sky = wish.ground().sky();
        TableOf<Row> t = new TableOf<>("Plan for " + wish.planet().label());
        facts(t);
        t.text("night", "date of the evening", r -> r.night().date().toString());
        t.text("time_utc", "when, as seen from the Earth's centre", r -> r.time()
                .iso(0));
        t.number(
                "sigma_min",
                "min",
                2,
                "standard error of the time",
                r -> r.sigmaS() == null ? null : (Double) (r.sigmaS() / 60));
        t.text("kind", "crossing, moon, window, planet or sun", Row::kind);
        t.text("subject", "feature, moon or body", Row::subject);
        t.text("what", "what happens", Row::what);
        t.text("observable", "yes or no", r -> r.whyNot().isEmpty() ? "yes" : "no");
        t.text("why_not", "what hinders", r -> r.whyNot().isEmpty() ? null : r.whyNot());
        t.number(
                "lon_deg",
                "deg",
                2,
                "expected longitude",
                r -> r.expected() == null ? null : (Double) r.expected().lonDeg());
        t.number(
                "sigma_lon_deg",
                "deg",
                2,
                "its standard error",
                r -> r.expected() == null ? null : (Double) r.expected().sigmaLonDeg());
        t.text(
                "system",
                "rotation system",
                r -> r.expected() == null ? null : r.expected().system().id());
        t.number(
                "days_beyond_arc",
                "d",
                2,
                "days outside the feature's marks",
                r -> r.expected() == null ? null : (Double) r.expected().daysBeyondArc());
        sky(t);
        t.number("longest_capture_s", "s", 1, "at the night's best moment, for the smear wanted", Row::longestS);
        t.text("ephemeris", "planetary ephemeris", r -> sky.ephemeris().name());
        t.text("leap_seconds", "table of leap seconds used", r -> sky.leapSeconds()
                .saidOf(r.time()));
        return t.rows(rows());
    }

    private void facts(TableOf<Row> t) {
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

    private void sky(TableOf<Row> t) {
        PlanWish wish = plan.wish();
        t.number("altitude_deg", "deg", 2, "of the planet, without refraction", r -> r.view()
                .altitudeDeg());
        t.number("azimuth_deg", "deg", 2, "from north through east", r -> r.view()
                .azimuthDeg());
        t.number("air_mass", "", 2, "1 in the zenith", r -> r.view().airMass());
        t.number(
                "dispersion_arcsec",
                "arcsec",
                2,
                "between " + wish.shortNm() + " and " + wish.longNm() + " nm",
                r -> r.view().dispersionArcsec(wish.shortNm(), wish.longNm()));
        t.number("sun_altitude_deg", "deg", 2, "without refraction", r -> r.view()
                .sunAltitudeDeg());
        t.number("sun_separation_deg", "deg", 1, "between planet and Sun", r -> r.view()
                .sunSeparationDeg());
        t.text("twilight", "how light it is", r -> r.view().twilight().word());
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
            of.sort(java.util.Comparator.comparing(Row::time));
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
                i.kind().name().toLowerCase(java.util.Locale.ROOT),
                i.subject(),
                i.what(),
                i.sigmaS(),
                i.view(),
                i.expected().orElse(null),
                i.whyNot(),
                null);
    }
}
