/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.Site;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import picocli.CommandLine.Option;

/** The place a command is asked for: numbers, or the name of a site that an archive keeps. */
final class SiteOptions {

    @Option(
            names = "--site",
            paramLabel = "SITE",
            description =
                    "LAT,LON,HEIGHT (deg north, deg east, m), or with --archive the name of a site there; adds altitudes")
    private String site;

    @Option(names = "--archive", paramLabel = "DIR", description = "the archive that knows the site by name")
    private Path archive;

    /** The sky over the place, when one is given. */
    Optional<SiteView> view(Services services) {
        return site == null
                ? Optional.empty()
                : Optional.of(new SiteView(GroundSky.over(services.sky(), place(services))));
    }

    private GroundSite place(Services services) {
        if (site.contains(",")) {
            return GroundSite.parse(site);
        }
        if (archive == null) {
            throw new UsageException(
                    "site \"" + site
                            + "\" is a name; add --archive DIR to say who knows it, or write LAT,LON,HEIGHT like 48.2,16.3,170");
        }
        try (Archive open = services.openArchive(archive)) {
            List<Site> known = open.sites();
            return known.stream()
                    .filter(s -> s.name().equalsIgnoreCase(site))
                    .findFirst()
                    .map(s -> new GroundSite(s.latDeg(), s.lonDeg(), s.heightM()))
                    .orElseThrow(() -> new UsageException("site \"" + site + "\" is not in the archive; "
                            + Nearest.hint(site, known.stream().map(Site::name).toList())));
        }
    }
}
