/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.stream.Collectors;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.drift.plan.PlanWish;
import oblate.drift.plan.SmearLimit;
import oblate.sky.GroundView;
import oblate.sky.TimeSpan;
import oblate.sky.Twilight;
import oblate.sky.UtcTime;
import oblate.workbench.look.Figures;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/** Times and figures of a plan as the screen says them. */
final class Say {
    private static final Texts TEXTS = Texts.of(Say.class);
    private static final int MINUTES_ABOVE_S = 180;
    private static final int HOURS_ABOVE_S = 10_800;

    private Say() {}

    /** To the nearest minute, {@code 21:07}. */
    static String clock(UtcTime time) {
        return time.plusClockSeconds(30).iso(0).substring(11, 16);
    }

    /** {@code 21:07–04:12 UTC}. */
    static String span(TimeSpan span) {
        return clock(span.from()) + "–" + clock(span.to()) + " UTC";
    }

    /** A time with its standard error, as fine as the error asks for: {@code 21:07 UTC ± 3 min}, {@code 21:07:24 UTC ± 4 s}. */
    static String time(UtcTime time, double sigmaS) {
        if (sigmaS < 60) {
            String iso = time.iso(0);
            return iso.substring(11, 19) + " UTC ± " + rounded(Math.max(1, sigmaS)) + " s";
        }
        double min = sigmaS / 60;
        String error = min < 90 ? rounded(min) + " min" : rounded(min / 60) + " h";
        if (Figures.decimalsFor(min) > 0) {
            return Figures.clockUt(time.toInstant()).replace(" UT", " UTC") + " ± " + error;
        }
        return clock(time) + " UTC ± " + error;
    }

    private static String rounded(double sigma) {
        return Figures.fixed(sigma, Figures.decimalsFor(sigma));
    }

    /** {@code 11.6 h}. */
    static String hours(double hours) {
        return Figures.fixed(hours, 1) + " h";
    }

    /** Length of a capture: {@code 99 s}, {@code 4.2 min}, {@code 3.1 h}. */
    static String length(double seconds) {
        if (seconds < MINUTES_ABOVE_S) {
            return Figures.fixed(seconds, 0) + " s";
        }
        return seconds < HOURS_ABOVE_S
                ? Figures.fixed(seconds / 60, 1) + " min"
                : Figures.fixed(seconds / 3600, 1) + " h";
    }

    /** {@code 51° high, air mass 1.28, dispersion 0.71″}; dispersion only where it can be told. */
    static String stand(GroundView view) {
        double dispersion = view.dispersionArcsec(Asked.SHORT_NM, Asked.LONG_NM);
        return TEXTS.text("stand", Figures.fixed(view.altitudeDeg(), 0), Figures.fixed(view.airMass(), 2))
                + (Double.isFinite(dispersion) ? TEXTS.text("stand.dispersion", Figures.fixed(dispersion, 2)) : "");
    }

    /** Which smear: {@code 1° of rotation}, {@code 1 px of 0.1″}. */
    static String smear(SmearLimit smear) {
        String amount = plain(smear.amount());
        return smear.measure() == SmearLimit.Measure.DEG
                ? TEXTS.text("smear.deg", amount)
                : TEXTS.text("smear.px", amount, plain(smear.scaleArcsecPerPx()));
    }

    private static String plain(double number) {
        return java.math.BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    /** The windows, or that there is none. */
    static String windows(PlanNight night) {
        return night.windows().isEmpty()
                ? TEXTS.text("window.none")
                : night.windows().stream().map(w -> span(w.span())).collect(Collectors.joining(", ")) + " ("
                        + hours(night.windowHours()) + ")";
    }

    /** What makes a window. */
    static String rule(PlanWish wish) {
        return TEXTS.text(
                "rule",
                Figures.fixed(wish.sunBelowDeg(), wish.sunBelowDeg() == Twilight.DAY.lowestDeg() ? 1 : 0),
                wish.planet().label(),
                Figures.fixed(wish.minAltitudeDeg(), 0));
    }

    /** Longitude with error and system; blank for a moon. */
    static String expected(PlanItem item) {
        return item.expected()
                .map(e -> SystemLabel.brief(e.system()) + " " + Figures.longitude(e.lonDeg(), e.sigmaLonDeg()))
                .orElse("");
    }
}
