/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import oblate.drift.timing.Timing;
import oblate.report.ReportTable;
import oblate.report.TimingTable;
import oblate.sky.PlanetModel;

/** Timings for reading: few columns, value and error together. */
final class TimingText {
    private TimingText() {}

    static ReportTable of(PlanetModel planet, List<Timing> timings, boolean byPicture) {
        TableOf<Timing> t = new TableOf<Timing>("Timings of the moons of " + planet.label())
                .fact(
                        "O-P",
                        "observed minus predicted, s; positive when seen later than foretold, as a fast clock makes it")
                .fact("times", "UTC by the pictures' clock; foretold for the site seen from, or for the Earth's centre")
                .fact("off its way", "distance of the marks across the foretold way, arcsec: a check")
                .fact("errors", "one standard error")
                .text("Night", "", x -> x.night().toString())
                .text("Seen from", "", x -> x.site().orElse(TimingTable.GEOCENTRE))
                .text("Moon", "", Timing::words)
                .text("Phenomenon", "", x -> x.phenomenon().words())
                .text("Moment", "", x -> x.point().id().replace('_', ' '))
                .text("Method", "", x -> x.method().id())
                .text("Observed", "", x -> x.observedUtc()
                        .map(o -> clock(o, x.night()))
                        .or(() -> TimingTable.limit(x))
                        .orElse("unknown"))
                .text("O-P", "", TimingText::oMinusP)
                .text("Off its way", "", x -> x.beside()
                        .map(b -> String.format(Locale.ROOT, "%+.2f ± %.2f", b.arcsec(), b.sigmaArcsec()))
                        .orElse(""));
        if (byPicture) {
            t.text("Picture", "", x -> String.join(", ", x.pictures()));
        } else {
            t.text("Pictures", "", x -> used(x));
        }
        return t.text("Doubts", "", x -> String.join("; ", x.doubts())).rows(timings);
    }

    private static String used(Timing t) {
        return t.leftOut() == 0
                ? String.valueOf(t.pictures().size())
                : t.pictures().size() - t.leftOut() + "/" + t.pictures().size();
    }

    private static String oMinusP(Timing t) {
        if (!t.hasTime()) {
            return "";
        }
        boolean whole = t.errors().totalS() >= 9.5;
        // Rounded first, and zero added, so that none is written as -0.
        double rounded = whole ? Math.rint(t.oMinusPS()) + 0.0 : Math.rint(t.oMinusPS() * 10) / 10 + 0.0;
        return String.format(
                Locale.ROOT,
                whole ? "%+.0f ± %.0f" : "%+.1f ± %.1f",
                rounded,
                t.errors().totalS());
    }

    /** To the second; past midnight with the day. */
    private static String clock(Instant time, java.time.LocalDate night) {
        String iso =
                Instant.ofEpochSecond(Math.round(time.toEpochMilli() / 1000.0)).toString();
        String clock = iso.substring(11, 19);
        return iso.startsWith(night.toString()) ? clock : iso.substring(8, 10) + "d " + clock;
    }
}
