/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

/**
 * One thing a file says about itself.
 *
 * @param group where it stands: "FITS", "Exif", "PNG", "XMP" …
 * @param key its name there, e.g. "DATE-OBS", "DateTimeOriginal", "OffsetTimeOriginal", "OBJECT"
 * @param value its text, as it stands, at most 2 000 characters
 */
public record HeaderFact(String group, String key, String value) {}
