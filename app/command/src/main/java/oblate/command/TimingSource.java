/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import oblate.archive.Archive;
import oblate.base.Progress;
import oblate.drift.timing.ArchiveMoons;
import oblate.drift.timing.MoonTimings;
import oblate.drift.timing.PlaceMark;
import oblate.drift.timing.StateSaid;
import oblate.drift.timing.Timings;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;

/** Works out timings from an archive's marks and states seen, and from a file of states. */
final class TimingSource {
    private final Services services;
    private final Console console;

    TimingSource(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    /**
     * What is wanted.
     *
     * @param archive folder; empty for a file alone
     * @param planet word for it
     * @param moons words for moons; empty for all
     * @param from pictures not before
     * @param to pictures before
     * @param observations file of states, or "-"
     */
    record Wish(
            Optional<Path> archive,
            Optional<String> planet,
            List<String> moons,
            Optional<Instant> from,
            Optional<Instant> to,
            Optional<String> observations) {}

    /** The timings; what was passed over or assumed has been said. */
    Timings timings(Wish wish) {
        if (wish.archive().isEmpty()) {
            if (wish.observations().isEmpty()) {
                throw new UsageException("there is nothing to time; give --archive DIR or --observations FILE");
            }
            PlanetModel planet = services.planetWithMoons(wish.planet()
                    .orElseThrow(() ->
                            new UsageException("without an archive the planet must be named; add --planet PLANET")));
            return worked(planet, List.of(), said(planet, Optional.empty(), wish));
        }
        try (Archive open = services.openArchive(wish.archive().get())) {
            PlanetModel planet = services.planetWithMoons(
                    new PlanetChoice(services).of(open, wish.planet()).id());
            ArchiveMoons.Found found = new ArchiveMoons(open, planet).find(ids(planet, wish), wish.from(), wish.to());
            found.remarks().forEach(r -> console.say(r + "."));
            List<StateSaid> states = new ArrayList<>(found.states());
            states.addAll(said(planet, Optional.of(open), wish));
            return worked(planet, found.places(), states);
        }
    }

    private List<StateSaid> said(PlanetModel planet, Optional<Archive> open, Wish wish) {
        if (wish.observations().isEmpty()) {
            return List.of();
        }
        StateRows rows = new StateRows(new StateReader(services, planet, open));
        List<StateSaid> states = StateRows.within(
                rows.read(wish.observations().get(), console), ids(planet, wish), wish.from(), wish.to());
        rows.remarks().forEach(console::say);
        return states;
    }

    private Timings worked(PlanetModel planet, List<PlaceMark> places, List<StateSaid> states) {
        Timings timings = new MoonTimings(services.sky(), planet).of(places, states, Progress.SILENT);
        timings.remarks().forEach(console::say);
        return timings;
    }

    private static Set<String> ids(PlanetModel planet, Wish wish) {
        List<String> known = planet.moons().stream().map(MoonFacts::id).toList();
        Set<String> ids = new LinkedHashSet<>();
        for (String word : wish.moons()) {
            String id = word.strip().toLowerCase(Locale.ROOT);
            if (!known.contains(id)) {
                throw new UsageException("moon \"" + word.strip() + "\" of " + planet.label() + " is not known; "
                        + Nearest.hint(id, known));
            }
            ids.add(id);
        }
        return ids;
    }
}
