/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

/**
 * One night over a place: from mean noon of a date to mean noon of the next, by the site's longitude. Immutable and safe for many threads.
 *
 * <p>Rising and setting are those of the almanacs: centre at −34′, the Sun's at −50′, for a flat horizon; mountains and a site's height over its horizon are
 * not known here. Nothing is overlooked, however short it stays up: see {@link CurveSearch}.
 */
public final class GroundNight {
    /** Altitude of a planet's centre at rising and setting (deg): 34′ of refraction, the usual figure. */
    static final double HORIZON_DEG = -34 / 60.0;

    /**
     * Scatter of refraction at the horizon (deg), from memory of Schaefer and Liller 1990, Publ. Astron. Soc. Pacific 102, 796: 0.16 deg about the mean.
     */
    private static final double HORIZON_SCATTER_DEG = 0.16;

    /** UT1 is taken for UTC, within 0.9 s of it: standard deviation of an even spread (s). */
    private static final double UT1_SIGMA_S = 0.9 / Math.sqrt(3);

    private static final double EARTH_SPIN_RAD_PER_S = 7.292115e-5;
    /** What a body's own motion adds to the bending of its course (per s²); 1e-13 would do. */
    private static final double OWN_BEND = 1e-12;

    private final GroundSky ground;
    private final LocalDate date;
    private final TimeSpan span;
    private final double bend;

    private GroundNight(GroundSky ground, LocalDate date) {
        this.ground = ground;
        this.date = date;
        double eastDeg = Math.IEEEremainder(ground.site().lonEastDeg(), 360);
        UtcTime noon = new UtcTime(date.toEpochDay(), 0).plusClockSeconds((180 - eastDeg) * 240);
        span = new TimeSpan(noon, noon.plusClockSeconds(86400));
        bend = 1.05
                        * EARTH_SPIN_RAD_PER_S
                        * EARTH_SPIN_RAD_PER_S
                        * Math.cos(Math.toRadians(ground.site().latDeg()))
                + OWN_BEND;
    }

    /** The night that begins on the evening of a date. */
    public static GroundNight of(GroundSky ground, LocalDate date) {
        return new GroundNight(ground, date);
    }

    /** The sky over the place. */
    public GroundSky ground() {
        return ground;
    }

    /** Date of the evening. */
    public LocalDate date() {
        return date;
    }

    /** Mean noon to mean noon. */
    public TimeSpan span() {
        return span;
    }

    /** The Sun's course: meridian, setting and rising, dusks and dawns. */
    public GroundCourse sun() {
        Function<UtcTime, Vec3> sun = ground::sunDirection;
        List<GroundEvent> events = new ArrayList<>(meridian(sun));
        events.addAll(level(sun, Twilight.DAY.lowestDeg(), GroundEvent.Kind.RISE, GroundEvent.Kind.SET));
        events.addAll(level(sun, Twilight.CIVIL.lowestDeg(), GroundEvent.Kind.CIVIL_DAWN, GroundEvent.Kind.CIVIL_DUSK));
        events.addAll(level(
                sun, Twilight.NAUTICAL.lowestDeg(), GroundEvent.Kind.NAUTICAL_DAWN, GroundEvent.Kind.NAUTICAL_DUSK));
        events.addAll(level(
                sun,
                Twilight.ASTRONOMICAL.lowestDeg(),
                GroundEvent.Kind.ASTRONOMICAL_DAWN,
                GroundEvent.Kind.ASTRONOMICAL_DUSK));
        return course(sun, events, Twilight.DAY.lowestDeg());
    }

    /** A planet's course: rising, meridian, setting. */
    public GroundCourse planet(PlanetModel planet) {
        Function<UtcTime, Vec3> way = time -> ground.direction(planet, time);
        List<GroundEvent> events = new ArrayList<>(meridian(way));
        events.addAll(level(way, HORIZON_DEG, GroundEvent.Kind.RISE, GroundEvent.Kind.SET));
        return course(way, events, HORIZON_DEG);
    }

    /**
     * The stretches in which the Sun stands low enough and a planet high enough; none, one or two.
     *
     * @param planet the planet
     * @param sunBelowDeg altitude the Sun's centre must be under (deg): that of a {@link Twilight}'s end
     * @param planetAboveDeg altitude the planet's centre must be over, without refraction (deg)
     * @param stepMin step of the track (min), positive
     */
    public List<DarkWindow> windows(PlanetModel planet, double sunBelowDeg, double planetAboveDeg, double stepMin) {
        if (!(stepMin > 0)) {
            throw new IllegalArgumentException("step of " + stepMin + " min");
        }
        List<DarkWindow> windows = new ArrayList<>();
        List<TimeSpan> dark = where(ground::sunDirection, sunBelowDeg, false);
        for (TimeSpan high : where(time -> ground.direction(planet, time), planetAboveDeg, true)) {
            for (TimeSpan low : dark) {
                UtcTime from = high.from().compareTo(low.from()) > 0 ? high.from() : low.from();
                UtcTime to = high.to().compareTo(low.to()) < 0 ? high.to() : low.to();
                if (from.compareTo(to) < 0) {
                    TimeSpan both = new TimeSpan(from, to);
                    windows.add(new DarkWindow(both, track(planet, both, stepMin)));
                }
            }
        }
        windows.sort(Comparator.comparing(w -> w.span().from()));
        return windows;
    }

    private List<GroundView> track(PlanetModel planet, TimeSpan of, double stepMin) {
        List<GroundView> track = new ArrayList<>();
        int steps = Math.max(1, (int) Math.ceil(of.clockSeconds() / (60 * stepMin)));
        for (int i = 0; i < steps; i++) {
            track.add(ground.view(planet, of.from().plusClockSeconds(60 * stepMin * i)));
        }
        track.add(ground.view(planet, of.to()));
        return track;
    }

    private GroundCourse course(Function<UtcTime, Vec3> way, List<GroundEvent> events, double horizonDeg) {
        events.sort(Comparator.comparing(GroundEvent::time));
        return new GroundCourse(span, events, ground.altitudeDeg(way.apply(span.from())) >= horizonDeg);
    }

    private List<CurveSearch.Zero> zeros(Function<UtcTime, Vec3> way, double levelDeg) {
        double sine = Math.sin(Math.toRadians(levelDeg));
        return new CurveSearch(s -> ground.altitudeSine(way.apply(at(s))) - sine, bend).zeros(0, span.clockSeconds());
    }

    private List<GroundEvent> level(
            Function<UtcTime, Vec3> way, double levelDeg, GroundEvent.Kind up, GroundEvent.Kind down) {
        List<GroundEvent> events = new ArrayList<>();
        for (CurveSearch.Zero zero : zeros(way, levelDeg)) {
            double degPerS = (ground.altitudeDeg(way.apply(at(zero.atS() + 30)))
                            - ground.altitudeDeg(way.apply(at(zero.atS() - 30))))
                    / 60;
            // twilight is defined by the Sun's true place, rising and setting by where it is seen
            double scatterDeg = up == GroundEvent.Kind.RISE ? HORIZON_SCATTER_DEG : 0;
            double sigmaS = Math.hypot(scatterDeg / Math.abs(degPerS), UT1_SIGMA_S);
            events.add(event(zero.upward() ? up : down, way, zero.atS(), sigmaS));
        }
        return events;
    }

    private List<TimeSpan> where(Function<UtcTime, Vec3> way, double levelDeg, boolean above) {
        List<TimeSpan> spans = new ArrayList<>();
        boolean is = ground.altitudeSine(way.apply(span.from())) >= Math.sin(Math.toRadians(levelDeg)) == above;
        UtcTime since = span.from();
        for (CurveSearch.Zero zero : zeros(way, levelDeg)) {
            UtcTime then = at(zero.atS());
            if (is) {
                spans.add(new TimeSpan(since, then));
            }
            is = zero.upward() == above;
            since = then;
        }
        if (is) {
            spans.add(new TimeSpan(since, span.to()));
        }
        return spans;
    }

    /** The hour angle always grows, by some 15 deg an hour, so that its zeros are found by its sign. */
    private List<GroundEvent> meridian(Function<UtcTime, Vec3> way) {
        List<GroundEvent> events = new ArrayList<>();
        double step = 3600;
        for (double a = 0; a < span.clockSeconds(); a += step) {
            double b = Math.min(a + step, span.clockSeconds());
            for (int turn = 0; turn < 2; turn++) {
                double target = 180 * turn;
                double atA = hourAngle(way, a, target);
                double atB = hourAngle(way, b, target);
                if (atA < 0 && atB >= 0 && atB - atA < 90) {
                    double zero = Root.between(s -> hourAngle(way, s, target), a, atA, b, atB);
                    events.add(event(
                            turn == 0 ? GroundEvent.Kind.UPPER_TRANSIT : GroundEvent.Kind.LOWER_TRANSIT,
                            way,
                            zero,
                            UT1_SIGMA_S));
                }
            }
        }
        return events;
    }

    private double hourAngle(Function<UtcTime, Vec3> way, double seconds, double targetDeg) {
        return Math.IEEEremainder(ground.hourAngleDeg(way.apply(at(seconds))) - targetDeg, 360);
    }

    private GroundEvent event(GroundEvent.Kind kind, Function<UtcTime, Vec3> way, double seconds, double sigmaS) {
        UtcTime time = at(seconds);
        Vec3 direction = way.apply(time);
        return new GroundEvent(kind, time, sigmaS, ground.altitudeDeg(direction), ground.azimuthDeg(direction));
    }

    private UtcTime at(double seconds) {
        return span.from().plusClockSeconds(seconds);
    }
}
