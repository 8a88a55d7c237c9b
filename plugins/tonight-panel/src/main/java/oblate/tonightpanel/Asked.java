/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Optional;
import oblate.drift.plan.PlanWish;
import oblate.drift.plan.SmearLimit;
import oblate.sky.GroundSky;
import oblate.sky.PlanetModel;

/**
 * What a person asked for.
 *
 * @param planet the planet
 * @param place where from
 * @param date evening of the night; empty for the coming one
 * @param sunBelowDeg dark enough when the Sun's centre is below this (deg)
 * @param minAltitudeDeg high enough when the planet's centre is above this (deg)
 * @param smear smear that a capture may have
 */
record Asked(
        PlanetModel planet,
        Place place,
        Optional<LocalDate> date,
        double sunBelowDeg,
        double minAltitudeDeg,
        SmearLimit smear) {
    /** Wavelengths between which dispersion is told (nm): blue and red of a colour camera. */
    static final double SHORT_NM = 450;

    /** The longer of them. */
    static final double LONG_NM = 650;

    /** The wish for one night. */
    PlanWish night(GroundSky ground, LocalDate evening) {
        return wish(ground, evening, evening);
    }

    /** The wish for all nights of a month. */
    PlanWish month(GroundSky ground, YearMonth month) {
        return wish(ground, month.atDay(1), month.atEndOfMonth());
    }

    private PlanWish wish(GroundSky ground, LocalDate first, LocalDate last) {
        return new PlanWish(planet, ground, first, last, sunBelowDeg, minAltitudeDeg, smear, SHORT_NM, LONG_NM);
    }
}
