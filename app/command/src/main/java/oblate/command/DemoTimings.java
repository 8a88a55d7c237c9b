/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import oblate.archive.Archive;
import oblate.base.Progress;
import oblate.drift.timing.ArchiveMoons;
import oblate.drift.timing.MoonTimings;
import oblate.drift.timing.NightClock;
import oblate.drift.timing.Timing;
import oblate.drift.timing.Timings;
import oblate.report.ReportTable;
import oblate.report.TimingTable;
import oblate.sky.PlanetModel;

/** Times the moons and shadows marked on the sample season, whose true O−P is nothing: its moons stand where they are foretold, by the pictures' true times. */
final class DemoTimings {
    private final Services services;
    private final Console console;
    private final Timings timings;

    DemoTimings(Services services, Console console, Archive archive, PlanetModel planet) {
        this.services = services;
        this.console = console;
        ArchiveMoons.Found found = new ArchiveMoons(archive, planet).find(Set.of(), Optional.empty(), Optional.empty());
        timings = new MoonTimings(services.sky(), planet).of(found.places(), found.states(), Progress.SILENT);
    }

    ReportTable table() {
        return TimingTable.of(
                timings.planet(), timings.events(), services.sky().ephemeris().name());
    }

    void print() {
        List<Timing> singles =
                timings.singles().stream().filter(Timing::hasTime).toList();
        line(
                "Timed     %d moons and shadows: observed minus predicted (true: 0) within one standard error in %d, within two in %d;",
                singles.size(), within(singles, 1), within(singles, 2));
        List<NightClock> nights = timings.nights();
        line(
                "          of %d nights the moons find the clock right in %d.",
                nights.size(),
                nights.stream()
                        .filter(n -> n.verdict() == NightClock.Verdict.AGREES)
                        .count());
    }

    private static long within(List<Timing> timings, double sigmas) {
        return timings.stream()
                .filter(t -> Math.abs(t.oMinusPS()) <= sigmas * t.errors().totalS())
                .count();
    }

    private void line(String format, Object... values) {
        console.out().println(String.format(Locale.ROOT, format, values));
    }
}
