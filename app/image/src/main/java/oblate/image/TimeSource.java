/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

/** Where a capture time was found, in the order in which they are believed. */
public enum TimeSource {
    USER,
    FITS,
    EXIF,
    FILE_NAME,
    SIDE_NOTE
}
