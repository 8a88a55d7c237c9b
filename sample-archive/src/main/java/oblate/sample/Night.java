/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import java.time.LocalDate;

/**
 * One evening with one kit, as the observer notes it.
 *
 * @param evening date of the evening at the site
 * @param siteId where
 * @param observer who
 * @param kitId with what
 * @param pictures how many were kept
 * @param seeing Antoniadi scale, 1 best … 5 worst, at the first picture
 * @param transparencyMag faintest star seen with the naked eye near the planet (mag)
 */
public record Night(
        LocalDate evening,
        String siteId,
        String observer,
        String kitId,
        int pictures,
        int seeing,
        double transparencyMag) {}
