/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * A frame that turns with a planet at a constant rate, in which longitudes are counted.
 *
 * @param id "1", "2", "3" where the trade numbers the systems (Jupiter, Saturn), else "iau"
 * @param label what a person reads: "System II", or "IAU" for a planet with one system
 * @param w0Deg angle W of the prime meridian at J2000 TDB (deg), periodic terms apart
 * @param degPerDay rate of W (deg per day of TDB); negative for Venus and Uranus
 * @param source paper or practice the constants are from
 */
public record RotationSystem(String id, String label, double w0Deg, double degPerDay, String source) {}
