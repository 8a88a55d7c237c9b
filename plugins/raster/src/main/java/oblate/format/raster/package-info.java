/**
 * PNG, JPEG and TIFF as picture formats.
 *
 * <p>The concept a newcomer gets wrong: samples are wanted as they are stored, so nothing here converts colours. Colour profiles and gamma
 * chunks are passed by, palettes are looked up, alpha is dropped (the colour under a transparent pixel stays as it is in the file), and what
 * is stored inverted (white is zero) is turned the right way round. Only the Exif orientation moves pixels, because pixel coordinates are
 * those of the picture as displayed.
 */
package oblate.format.raster;
