/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;
import oblate.sky.ApparentDisc;
import oblate.sky.GroundCourse;
import oblate.sky.GroundEvent;
import oblate.sky.GroundNight;
import oblate.sky.GroundSky;
import oblate.sky.GroundView;
import oblate.sky.MeridianCrossing;
import oblate.sky.MeridianCrossings;
import oblate.sky.MovingLongitude;
import oblate.sky.RotationSmear;
import oblate.sky.RotationSystem;
import oblate.sky.Sky;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.workbench.look.Figures;
import oblate.workbench.pictures.SystemLabel;
import oblate.workbench.words.Texts;

/**
 * The figures for an instant, ready to be read. Immutable.
 *
 * @param planet distance, size, phase and central meridians
 * @param site what the place sees; empty without one
 * @param smear turn in a capture
 * @param crossing next crossing of a longitude
 * @param caution a word of warning about the Sun
 */
record InstantFacts(
        List<Line> planet, List<Line> site, List<Line> smear, List<Line> crossing, Optional<String> caution) {
    private static final Texts TEXTS = Texts.of(InstantFacts.class);
    private static final double CROSSING_TURNS = 1.2;
    private static final double DAY_S = 86_400;

    /** A name with its value. */
    record Line(String name, String value) {}

    /**
     * What is asked.
     *
     * @param wish planet and place
     * @param time the instant
     * @param captureS length of a capture (s), positive
     * @param system system of the longitude
     * @param lonDeg a longitude (deg, 0…360)
     */
    record Question(Wish wish, UtcTime time, double captureS, RotationSystem system, double lonDeg) {}

    static InstantFacts of(Grounds grounds, Question q) {
        Sky sky = grounds.sky();
        ApparentDisc disc = sky.disc(q.wish().planet(), q.time());
        List<Line> site = new ArrayList<>();
        Optional<String> caution = Optional.empty();
        Optional<GroundSky> ground = grounds.over(q.wish().site());
        if (ground.isPresent()) {
            GroundView view = ground.get().view(q.wish().planet(), q.time());
            overSite(site, view);
            course(site, q, ground.get());
            if (view.isSunDangerous() && view.altitudeDeg() > 0) {
                caution = Optional.of(TEXTS.text(
                        "caution.sun",
                        Figures.fixed(view.sunSeparationDeg(), 0),
                        q.wish().planet().label()));
            }
        }
        return new InstantFacts(planet(disc), site, smear(sky, q, disc), crossing(sky, q), caution);
    }

    private static List<Line> planet(ApparentDisc disc) {
        List<Line> lines = new ArrayList<>();
        for (RotationSystem system : disc.planet().globe().systems()) {
            lines.add(new Line(
                    TEXTS.text("fact.cm", SystemLabel.brief(system)),
                    Figures.longitude(disc.centralMeridianDeg(system))));
        }
        lines.add(new Line(
                TEXTS.text("fact.diameter"),
                Figures.fixed(disc.diameterEquatorialArcsec(), 2) + "″ × "
                        + Figures.fixed(disc.diameterPolarArcsec(), 2) + "″"));
        lines.add(new Line(
                TEXTS.text("fact.tilt"),
                TEXTS.text("fact.tilt.value", Figures.fixed(disc.subEarth().latGraphicDeg(), 1))));
        lines.add(new Line(TEXTS.text("fact.pole"), Figures.fixed(disc.northPolePaDeg(), 1) + "°"));
        lines.add(new Line(TEXTS.text("fact.phase"), Figures.fixed(disc.phaseAngleDeg(), 1) + "°"));
        return lines;
    }

    private static void overSite(List<Line> lines, GroundView view) {
        lines.add(new Line(TEXTS.text("fact.altitude"), Figures.fixed(view.altitudeDeg(), 1) + "°"));
        lines.add(new Line(TEXTS.text("fact.azimuth"), Figures.fixed(view.azimuthDeg(), 1) + "°"));
        lines.add(new Line(
                TEXTS.text("fact.sun"),
                Figures.fixed(view.sunAltitudeDeg(), 1) + "°, "
                        + TEXTS.text("twilight." + view.twilight().word())));
    }

    private static void course(List<Line> lines, Question q, GroundSky ground) {
        LocalDate evening = Stretch.eveningOf(q.time(), q.wish().site());
        GroundCourse course = GroundNight.of(ground, evening).planet(q.wish().planet());
        lines.add(line(course, GroundEvent.Kind.RISE, "fact.rise"));
        lines.add(line(course, GroundEvent.Kind.UPPER_TRANSIT, "fact.transit"));
        lines.add(line(course, GroundEvent.Kind.SET, "fact.set"));
        if (course.neverUp()) {
            lines.add(new Line("", TEXTS.text("fact.neverup")));
        } else if (course.alwaysUp()) {
            lines.add(new Line("", TEXTS.text("fact.alwaysup")));
        }
    }

    private static Line line(GroundCourse course, GroundEvent.Kind kind, String key) {
        return new Line(
                TEXTS.text(key),
                course.first(kind)
                        .map(e -> Figures.clockUt(e.time().toInstant())
                                + (kind == GroundEvent.Kind.UPPER_TRANSIT
                                        ? ", " + Figures.fixed(e.altitudeDeg(), 0) + "°"
                                        : " ± " + Figures.fixed(e.sigmaS() / 60, 1) + " min"))
                        .orElse("–"));
    }

    private static List<Line> smear(Sky sky, Question q, ApparentDisc disc) {
        double lat = disc.subEarth().latGraphicDeg();
        RotationSmear smear =
                RotationSmear.at(sky, q.wish().planet(), q.wish().planet().customarySystem(lat), q.time(), lat);
        return List.of(
                new Line(TEXTS.text("fact.turn"), Figures.fixed(smear.turnedDeg(q.captureS()), 2) + "°"),
                new Line(
                        TEXTS.text("fact.length"),
                        Figures.fixed(smear.lengthKm(q.captureS()), 0) + " km, "
                                + Figures.fixed(smear.lengthArcsec(q.captureS()), 2) + "″"));
    }

    private static List<Line> crossing(Sky sky, Question q) {
        double turnS = 360 / Math.abs(q.system().degPerDay()) * DAY_S;
        try {
            List<MeridianCrossing> found = new MeridianCrossings(sky, q.wish().planet(), q.system())
                    .between(
                            MovingLongitude.fixed(q.lonDeg(), 0),
                            new TimeSpan(q.time(), q.time().plusClockSeconds(CROSSING_TURNS * turnS)));
            String said = found.isEmpty()
                    ? "–"
                    : found.get(0).time().iso(0).replace('T', ' ').replace("Z", " UT");
            return List.of(new Line(TEXTS.text("fact.next"), said));
        } catch (ProblemException e) {
            return List.of(new Line(TEXTS.text("fact.next"), e.getMessage()));
        }
    }
}
