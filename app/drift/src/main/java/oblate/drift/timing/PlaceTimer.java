/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import oblate.disc.Placement;
import oblate.sky.ApparentDisc;
import oblate.sky.MoonFacts;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.Standpoint;
import oblate.sky.UtcTime;

/**
 * Turns a marked moon or shadow into O−P: the moment is sought at which the foretold way runs nearest the mark; what is left across the way is the check. Safe
 * for many threads.
 */
final class PlaceTimer {
    /** Farther from the stated time no moment is sought (s). */
    private static final double REACH_S = 3 * 3600.0;

    private static final double LOOK_S = 300;
    private static final double LONGEST_STEP_S = 1800;
    private static final int STEPS = 25;
    /** A worse time than this is none (s): near its elongation a moon moves along the line of sight. */
    private static final double WORST_SIGMA_S = 900;

    /** From so many standard errors on something is said to be wrong. */
    static final double DOUBTFUL = 4.5;

    /**
     * Share of a fit's variance taken as common to the pictures of one night: fits of pictures alike lean the same way. Measured against the truth of the invented
     * season, 67 pairs of pictures of one night: 0.5 (centre along the equator), 0.6 (across), 0.7 (radius), 0.6 (pole angle).
     */
    private static final double COMMON_SHARE = 0.6;

    /**
     * A moon's light stands off its middle toward the Sun, a hand marks somewhere between the two: standard error as a share of the moon's radius times the sine of
     * the phase angle. The light of a sphere after Lambert stands off by 0.59; 0.3 covers the half of that.
     */
    private static final double PHASE_SHARE = 0.3;

    private final Sky sky;
    private final PlanetModel planet;
    private final MoonWay way;

    /** @param from where the marks to be timed were seen from */
    PlaceTimer(Sky sky, Standpoint from, PlanetModel planet) {
        this.sky = sky;
        this.planet = planet;
        way = new MoonWay(from, planet);
    }

    PlaceTiming time(PlaceMark mark) {
        MarkedPlace marked = MarkedPlace.of(mark);
        UtcTime stated = UtcTime.of(mark.shot().midUtc());
        Optional<Found> found = nearest(mark.subject(), marked, stated);
        if (found.isEmpty()) {
            return PlaceTiming.none(mark, lost(mark, marked, stated));
        }
        MoonWay.Point p = found.get().point();
        double unitX = p.speedX() / p.speed();
        double unitY = p.speedY() / p.speed();
        ApparentDisc disc = sky.disc(planet, stated);
        ErrorParts errors = errors(mark, marked, p, disc);
        if (!(errors.without(ErrorParts.CLOCK).totalS() < WORST_SIGMA_S)) {
            return PlaceTiming.none(mark, mark.subject().words() + " moves too slowly across the sky there");
        }
        double arcsec = disc.diameterEquatorialArcsec() / 2;
        double beside = (unitX * (marked.y() - p.y()) - unitY * (marked.x() - p.x())) * arcsec;
        ErrorParts besideErrors = effects(mark, marked, p, disc, -unitY, unitX, arcsec);
        double sigmaBeside = besideErrors.totalS();
        double oMinusP = -found.get().offsetS();
        List<String> doubts = new ArrayList<>();
        mark.caution().ifPresent(doubts::add);
        boolean usable = !isHidden(mark.subject(), p.place(), doubts);
        boolean across = Math.abs(beside) > DOUBTFUL * sigmaBeside;
        boolean along = Math.abs(oMinusP) > DOUBTFUL * errors.totalS();
        if (across) {
            doubts.add(String.format(
                    Locale.ROOT, "%.1f standard errors off its foretold way", Math.abs(beside) / sigmaBeside));
        }
        if (along) {
            doubts.add(String.format(
                    Locale.ROOT, "%.0f standard errors from its foretold time", Math.abs(oMinusP) / errors.totalS()));
        }
        boolean recallable = false;
        if (across || along) {
            Optional<String> instead = instead(mark, stated);
            instead.ifPresent(doubts::add);
            recallable = usable && !across && instead.isPresent();
            usable &= !across && instead.isEmpty();
        }
        return new PlaceTiming(mark, oMinusP, errors, beside, besideErrors, doubts, usable, recallable);
    }

    /** A moment of the way: how long after the stated time, and where. */
    private record Found(double offsetS, MoonWay.Point point) {}

    private Optional<Found> nearest(MoonSubject subject, MarkedPlace marked, UtcTime stated) {
        double offset = 0;
        Optional<MoonWay.Point> p = way.at(subject, stated);
        if (p.isEmpty()) {
            OptionalLook look = look(subject, marked, stated);
            if (look.point.isEmpty()) {
                return Optional.empty();
            }
            offset = look.offsetS;
            p = look.point;
        }
        for (int i = 0; i < STEPS; i++) {
            MoonWay.Point at = p.get();
            double step = ((marked.x() - at.x()) * at.speedX() + (marked.y() - at.y()) * at.speedY())
                    / (at.speed() * at.speed());
            if (!Double.isFinite(step)) {
                return Optional.empty();
            }
            step = Math.max(-LONGEST_STEP_S, Math.min(LONGEST_STEP_S, step));
            Optional<MoonWay.Point> next = way.at(subject, stated.plusClockSeconds(offset + step));
            if (next.isEmpty()) {
                // Off the seen globe: the mark lies beyond the edge the shadow comes over; the line is drawn on from
                // where it was last.
                return Math.abs(step) < LOOK_S ? Optional.of(drawnOn(offset, step, at)) : Optional.empty();
            }
            offset += step;
            p = next;
            if (Math.abs(offset) > REACH_S) {
                return Optional.empty();
            }
            if (Math.abs(step) < 0.01) {
                return Optional.of(new Found(offset, at));
            }
        }
        return Optional.empty();
    }

    private static Found drawnOn(double offset, double step, MoonWay.Point at) {
        return new Found(
                offset + step,
                new MoonWay.Point(
                        at.x() + step * at.speedX(),
                        at.y() + step * at.speedY(),
                        at.speedX(),
                        at.speedY(),
                        at.place()));
    }

    /** What a coarse look along the way found. */
    private record OptionalLook(double offsetS, Optional<MoonWay.Point> point) {}

    /** Where a shadow that is not there at the stated time comes nearest the mark. */
    private OptionalLook look(MoonSubject subject, MarkedPlace marked, UtcTime stated) {
        OptionalLook best = new OptionalLook(0, Optional.empty());
        double least = Double.POSITIVE_INFINITY;
        for (double s = -REACH_S; s <= REACH_S; s += LOOK_S) {
            Optional<MoonWay.Point> p = way.at(subject, stated.plusClockSeconds(s));
            if (p.isPresent()) {
                double away = Math.hypot(p.get().x() - marked.x(), p.get().y() - marked.y());
                if (away < least) {
                    least = away;
                    best = new OptionalLook(s, p);
                }
            }
        }
        return best;
    }

    private String lost(PlaceMark mark, MarkedPlace marked, UtcTime stated) {
        String what = mark.subject().words() + " is not there within 3 h of the stated time";
        return instead(mark, stated).map(i -> what + "; " + i).orElse(what);
    }

    private static boolean isHidden(MoonSubject subject, MoonPlace place, List<String> doubts) {
        if (subject.shadow()) {
            return false;
        }
        if (place.occulted()) {
            doubts.add(subject.words() + " was behind the planet then");
        } else if (place.eclipsed()) {
            doubts.add(subject.words() + " was in the planet's shadow then");
        }
        return place.occulted() || place.eclipsed();
    }

    /** Effect of each error on O−P (s). A mark displaced along the motion seems to be there early. */
    private ErrorParts errors(PlaceMark mark, MarkedPlace marked, MoonWay.Point p, ApparentDisc disc) {
        double speed = p.speed();
        ErrorParts sky = effects(mark, marked, p, disc, -p.speedX() / speed, -p.speedY() / speed, 1 / speed);
        Map<String, Double> shared = new LinkedHashMap<>(sky.shared());
        shared.put(ErrorParts.CLOCK + mark.shot().clock(), mark.shot().sigmaS());
        return new ErrorParts(sky.ownS(), shared);
    }

    /** Effect of each error but the clock's along a direction, in units of which one radius has {@code scale}. */
    private ErrorParts effects(
            PlaceMark mark,
            MarkedPlace marked,
            MoonWay.Point p,
            ApparentDisc disc,
            double unitX,
            double unitY,
            double scale) {
        Map<String, Double> shared = new LinkedHashMap<>();
        for (int k = 0; k < 4; k++) {
            double part = marked.along(k, unitX, unitY) * scale;
            shared.put(ErrorParts.PICTURE + mark.shot().key() + " " + k, part * Math.sqrt(1 - COMMON_SHARE));
            shared.put(ErrorParts.NIGHT_FIT + mark.shot().clock() + " " + k, part * Math.sqrt(COMMON_SHARE));
        }
        double orbitRadii =
                mark.subject().moon().sigmaKm() / planet.globe().figure().equatorialRadiusKm();
        shared.put(ErrorParts.ORBIT + mark.subject().moon().id(), orbitRadii * scale);
        if (!mark.subject().shadow()) {
            // A moon before its planet is seen the farther east of it the farther west the observer is.
            double aside = Standpoints.unknownShift(
                    mark.shot().site(), p.place().zTowardEarthRadii(), p.place().distanceAu());
            shared.put(ErrorParts.SITE + mark.shot().clock() + " west", -aside * unitX * scale);
            shared.put(ErrorParts.SITE + mark.shot().clock() + " north", -aside * unitY * scale);
        }
        double light = phase(mark.subject(), p.place(), disc);
        if (light > 0) {
            double angle = Math.toRadians(disc.brightLimbPaDeg() - disc.northPolePaDeg());
            double toSun = -unitX * Math.sin(angle) + unitY * Math.cos(angle);
            shared.put(ErrorParts.PHASE + mark.subject().moon().id(), toSun * light * scale);
        }
        return new ErrorParts(marked.pick() * scale, shared);
    }

    /** How far the moon's light may stand off its middle (radii of the planet, as a standard error). */
    private double phase(MoonSubject subject, MoonPlace place, ApparentDisc disc) {
        return subject.shadow()
                ? 0
                : PHASE_SHARE
                        * place.diameterArcsec()
                        / 2
                        / place.planetRadiusArcsec()
                        * Math.sin(Math.toRadians(disc.phaseAngleDeg()));
    }

    /** What else the mark may be: another moon or shadow, or the same in a picture turned or mirrored. */
    private Optional<String> instead(PlaceMark mark, UtcTime stated) {
        for (MoonFacts moon : planet.moons()) {
            for (boolean shadow : new boolean[] {false, true}) {
                MoonSubject other = new MoonSubject(moon, shadow);
                if (!other.equals(mark.subject()) && fits(mark, other, stated)) {
                    return Optional.of("it lies where " + other.words() + " was");
                }
            }
        }
        Placement p = mark.placement();
        for (int w = 1; w < 4; w++) {
            boolean mirrored = w % 2 == 1;
            Placement turned = new Placement(
                    p.centreXPx(),
                    p.centreYPx(),
                    p.equatorialRadiusPx(),
                    p.poleAngleDeg() + (w >= 2 ? 180 : 0),
                    p.mirrored() ^ mirrored);
            PlaceMark as = new PlaceMark(
                    mark.shot(),
                    mark.subject(),
                    turned,
                    mark.covariance(),
                    mark.pixel(),
                    mark.pickSigmaPx(),
                    mark.caution());
            if (fits(as, mark.subject(), stated)) {
                return Optional.of(
                        w == 1
                                ? "it fits when the picture is mirrored the other way"
                                : w == 2
                                        ? "it fits when north is the other way up"
                                        : "it fits when north is the other way up and the picture mirrored the other way");
            }
        }
        return Optional.empty();
    }

    private boolean fits(PlaceMark mark, MoonSubject subject, UtcTime stated) {
        Optional<MoonWay.Point> p = way.at(subject, stated);
        if (p.isEmpty()
                || !subject.shadow()
                        && (p.get().place().occulted() || p.get().place().eclipsed())) {
            return false;
        }
        MarkedPlace marked = MarkedPlace.of(mark);
        double x = marked.x() - p.get().x();
        double y = marked.y() - p.get().y();
        double away = Math.hypot(x, y);
        double late = mark.shot().sigmaS() * p.get().speed();
        return away < DOUBTFUL * Math.hypot(marked.sigmaAlong(x / away, y / away), late);
    }
}
