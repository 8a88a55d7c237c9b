/**
 * Picture files: what their bytes say they are, their pixels, and the time they were taken.
 *
 * <p>The concept a newcomer gets wrong: a file's pixels and its time are two questions, and the time is a claim with a source and an
 * uncertainty. Pixel (0, 0) is the centre of the top-left pixel of the picture as displayed, x right, y down; FITS rows are turned over on
 * reading, and that is no mirroring of the sky. This package knows nothing of planets in pictures.
 */
package oblate.image;
