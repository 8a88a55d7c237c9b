/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** Where a place on the turning Earth stands. */
@FunctionalInterface
interface Foothold {

    /**
     * Vector from the Earth's centre to the place (km, ICRF axes).
     *
     * @param ttDays days of TT from J2000
     */
    Vec3 fromCentreKm(double ttDays);
}
