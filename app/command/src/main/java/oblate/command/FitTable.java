/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import oblate.disc.ClockFinding;
import oblate.disc.DiscFit;
import oblate.disc.DiscFitter;
import oblate.disc.FitOutcome;
import oblate.disc.MoonFinding;
import oblate.disc.Witness;
import oblate.report.ReportTable;

/** The table of {@code oblate fit}. */
final class FitTable {
    private final boolean channels;

    /** @param channels whether to tell of red and blue */
    FitTable(boolean channels) {
        this.channels = channels;
    }

    /**
     * One picture and what came of its fit.
     *
     * @param subject the picture
     * @param outcome a disc or a refusal
     * @param moons what the moons beside it said; empty when none did
     * @param shifts where red and blue lie against green; empty unless asked for, or grey
     */
    record Row(
            Subject subject, FitOutcome outcome, Optional<MoonFinding> moons, List<DiscFitter.ChannelShift> shifts) {}

    ReportTable of(List<Row> rows) {
        TableOf<Row> t = new TableOf<>("Disc fits");
        t.fact("pixels", "centres are whole numbers, origin top left as displayed, x right, y down");
        t.fact("pole angle", "direction of the IAU north pole from straight up, counter-clockwise as displayed");
        t.text("picture", "picture", r -> r.subject().name());
        t.text("planet", "planet", r -> r.subject().disc().planet().id());
        t.text(
                "mid_time_utc",
                "middle of the capture",
                r -> r.subject().disc().time().iso());
        number(t, "centre_x_px", "px", 3, f -> f.placement().centreXPx());
        number(t, "centre_y_px", "px", 3, f -> f.placement().centreYPx());
        number(t, "equatorial_radius_px", "px", 3, f -> f.placement().equatorialRadiusPx());
        number(t, "pole_angle_deg", "deg", 3, f -> f.placement().poleAngleDeg());
        t.text(
                "mirrored",
                "mirror image of the sky",
                r -> fit(r) == null ? null : fit(r).placement().mirrored() ? "yes" : "no");
        number(t, "sigma_centre_px", "px", 3, f -> f.covariance().sigmaCentrePx());
        number(t, "sigma_radius_px", "px", 3, f -> f.covariance().sigmaRadiusPx());
        number(t, "sigma_pole_angle_deg", "deg", 3, f -> f.covariance().sigmaPoleAngleDeg());
        t.text("trust", "trusted, doubtful or refused", FitTable::trust);
        t.text("reason", "why not trusted", FitTable::reason);
        number(t, "scale_arcsec_px", "arcsec/px", 5, null);
        t.text("method", "how it was fitted", r -> fit(r) == null ? null : fit(r).method() + ", " + fit(r).channel());
        probability(t, "mirrored_probability", "mirrored", "probability that it is mirrored, where nobody said");
        probability(t, "north_probability", "north end", "probability that the end called north is, where nobody said");
        t.text("moons_found", "moons found beside the disc", r -> r.moons()
                .map(m -> m.matches().stream().map(MoonFinding.Match::moon).collect(Collectors.joining(" ")))
                .orElse(null));
        t.number("clock_offset_s", "s", 0, "time that fits the moons less the stated one", r -> clock(r).map(
                        ClockFinding::offsetS)
                .orElse(null));
        t.number("sigma_clock_offset_s", "s", 0, "its standard error", r -> clock(r).map(ClockFinding::sigmaS)
                .orElse(null));
        t.text("clock_says", "agrees, disagrees or undecided", r -> clock(r).map(
                        c -> c.verdict().name().toLowerCase(Locale.ROOT))
                .orElse(null));
        if (channels) {
            addChannels(t);
        }
        return t.rows(rows);
    }

    private static void addChannels(TableOf<Row> t) {
        for (String channel : List.of("red", "blue")) {
            t.number(channel + "_right_px", "px", 3, channel + " right of green", r -> shift(r, channel)
                    .map(DiscFitter.ChannelShift::rightPx)
                    .orElse(null));
            t.number(channel + "_down_px", "px", 3, channel + " below green", r -> shift(r, channel)
                    .map(DiscFitter.ChannelShift::downPx)
                    .orElse(null));
            t.number("sigma_" + channel + "_px", "px", 3, "standard error of these", r -> shift(r, channel)
                    .map(DiscFitter.ChannelShift::sigmaPx)
                    .orElse(null));
        }
        t.number(
                "dispersion_px", "px", 3, "from red to blue", r -> dispersion(r).orElse(null));
        t.number("dispersion_arcsec", "arcsec", 4, "from red to blue", r -> dispersion(r)
                .map(d -> d
                        * r.subject().disc().diameterEquatorialArcsec()
                        / 2
                        / fit(r).placement().equatorialRadiusPx())
                .orElse(null));
    }

    private static Optional<DiscFitter.ChannelShift> shift(Row row, String channel) {
        return row.shifts().stream().filter(s -> s.channel().equals(channel)).findFirst();
    }

    private static Optional<Double> dispersion(Row row) {
        return shift(row, "red").flatMap(red -> shift(row, "blue")
                .map(blue -> Math.hypot(red.rightPx() - blue.rightPx(), red.downPx() - blue.downPx())));
    }

    private static Optional<ClockFinding> clock(Row row) {
        return row.moons().flatMap(MoonFinding::clock);
    }

    /** The last witness of a kind that gave a probability. */
    private static void probability(TableOf<Row> t, String name, String quantity, String description) {
        t.number(
                name,
                "",
                3,
                description,
                r -> fit(r) == null
                        ? null
                        : fit(r).witnesses().stream()
                                .filter(w -> w.quantity().equals(quantity)
                                        && !w.source().equals("hint"))
                                .reduce((a, b) -> b)
                                .map(Witness::value)
                                .orElse(null));
    }

    private static void number(
            TableOf<Row> t, String name, String unit, int decimals, Function<DiscFit, Double> value) {
        t.number(name, unit, decimals, name, r -> {
            DiscFit fit = fit(r);
            if (fit == null) {
                return null;
            }
            return value == null
                    ? r.subject().disc().diameterEquatorialArcsec()
                            / 2
                            / fit.placement().equatorialRadiusPx()
                    : value.apply(fit);
        });
    }

    private static DiscFit fit(Row row) {
        return row.outcome() instanceof FitOutcome.Fitted f ? f.fit() : null;
    }

    private static String trust(Row row) {
        DiscFit fit = fit(row);
        return fit == null ? "refused" : fit.trust().name().toLowerCase(Locale.ROOT);
    }

    private static String reason(Row row) {
        return row.outcome() instanceof FitOutcome.Refused r ? r.reason() : String.join("; ", fit(row).reasons());
    }
}
