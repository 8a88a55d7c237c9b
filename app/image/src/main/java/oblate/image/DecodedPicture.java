/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

/**
 * Header and pixels of one file.
 *
 * @param header what it says
 * @param pixels what it shows
 */
public record DecodedPicture(PictureHeader header, PixelGrid pixels) {}
