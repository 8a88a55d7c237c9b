/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import oblate.archive.Archive;
import oblate.archive.Site;
import oblate.base.ProblemException;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import picocli.CommandLine.Option;

/** The place a command is asked about: by its coordinates, or by the name it has in an archive. */
final class SiteOptions {
    private static final Pattern NUMBERS = Pattern.compile("[-+.\\d\\s]+,.*");

    @Option(
            names = "--site",
            paramLabel = "LAT,LON,HEIGHT|NAME",
            description =
                    "the place: degrees north, degrees east, metres (--site=-33.9,18.5,15); or a site's name, with --archive")
    private String site;

    @Option(names = "--archive", paramLabel = "DIR", description = "the archive that knows the site's name")
    private Path archive;

    /**
     * The place, if one was given.
     *
     * @throws UsageException when it is none
     */
    Optional<GroundSite> site(Services services) {
        if (site == null) {
            return Optional.empty();
        }
        if (NUMBERS.matcher(site).matches() || archive == null) {
            return Optional.of(byNumbers());
        }
        try (Archive open = services.openArchive(archive)) {
            List<Site> sites = open.sites();
            return Optional.of(sites.stream()
                    .filter(s -> s.name().equalsIgnoreCase(site.strip()))
                    .findFirst()
                    .map(s -> new GroundSite(s.latDeg(), s.lonDeg(), s.heightM()))
                    .orElseThrow(() -> new UsageException("site \"" + site + "\" is not in that archive; "
                            + (sites.isEmpty()
                                    ? "it has none: add one with oblate site add"
                                    : Nearest.hint(
                                            site, sites.stream().map(Site::name).toList())))));
        }
    }

    /** The archive named, if one is. */
    Optional<Path> archive() {
        return Optional.ofNullable(archive);
    }

    /** The word given for the place, when it is a name rather than coordinates. */
    Optional<String> name() {
        return Optional.ofNullable(site).filter(s -> !NUMBERS.matcher(s).matches());
    }

    /** The sky over the place, when one is given. */
    Optional<SiteView> view(Services services) {
        return site(services).map(place -> new SiteView(GroundSky.over(services.sky(), place)));
    }

    private GroundSite byNumbers() {
        try {
            return GroundSite.parse(site);
        } catch (ProblemException e) {
            boolean isName = !NUMBERS.matcher(site).matches();
            throw new UsageException(e.getMessage() + (isName ? "; for a site's name add --archive DIR" : ""));
        }
    }
}
