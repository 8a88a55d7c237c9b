/**
 * FITS as a picture format (FITS standard 4.0).
 *
 * <p>The concept a newcomer gets wrong: the first stored row is the bottom of the picture, so rows are turned over on reading, and that is
 * no mirroring of the sky. Unsigned integers of 8, 16 and 32 bits become fractions of their full range; all other samples keep their values,
 * and black and white are their least and largest.
 */
package oblate.format.fits;
