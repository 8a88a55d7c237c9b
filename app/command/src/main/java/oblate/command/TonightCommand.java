/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.Site;
import oblate.drift.DriftFitter;
import oblate.drift.plan.FollowedFeatures;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanWish;
import oblate.drift.plan.Planner;
import oblate.drift.plan.SmearLimit;
import oblate.report.plan.PlanCalendar;
import oblate.report.plan.PlanTable;
import oblate.report.plan.PlanText;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.PlanetModel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code oblate tonight --archive DIR}. */
@Command(
        name = "tonight",
        mixinStandardHelpOptions = true,
        description = {
            "The plan of a night or a month: when followed features cross the meridian, what the moons do, how high and how dark, how long to capture.",
            "Features come from the marks of the archive; each time carries its error. All times are UTC."
        },
        footer = {
            "",
            "Left out: --date is the coming night, --site the archive's only site, --planet its only planet.",
            "Examples:  oblate tonight --archive season",
            "           oblate tonight --archive season --site garden --month 2024-12 --calendar december.ics",
            "           oblate tonight --planet jupiter --site 48.2,16.3,170 --scale 0.1 --max-smear-px 1"
        })
final class TonightCommand implements Callable<Integer> {
    private static final double USUAL_SMEAR_DEG = 1;

    private final Services services;
    private final Console console;

    @Option(
            names = "--planet",
            paramLabel = "PLANET",
            description = "mercury … neptune; needed when the archive holds several")
    private String planet;

    @Mixin
    private SiteOptions site;

    @Option(
            names = "--date",
            paramLabel = "DATE",
            description = "date of the evening, e.g. 2024-12-07; left out, the coming night")
    private String date;

    @Option(names = "--month", paramLabel = "YYYY-MM", description = "all nights of a month instead")
    private String month;

    @Mixin
    private Darkness darkness;

    @Option(
            names = "--max-smear-deg",
            paramLabel = "DEG",
            description = "smear a capture may have, degrees of rotation (default: 1)")
    private Double maxSmearDeg;

    @Option(names = "--max-smear-px", paramLabel = "PX", description = "the same in pixels; needs --scale")
    private Double maxSmearPx;

    @Option(names = "--scale", paramLabel = "ARCSEC", description = "pixel scale, arcsec per pixel")
    private Double scaleArcsecPerPx;

    @Option(
            names = "--wavelengths",
            paramLabel = "NM,NM",
            defaultValue = "450,650",
            description = "the colours between which dispersion is told (default: ${DEFAULT-VALUE})")
    private String wavelengths;

    @Option(
            names = "--calendar",
            paramLabel = "FILE",
            description = "write the plan there too, as iCalendar (also: --format ics)")
    private Path calendar;

    @Mixin
    private OutputOptions output;

    TonightCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    /** What there is of an archive. */
    private record Held(PlanetModel planet, Place place, FollowedFeatures features) {}

    /** A place and its name, blank for one without. */
    private record Place(GroundSite site, String name) {}

    @Override
    public Integer call() {
        SmearLimit smear = smear();
        Wavelengths colours = Wavelengths.parse(wavelengths);
        double sunBelowDeg = darkness.sunBelowDeg();
        double minAltitudeDeg = darkness.minAltitudeDeg();
        if (date != null && month != null) {
            throw new UsageException("give either --date or --month");
        }
        LocalDate day = date == null ? null : day();
        YearMonth whole = month == null ? null : month();
        Held held = held();
        GroundSky ground = GroundSky.over(services.sky(), held.place().site());
        LocalDate first = whole != null
                ? whole.atDay(1)
                : day != null
                        ? day
                        : Planner.comingNight(ground, services.clock().instant(), sunBelowDeg);
        PlanWish wish = new PlanWish(
                held.planet(),
                ground,
                first,
                whole != null ? whole.atEndOfMonth() : first,
                sunBelowDeg,
                minAltitudeDeg,
                smear,
                colours.shortNm(),
                colours.longNm());
        write(new Planner().plan(wish, held.features()), held.place().name());
        return 0;
    }

    private void write(Plan plan, String place) {
        String entries = calendar != null || output.is("ics")
                ? PlanCalendar.of(plan, place, services.clock().instant())
                : "";
        if (output.is("ics")) {
            output.writeText(entries, console);
        } else if (output.isText()) {
            output.writeText(PlanText.of(plan, place), console);
        } else {
            output.write(new PlanTable(plan).table(), services, console);
        }
        if (calendar != null) {
            OutputOptions.writeText(entries, calendar);
            console.say("Wrote the calendar to " + calendar + ".");
        }
        if (!output.isText()) {
            plan.untimed().forEach(u -> console.say("No time for " + u.feature() + ": " + u.why()));
            plan.remarks().forEach(console::say);
            if (!plan.hasWindow()) {
                console.say("No window: at no time is it dark and the planet high (" + darkness.said() + "); "
                        + plan.nextWindow()
                                .map(d -> "the next such night is about " + d)
                                .orElse("no such night within two years")
                        + ".");
            }
            plan.cautions().forEach(console::say);
        }
    }

    private Held held() {
        if (site.archive().isEmpty()) {
            if (planet == null) {
                throw new UsageException("which planet is not said; add --planet PLANET or --archive DIR");
            }
            GroundSite place = site.site(services).orElseThrow(TonightCommand::noPlace);
            return new Held(services.planet(planet), new Place(place, ""), FollowedFeatures.none());
        }
        Optional<GroundSite> given = site.site(services);
        try (Archive open = services.openArchive(site.archive().get())) {
            PlanetModel model = new PlanetChoice(services).of(open, Optional.ofNullable(planet));
            Place place = given.map(g -> new Place(g, site.name().orElse(""))).orElseGet(() -> onlySite(open));
            return new Held(model, place, FollowedFeatures.of(open, model, new DriftFitter()));
        }
    }

    private static Place onlySite(Archive open) {
        List<Site> sites = open.sites();
        if (sites.isEmpty()) {
            throw noPlace();
        }
        if (sites.size() > 1) {
            throw new UsageException("the archive knows several sites; choose one with --site: "
                    + String.join(", ", sites.stream().map(Site::name).toList()));
        }
        Site only = sites.get(0);
        return new Place(new GroundSite(only.latDeg(), only.lonDeg(), only.heightM()), only.name());
    }

    private static UsageException noPlace() {
        return new UsageException(
                "no place is known to plan for; add --site LAT,LON,HEIGHT, or keep one in the archive with: oblate site add");
    }

    private SmearLimit smear() {
        if (maxSmearDeg != null && maxSmearPx != null) {
            throw new UsageException("give either --max-smear-deg or --max-smear-px");
        }
        check("--max-smear-deg", maxSmearDeg, 180);
        check("--max-smear-px", maxSmearPx, 10_000);
        check("--scale", scaleArcsecPerPx, 100);
        if (maxSmearPx != null && scaleArcsecPerPx == null) {
            throw new UsageException("--max-smear-px needs the pixel scale; add --scale ARCSEC");
        }
        if (maxSmearDeg != null || scaleArcsecPerPx == null) {
            return SmearLimit.ofDeg(maxSmearDeg == null ? USUAL_SMEAR_DEG : maxSmearDeg);
        }
        return SmearLimit.ofPx(maxSmearPx == null ? 1 : maxSmearPx, scaleArcsecPerPx);
    }

    private static void check(String option, Double value, double greatest) {
        if (value != null && !(value > 0 && value <= greatest)) {
            throw new UsageException(option + " " + value + " is not a number above 0, up to " + (long) greatest);
        }
    }

    private LocalDate day() {
        try {
            return LocalDate.parse(date.strip());
        } catch (DateTimeException e) {
            throw new UsageException("--date \"" + date + "\" is not a date of the calendar; write it like 2024-12-07");
        }
    }

    private YearMonth month() {
        try {
            return YearMonth.parse(month.strip());
        } catch (DateTimeException e) {
            throw new UsageException("--month \"" + month + "\" is not a month; write it like 2024-12");
        }
    }
}
