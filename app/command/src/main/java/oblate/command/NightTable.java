/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import oblate.report.ReportTable;
import oblate.sky.DarkWindow;
import oblate.sky.GroundCourse;
import oblate.sky.GroundEvent;
import oblate.sky.GroundNight;
import oblate.sky.GroundSite;
import oblate.sky.GroundView;
import oblate.sky.LeapSeconds;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;

/** The tables of {@code oblate night}: what happens, or the planet's way through the dark window. */
final class NightTable {
    private final GroundNight night;
    private final PlanetModel planet;
    private final String wanted;
    private final LeapSeconds leapSeconds;

    /**
     * @param wanted in words, what makes a stretch of the night a window
     */
    NightTable(GroundNight night, PlanetModel planet, String wanted) {
        this.night = night;
        this.planet = planet;
        this.wanted = wanted;
        leapSeconds = night.ground().sky().leapSeconds();
    }

    /** One happening, or that one fails to come: then it has no time. */
    private record Row(
            Optional<UtcTime> time,
            String body,
            String event,
            Double sigmaS,
            Double altitudeDeg,
            Double azimuthDeg,
            String note) {

        static Row of(String body, GroundEvent e) {
            return new Row(
                    Optional.of(e.time()), body, e.kind().word(), e.sigmaS(), e.altitudeDeg(), e.azimuthDeg(), "");
        }

        static Row missing(String body, String event, String note) {
            return new Row(Optional.empty(), body, event, null, null, null, note);
        }
    }

    ReportTable events(List<DarkWindow> windows) {
        GroundCourse sun = night.sun();
        GroundCourse course = night.planet(planet);
        List<Row> rows = new ArrayList<>();
        sun.events().forEach(e -> rows.add(Row.of("sun", e)));
        course.events().forEach(e -> rows.add(Row.of(planet.id(), e)));
        for (DarkWindow window : windows) {
            rows.add(windowRow("window begins", window.track().get(0), ""));
            rows.add(windowRow("best in window", best(window, course), ""));
            rows.add(windowRow("window ends", window.track().get(window.track().size() - 1), ""));
        }
        rows.sort(Comparator.comparing(r -> r.time().orElseThrow()));
        addMissing(rows, sun, course, windows);
        TableOf<Row> t = new TableOf<>("Night of " + night.date() + " over the site");
        facts(t);
        t.text("time_utc", "when; empty for what does not happen", r -> r.time()
                .map(time -> time.iso(0))
                .orElse(null));
        t.text("body", "sun or planet", Row::body);
        t.text("event", "what happens", Row::event);
        t.number("sigma_s", "s", 0, "standard error of the time", Row::sigmaS);
        t.number("altitude_deg", "deg", 2, "of the centre, without refraction", Row::altitudeDeg);
        t.number("azimuth_deg", "deg", 2, "from north through east", Row::azimuthDeg);
        t.text("note", "why something does not happen", r -> r.note().isEmpty() ? null : r.note());
        t.text(
                "ephemeris",
                "planetary ephemeris",
                r -> night.ground().sky().ephemeris().name());
        t.text(
                "leap_seconds",
                "table of leap seconds used",
                r -> leapSeconds.saidOf(r.time().orElse(night.span().from())));
        return t.rows(rows);
    }

    /** The transit where the window has it, else the highest of its ends. */
    private GroundView best(DarkWindow window, GroundCourse course) {
        return course.events().stream()
                .filter(e -> e.kind() == GroundEvent.Kind.UPPER_TRANSIT
                        && window.span().contains(e.time()))
                .findFirst()
                .map(e -> night.ground().view(planet, e.time()))
                .orElseGet(window::best);
    }

    private Row windowRow(String event, GroundView view, String note) {
        return new Row(Optional.of(view.time()), planet.id(), event, null, view.altitudeDeg(), view.azimuthDeg(), note);
    }

    private void addMissing(List<Row> rows, GroundCourse sun, GroundCourse course, List<DarkWindow> windows) {
        if (sun.alwaysUp()) {
            rows.add(Row.missing("sun", "set", "the Sun does not set"));
        } else if (sun.neverUp()) {
            rows.add(Row.missing("sun", "rise", "the Sun does not rise"));
        }
        if (!sun.alwaysUp()) {
            sun.first(GroundEvent.Kind.LOWER_TRANSIT)
                    .filter(e -> e.altitudeDeg() > -18)
                    .ifPresent(e -> rows.add(Row.missing(
                            "sun",
                            "astronomical dusk",
                            String.format(Locale.ROOT, "the Sun goes down to %.1f deg only", e.altitudeDeg()))));
        }
        if (course.neverUp()) {
            rows.add(Row.missing(planet.id(), "rise", planet.label() + " never rises"));
        } else if (course.alwaysUp()) {
            rows.add(Row.missing(planet.id(), "set", planet.label() + " never sets"));
        }
        if (windows.isEmpty()) {
            rows.add(Row.missing(planet.id(), "window begins", "at no time this night: " + wanted));
        }
    }

    private void facts(TableOf<?> t) {
        GroundSite site = night.ground().site();
        t.fact("planet", planet.label())
                .fact(
                        "site",
                        String.format(
                                Locale.ROOT,
                                "latitude %.4f deg, longitude %.4f deg east, height %.0f m",
                                site.latDeg(),
                                site.lonEastDeg(),
                                site.heightM()))
                .fact(
                        "night",
                        night.span().from().iso(0) + " to " + night.span().to().iso(0))
                .fact("window", wanted)
                .fact("horizon", "flat; rising and setting with 34' of refraction, whose scatter is in sigma_s");
    }

    ReportTable track(List<DarkWindow> windows, Wavelengths colours) {
        TableOf<GroundView> t = new TableOf<>("Way of " + planet.label() + " through the night of " + night.date());
        facts(t);
        t.text("time_utc", "when", v -> v.time().iso(0));
        t.number("altitude_deg", "deg", 2, "without refraction", GroundView::altitudeDeg);
        t.number("altitude_refracted_deg", "deg", 2, "lifted by refraction", GroundView::refractedAltitudeDeg);
        t.number("azimuth_deg", "deg", 2, "from north through east", GroundView::azimuthDeg);
        t.number("parallactic_angle_deg", "deg", 2, "position angle of the zenith", GroundView::parallacticAngleDeg);
        t.number("air_mass", "", 2, "1 in the zenith", GroundView::airMass);
        t.number(
                "dispersion_arcsec",
                "arcsec",
                2,
                String.format(
                        Locale.ROOT,
                        "how much higher %.0f nm is seen than %.0f nm",
                        colours.shortNm(),
                        colours.longNm()),
                v -> v.dispersionArcsec(colours.shortNm(), colours.longNm()));
        t.number("sun_altitude_deg", "deg", 2, "Sun's centre, without refraction", GroundView::sunAltitudeDeg);
        t.text("twilight", "how light it is", v -> v.twilight().word());
        t.text(
                "ephemeris",
                "planetary ephemeris",
                v -> night.ground().sky().ephemeris().name());
        t.text("leap_seconds", "table of leap seconds used", v -> leapSeconds.saidOf(v.time()));
        return t.rows(windows.stream().flatMap(w -> w.track().stream()).toList());
    }
}
