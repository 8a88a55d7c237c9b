/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.time.LocalDate;
import oblate.sky.GroundSky;
import oblate.sky.PlanetModel;

/**
 * What a plan is wanted for.
 *
 * @param planet the planet
 * @param ground the sky over the place
 * @param first evening of the first night
 * @param last evening of the last night, not before the first
 * @param sunBelowDeg dark enough when the Sun's centre is below this (deg)
 * @param minAltitudeDeg high enough when the planet's centre is above this, without refraction (deg)
 * @param smear smear that a capture may have
 * @param shortNm shorter of the wavelengths between which dispersion is told (nm)
 * @param longNm the longer (nm)
 */
public record PlanWish(
        PlanetModel planet,
        GroundSky ground,
        LocalDate first,
        LocalDate last,
        double sunBelowDeg,
        double minAltitudeDeg,
        SmearLimit smear,
        double shortNm,
        double longNm) {

    /** Most nights of one plan. */
    public static final int MOST_NIGHTS = 366;

    /**
     * Checks the order of the dates.
     *
     * @throws IllegalArgumentException when the last lies before the first, or more than {@link #MOST_NIGHTS} would be planned
     */
    public PlanWish {
        if (last.isBefore(first) || !last.isBefore(first.plusDays(MOST_NIGHTS))) {
            throw new IllegalArgumentException(first + " to " + last);
        }
    }

    /** Whether one night is planned. */
    public boolean isOneNight() {
        return first.equals(last);
    }
}
