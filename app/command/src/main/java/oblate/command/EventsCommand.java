/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import oblate.report.ReportTable;
import oblate.sky.LeapSeconds;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;
import oblate.sky.Standpoint;
import oblate.sky.UtcTime;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate events PLANET --from T --to T}. */
@Command(
        name = "events",
        mixinStandardHelpOptions = true,
        description =
                "Transits, shadow transits, occultations and eclipses of a planet's moons, and events between two moons.",
        footer = {
            "",
            "An event is listed when its middle lies in the span. Times are those seen from the site, or from the Earth's centre without one.",
            "Example:  oblate events jupiter --from 2027-09-22T00:00:00Z --to 2027-09-29T00:00:00Z --moons io,europa"
        })
final class EventsCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PLANET", description = "a planet whose moons are known")
    private String planet;

    @Option(names = "--from", required = true, paramLabel = "TIME", description = "start, ISO 8601 with Z")
    private String from;

    @Option(names = "--to", required = true, paramLabel = "TIME", description = "end (not included), ISO 8601 with Z")
    private String to;

    @Option(names = "--moons", split = ",", paramLabel = "MOON", description = "only these, parted by commas")
    private List<String> moons = List.of();

    @Option(
            names = "--kinds",
            split = ",",
            paramLabel = "KIND",
            description = "only these: transit, shadow_transit, occultation, eclipse; with --mutual the last two")
    private List<String> kinds = List.of();

    @Option(names = "--misses", description = "list passages that miss the planet too")
    private boolean misses;

    @Option(names = "--mutual", description = "list the events between two moons instead")
    private boolean mutual;

    @Mixin
    private SiteOptions site;

    @Mixin
    private OutputOptions output;

    EventsCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        PlanetModel model = services.planetWithMoons(planet);
        LeapSeconds leapSeconds = services.sky().leapSeconds();
        EventSearch search = new EventSearch(
                UtcTime.parse(from, leapSeconds),
                UtcTime.parse(to, leapSeconds),
                moonIds(model),
                wantedKinds(),
                misses);
        Optional<SiteView> view = site.view(services);
        Standpoint from = view.isPresent() ? view.get().sky() : services.sky();
        MoonEvents events = MoonEvents.of(from, model);
        ReportTable table = mutual ? mutualTable(events, search, view) : passageTable(events, search, view);
        if (table.rows().isEmpty() && output.isText()) {
            console.say("No event of " + model.label() + "'s moons has its middle from " + from + " to " + to + ".");
            return 0;
        }
        output.write(table, services, console);
        return 0;
    }

    private ReportTable passageTable(MoonEvents events, EventSearch search, Optional<SiteView> view) {
        PassageTable table = new PassageTable(search, view, services.sky());
        return output.isText() ? table.toRead(events.passages(search)) : table.whole(events.passages(search));
    }

    private ReportTable mutualTable(MoonEvents events, EventSearch search, Optional<SiteView> view) {
        MutualTable table = new MutualTable(search, view, services.sky());
        return output.isText() ? table.toRead(events.mutual(search)) : table.whole(events.mutual(search));
    }

    private Set<String> moonIds(PlanetModel model) {
        List<String> known = model.moons().stream().map(MoonFacts::id).toList();
        Set<String> ids = new LinkedHashSet<>();
        for (String word : moons) {
            String id = word.strip().toLowerCase(Locale.ROOT);
            if (!known.contains(id)) {
                throw new UsageException("moon \"" + word.strip() + "\" of " + model.label() + " is not known; "
                        + Nearest.hint(id, known));
            }
            ids.add(id);
        }
        return ids;
    }

    private Set<EventKind> wantedKinds() {
        if (kinds.isEmpty()) {
            return EnumSet.allOf(EventKind.class);
        }
        List<String> known =
                EnumSet.allOf(EventKind.class).stream().map(EventKind::id).toList();
        Set<EventKind> wanted = EnumSet.noneOf(EventKind.class);
        for (String word : kinds) {
            String id = word.strip().toLowerCase(Locale.ROOT).replace('-', '_');
            if (!known.contains(id)) {
                throw new UsageException(
                        "kind \"" + word.strip() + "\" of events is not known; " + Nearest.hint(id, known));
            }
            wanted.add(EventKind.valueOf(id.toUpperCase(Locale.ROOT)));
        }
        return wanted;
    }
}
