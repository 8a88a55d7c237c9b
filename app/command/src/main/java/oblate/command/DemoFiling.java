/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.archive.Archive;
import oblate.archive.Filing;
import oblate.archive.FilingFacts;
import oblate.archive.FilingOutcome;
import oblate.archive.Kit;
import oblate.archive.Rating;
import oblate.archive.Site;
import oblate.base.Progress;
import oblate.image.TimeWish;
import oblate.sample.SampleSeason;
import oblate.sample.SampleTruth;

/** Files the sample season night by night, as its observers would. */
final class DemoFiling {
    private final Services services;
    private final Console console;
    private final Archive archive;
    private final Map<String, String> sites = new LinkedHashMap<>();

    DemoFiling(Services services, Console console, Archive archive) {
        this.services = services;
        this.console = console;
        this.archive = archive;
    }

    /**
     * What came of it.
     *
     * @param filed filed now
     * @param known in the archive already
     * @param undated filed as undated after a refusal
     * @param remarks what the archive wants a person to look at
     */
    record Tally(int filed, int known, int undated, List<String> remarks) {}

    private record Group(String evening, String kit, int seeing) {}

    Tally file(Path season, SampleTruth truth) {
        Map<String, oblate.sample.Kit> kits = gear();
        Map<Group, List<Path>> groups = new LinkedHashMap<>();
        for (SampleTruth.Picture p : truth.pictures()) {
            groups.computeIfAbsent(new Group(p.evening().toString(), p.kitId(), p.seeing()), g -> new ArrayList<>())
                    .add(season.resolve(p.file()));
        }
        Filing filing = services.filing(archive);
        ConsoleProgress progress = new ConsoleProgress(console, "Filing nights");
        int[] count = new int[3];
        List<String> remarks = new ArrayList<>();
        int done = 0;
        for (Map.Entry<Group, List<Path>> group : groups.entrySet()) {
            if (progress.isCancelled()) {
                break;
            }
            oblate.sample.Kit kit = kits.get(group.getKey().kit());
            for (FilingOutcome outcome :
                    filing.file(group.getValue(), facts(kit, group.getKey(), false), Progress.SILENT)) {
                count(outcome, filing, facts(kit, group.getKey(), true), count, remarks);
            }
            progress.report(++done, groups.size(), group.getKey().evening());
        }
        progress.finish();
        return new Tally(count[0], count[1], count[2], remarks);
    }

    private static void count(
            FilingOutcome outcome, Filing filing, FilingFacts undated, int[] count, List<String> remarks) {
        if (outcome instanceof FilingOutcome.Filed filed) {
            count[0]++;
            filed.remarks().forEach(r -> remarks.add(filed.picture().originalName() + ": " + r));
        } else if (outcome instanceof FilingOutcome.AlreadyThere) {
            count[1]++;
        } else if (outcome instanceof FilingOutcome.Refused refused) {
            remarks.add(refused.sentence());
            if (filing.file(List.of(refused.file()), undated, Progress.SILENT).get(0) instanceof FilingOutcome.Filed) {
                count[2]++;
            }
        }
    }

    private Map<String, oblate.sample.Kit> gear() {
        SampleSeason season = SampleSeason.standard();
        for (oblate.sample.Site s : season.sites()) {
            sites.put(s.id(), s.label());
            archive.keepSite(new Site(s.label(), s.latDeg(), s.lonEastDeg(), s.heightM(), Optional.empty()));
        }
        Map<String, oblate.sample.Kit> kits = new LinkedHashMap<>();
        for (oblate.sample.Kit k : season.kits()) {
            kits.put(k.id(), k);
            archive.keepKit(new Kit(
                    k.label(),
                    Optional.of(k.gear().telescope()),
                    OptionalDouble.of(k.gear().apertureMm()),
                    OptionalDouble.of(k.gear().focalLengthMm()),
                    Optional.of(k.gear().camera()),
                    OptionalDouble.of(k.gear().pixelUm()),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(k.gear().filter()),
                    Optional.of(k.optics().mirrored()),
                    Optional.of("invented")));
        }
        return kits;
    }

    private FilingFacts facts(oblate.sample.Kit kit, Group group, boolean undated) {
        String site = sites.get(kit.siteId());
        return new FilingFacts(
                Optional.of("jupiter"),
                Optional.of(site),
                Optional.of(kit.observer()),
                Optional.of(kit.label()),
                Optional.of(kit.gear().filter()),
                Optional.of(new Rating(String.valueOf(group.seeing()), "Antoniadi")),
                Optional.empty(),
                Optional.of("sample season, invented"),
                TimeWish.none(),
                undated);
    }
}
