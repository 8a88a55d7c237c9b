/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.Site;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate site}: lists and adds observing sites. */
@Command(
        name = "site",
        mixinStandardHelpOptions = true,
        description = "Lists the observing sites of an archive; with add, adds or changes one.",
        footer = {"", "Example:  oblate site add \"back garden\" --archive season --lat 41.2 --lon -8.6 --height 90"})
final class SiteCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Option(names = "--archive", paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Mixin
    private OutputOptions output;

    SiteCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        if (archive == null) {
            throw new UsageException("no archive is given; add --archive DIR");
        }
        try (Archive open = services.openArchive(archive)) {
            TableOf<Site> t = new TableOf<>("Sites");
            t.text("site", "name", Site::name);
            t.number("lat_deg", "deg", 4, "geodetic latitude, north positive", Site::latDeg);
            t.number("lon_deg", "deg", 4, "longitude, east positive", Site::lonDeg);
            t.number("height_m", "m", 0, "height", Site::heightM);
            t.text("zone", "time zone, for local dates", s -> s.zone()
                    .map(Object::toString)
                    .orElse(null));
            output.write(t.rows(open.sites()), services, console);
            return 0;
        }
    }

    /** {@code oblate site add}. */
    @Command(name = "add", mixinStandardHelpOptions = true, description = "Adds or changes a site.")
    static final class Add implements Callable<Integer> {
        private final Services services;
        private final Console console;

        @Parameters(paramLabel = "NAME", description = "name of the site")
        private String name;

        @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
        private Path archive;

        @Option(names = "--lat", required = true, paramLabel = "DEG", description = "latitude, north positive")
        private double latDeg;

        @Option(names = "--lon", required = true, paramLabel = "DEG", description = "longitude, east positive")
        private double lonDeg;

        @Option(names = "--height", defaultValue = "0", paramLabel = "M", description = "height (m)")
        private double heightM;

        @Option(names = "--zone", paramLabel = "ZONE", description = "time zone, for saying local dates")
        private String zone;

        Add(Services services, Console console) {
            this.services = services;
            this.console = console;
        }

        @Override
        public Integer call() {
            if (!(Math.abs(latDeg) <= 90 && Math.abs(lonDeg) <= 360 && heightM >= -500 && heightM <= 9000)) {
                throw new UsageException(
                        "a site at latitude " + latDeg + ", longitude " + lonDeg + ", height " + heightM
                                + " m is not on the globe; latitude is -90 to 90, longitude -180 to 180, east positive, height -500 to 9000 m");
            }
            try (Archive open = services.openOrMakeArchive(archive, console)) {
                open.keepSite(new Site(
                        name,
                        latDeg,
                        Math.IEEEremainder(lonDeg, 360),
                        heightM,
                        Optional.ofNullable(zone).map(PictureOptions::zone)));
                console.say("Site \"" + name + "\" is kept.");
                return 0;
            }
        }
    }
}
