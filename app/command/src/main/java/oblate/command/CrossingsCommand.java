/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.report.ReportTable;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.GroundView;
import oblate.sky.MeridianCrossing;
import oblate.sky.MeridianCrossings;
import oblate.sky.MovingLongitude;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.sky.Sky;
import oblate.sky.TimeSpan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate crossings PLANET --lon L --system S --from T --to T}. */
@Command(
        name = "crossings",
        mixinStandardHelpOptions = true,
        description = {
            "When a longitude crosses the planet's central meridian, as seen from the Earth's centre; all crossings in a range.",
            "With a site, also how high planet and Sun stand there, and whether the crossing can be observed."
        },
        footer = {
            "",
            "Examples:  oblate crossings jupiter --lon 42 --system 2 --from 2024-12-07T00:00Z --to 2024-12-14T00:00Z",
            "           oblate crossings jupiter --lon 42 --sigma 1.5 --system 2 --from 2024-12-07T00:00Z --to 2024-12-14T00:00Z --site 48.2,16.3,170 --observable"
        })
final class CrossingsCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "PLANET", description = "mercury … neptune")
    private String planet;

    @Option(names = "--lon", required = true, paramLabel = "DEG", description = "the longitude, 0 to 360")
    private double lonDeg;

    @Option(
            names = "--system",
            paramLabel = "SYSTEM",
            description = "1, 2, 3 or iau: of the longitude; may be left out where the planet has one")
    private String system;

    @Option(
            names = "--sigma",
            paramLabel = "DEG",
            description = "standard error of the longitude; carried into minutes of time")
    private Double sigmaDeg;

    @Option(
            names = "--rate",
            paramLabel = "DEG",
            defaultValue = "0",
            description = "drift in deg per day, from --epoch on")
    private double degPerDay;

    @Option(
            names = "--sigma-rate",
            paramLabel = "DEG",
            defaultValue = "0",
            description = "standard error of the drift, deg per day")
    private double sigmaDegPerDay;

    @Option(names = "--epoch", paramLabel = "TIME", description = "when the longitude holds; left out, --from")
    private String epoch;

    @Mixin
    private RangeOptions range;

    @Mixin
    private SiteOptions site;

    @Mixin
    private Darkness darkness;

    @Option(names = "--observable", description = "with --site: only the crossings that can be observed there")
    private boolean observableOnly;

    @Mixin
    private OutputOptions output;

    CrossingsCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    private record Row(MeridianCrossing crossing, Optional<GroundView> ground) {}

    @Override
    public Integer call() {
        PlanetModel model = services.planet(planet);
        RotationSystem of = system(model);
        checkNumbers();
        double sunBelowDeg = darkness.sunBelowDeg();
        double minAltitudeDeg = darkness.minAltitudeDeg();
        Optional<GroundSite> place = site.site(services);
        if (observableOnly && place.isEmpty()) {
            throw new UsageException("--observable needs a place; add --site LAT,LON,HEIGHT");
        }
        TimeSpan span = range.span(services);
        MovingLongitude longitude = new MovingLongitude(
                lonDeg,
                degPerDay,
                epoch == null ? span.from() : RangeOptions.time("--epoch", epoch, services),
                sigmaDeg == null ? 0 : sigmaDeg,
                sigmaDegPerDay);
        Sky sky = services.sky();
        Optional<GroundSky> ground = place.map(p -> GroundSky.over(sky, p));
        List<Row> rows = new MeridianCrossings(sky, model, of)
                .between(longitude, span).stream()
                        .map(c -> new Row(c, ground.map(g -> g.view(model, c.time()))))
                        .filter(r -> !observableOnly
                                || r.ground().stream().allMatch(v -> why(v, sunBelowDeg, minAltitudeDeg)
                                        .isEmpty()))
                        .toList();
        if (rows.isEmpty()) {
            console.say(
                    "Longitude " + lonDeg + " crosses the meridian of " + model.label() + " at no time in that range"
                            + (observableOnly ? " that can be observed (" + darkness.said() + ")." : "."));
        }
        output.write(table(model, of, ground.isPresent(), sky, rows), services, console);
        SunCaution.of(model, rows.stream().flatMap(r -> r.ground().stream()).toList())
                .ifPresent(console::say);
        return 0;
    }

    private RotationSystem system(PlanetModel model) {
        if (system == null && model.globe().systems().size() > 1) {
            throw new UsageException("which system the longitude is of is not said; add --system "
                    + String.join(
                            " or ",
                            model.globe().systems().stream()
                                    .map(RotationSystem::id)
                                    .toList()));
        }
        return system == null ? model.globe().iauSystem() : PlanetChoice.system(model, system);
    }

    private void checkNumbers() {
        if (!(lonDeg >= 0 && lonDeg <= 360)) {
            throw new UsageException("--lon " + lonDeg + " is not a longitude from 0 to 360 deg");
        }
        if (sigmaDeg != null && !(sigmaDeg >= 0 && sigmaDeg <= 180)) {
            throw new UsageException("--sigma " + sigmaDeg + " is not a standard error from 0 to 180 deg");
        }
        if (!(sigmaDegPerDay >= 0 && sigmaDegPerDay <= 180)) {
            throw new UsageException(
                    "--sigma-rate " + sigmaDegPerDay + " is not a standard error from 0 to 180 deg per day");
        }
    }

    /** Why a crossing cannot be observed; empty when it can. */
    private static String why(GroundView view, double sunBelowDeg, double minAltitudeDeg) {
        if (view.altitudeDeg() < 0) {
            return "below the horizon";
        }
        if (view.altitudeDeg() < minAltitudeDeg) {
            return "low";
        }
        return view.sunAltitudeDeg() >= sunBelowDeg
                ? view.twilight() == oblate.sky.Twilight.DAY ? "day" : "twilight"
                : "";
    }

    private ReportTable table(PlanetModel model, RotationSystem of, boolean hasSite, Sky sky, List<Row> rows) {
        TableOf<Row> t = new TableOf<>("Crossings of the central meridian");
        t.fact("planet", model.label())
                .fact("system", of.label())
                .fact("central meridian", "geometric, as seen from the Earth's centre, light time allowed for");
        t.text("time_utc", "when, to the second", r -> r.crossing().time().iso(0));
        t.text("planet", "planet", r -> model.id());
        t.text("system", "rotation system", r -> of.id());
        t.number("lon_deg", "deg", 2, "longitude then", r -> r.crossing().lonDeg());
        t.number(
                "sigma_lon_deg",
                "deg",
                2,
                "its standard error then",
                r -> known(r.crossing().sigmaLonDeg()));
        t.number(
                "sigma_min",
                "min",
                1,
                "standard error of the time",
                r -> known(r.crossing().sigmaMin()));
        t.number("rate_deg_per_min", "deg/min", 6, "speed over the meridian", r -> r.crossing()
                .degPerMin());
        if (hasSite) {
            t.fact("observable", darkness.said());
            ground(t);
        }
        t.text("ephemeris", "planetary ephemeris", r -> sky.ephemeris().name());
        t.text("leap_seconds", "table of leap seconds used", r -> sky.leapSeconds()
                .saidOf(r.crossing().time()));
        return t.rows(rows);
    }

    private Double known(double sigma) {
        return sigmaDeg == null && sigmaDegPerDay == 0 ? null : (Double) sigma;
    }

    private void ground(TableOf<Row> t) {
        double sunBelowDeg = darkness.sunBelowDeg();
        double minAltitudeDeg = darkness.minAltitudeDeg();
        t.number("altitude_deg", "deg", 2, "of the planet, without refraction", r -> view(r).altitudeDeg());
        t.number("azimuth_deg", "deg", 2, "from north through east", r -> view(r).azimuthDeg());
        t.number("sun_altitude_deg", "deg", 2, "of the Sun, without refraction", r -> view(r).sunAltitudeDeg());
        t.text(
                "observable",
                "yes or no",
                r -> why(view(r), sunBelowDeg, minAltitudeDeg).isEmpty() ? "yes" : "no");
        t.text("why_not", "what hinders", r -> {
            String why = why(view(r), sunBelowDeg, minAltitudeDeg);
            return why.isEmpty() ? null : why.toLowerCase(Locale.ROOT);
        });
    }

    private static GroundView view(Row row) {
        return row.ground().orElseThrow();
    }
}
