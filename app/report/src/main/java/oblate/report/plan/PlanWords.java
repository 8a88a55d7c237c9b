/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.plan;

import java.util.Locale;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.drift.plan.PlanWish;
import oblate.sky.GroundView;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;

/** Turns of phrase that text and calendar share. */
final class PlanWords {
    private static final int MINUTES_ABOVE_S = 180;

    private PlanWords() {}

    /** To the nearest minute, "21:07". */
    static String clock(UtcTime time) {
        return time.plusClockSeconds(30).iso(0).substring(11, 16);
    }

    static String span(TimeSpan span) {
        return clock(span.from()) + " to " + clock(span.to());
    }

    static String of(String template, Object... parts) {
        return String.format(Locale.ROOT, template, parts);
    }

    /** "64 deg high, air mass 1.11, dispersion 0.6 arcsec (450 to 650 nm)". */
    static String stand(GroundView view, PlanWish wish) {
        double dispersion = view.dispersionArcsec(wish.shortNm(), wish.longNm());
        return of("%.0f deg high, air mass %.2f", view.altitudeDeg(), view.airMass())
                + (Double.isFinite(dispersion)
                        ? of(", dispersion %.1f arcsec (%.0f to %.0f nm)", dispersion, wish.shortNm(), wish.longNm())
                        : "");
    }

    /** "99 s at most (1 deg of rotation)"; blank where nothing limits it. */
    static String capture(PlanNight night, PlanWish wish) {
        if (night.longestCaptureS().isEmpty()) {
            return "";
        }
        double seconds = night.longestCaptureS().getAsDouble();
        String length = seconds < MINUTES_ABOVE_S
                ? of("%.0f s", seconds)
                : seconds < 10_800 ? of("%.1f min", seconds / 60) : of("%.1f h", seconds / 3600);
        return length + " at most, for " + wish.smear().said();
    }

    /** "+-3 min", for a feature; blank where a minute is told truly. */
    static String error(PlanItem item) {
        if (item.kind() == PlanItem.Kind.MOON && item.sigmaMin() < 0.5) {
            return "";
        }
        double min = item.sigmaMin();
        return min < 90 ? of("±%.0f min", Math.max(1, Math.ceil(min - 1e-9))) : of("±%.1f h", min / 60);
    }

    /** Where a feature is expected, or what else there is to know. */
    static String detail(PlanItem item) {
        return item.expected()
                .map(e -> of(
                                "longitude %.1f ± %.1f deg, %s",
                                e.lonDeg(), e.sigmaLonDeg(), e.system().label())
                        + (e.daysBeyondArc() >= 1 ? of(", %.0f d from its marks", e.daysBeyondArc()) : ""))
                .orElse(item.note());
    }

    /** What makes a window. */
    static String rule(PlanWish wish, String and) {
        double sun = wish.sunBelowDeg();
        return of(
                "the Sun below %s deg%s%s above %.0f deg",
                sun == Math.rint(sun) ? of("%.0f", sun) : of("%.1f", sun),
                and,
                wish.planet().label(),
                wish.minAltitudeDeg());
    }

    static String site(PlanWish wish) {
        double lat = wish.ground().site().latDeg();
        double lon = Math.IEEEremainder(wish.ground().site().lonEastDeg(), 360);
        return of(
                "%.2f deg %s, %.2f deg %s",
                Math.abs(lat), lat < 0 ? "south" : "north", Math.abs(lon), lon < 0 ? "west" : "east");
    }
}
