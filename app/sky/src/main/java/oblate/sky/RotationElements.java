/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.List;

/**
 * Direction of a planet's north pole on the ICRF and the periodic part of its prime meridian, as the IAU working group tabulates them.
 *
 * @param poleRaDeg right ascension of the pole at J2000 (deg, ICRF)
 * @param poleRaDegPerCentury its rate (deg per Julian century)
 * @param poleDecDeg declination of the pole at J2000 (deg, ICRF)
 * @param poleDecDegPerCentury its rate (deg per Julian century)
 * @param poleRaTerms periodic terms of the right ascension
 * @param poleDecTerms periodic terms of the declination
 * @param meridianTerms periodic terms of W, common to all systems
 * @param source paper
 */
public record RotationElements(
        double poleRaDeg,
        double poleRaDegPerCentury,
        double poleDecDeg,
        double poleDecDegPerCentury,
        List<PeriodicTerm> poleRaTerms,
        List<PeriodicTerm> poleDecTerms,
        List<PeriodicTerm> meridianTerms,
        String source) {

    /** Copies the lists. */
    public RotationElements {
        poleRaTerms = List.copyOf(poleRaTerms);
        poleDecTerms = List.copyOf(poleDecTerms);
        meridianTerms = List.copyOf(meridianTerms);
    }
}
