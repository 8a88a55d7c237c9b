/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * A named band of latitude: a belt, a zone, a polar region.
 *
 * @param name general nomenclature, e.g. "South Equatorial Belt"
 * @param shortName e.g. "SEB"
 * @param southLatGraphicDeg southern edge, planetographic (deg)
 * @param northLatGraphicDeg northern edge, planetographic (deg)
 * @param dark a belt rather than a zone
 */
public record Region(
        String name, String shortName, double southLatGraphicDeg, double northLatGraphicDeg, boolean dark) {}
