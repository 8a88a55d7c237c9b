/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * A point of a globe under the Earth or under the Sun, at the instant the light left the planet.
 *
 * @param globe the planet's systems, giving {@code lonDeg} its order
 * @param lonDeg planetographic longitude (deg, 0…360, counted as the planet's {@link LongitudeSense}) in each system, in the order of
 *     {@code globe.systems()}
 * @param latCentricDeg declination over the planet's equator = planetocentric latitude (deg, north positive)
 * @param latGraphicDeg planetographic latitude of the same surface point (deg)
 */
public record SubPoint(Globe globe, java.util.List<Double> lonDeg, double latCentricDeg, double latGraphicDeg) {

    /** Copies the list. */
    public SubPoint {
        lonDeg = java.util.List.copyOf(lonDeg);
    }

    /** Longitude (deg, 0…360) in the IAU's system. */
    public double iauLonDeg() {
        return lonDeg(globe.iauSystem());
    }

    /**
     * Longitude (deg, 0…360) in a system.
     *
     * @throws IllegalArgumentException when the planet has no such system
     */
    public double lonDeg(RotationSystem system) {
        int index = globe.indexOf(system);
        if (index < 0) {
            throw new IllegalArgumentException(system.label());
        }
        return lonDeg.get(index);
    }
}
