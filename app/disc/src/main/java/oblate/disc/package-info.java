/**
 * Where the apparent disc lies in a picture, and what that makes of pixels: fits, frames, grids, error budgets.
 *
 * <p>The concept a newcomer gets wrong: the outline of an oblate planet is an ellipse whose axis ratio depends on the tilt, only its lit part can
 * be seen, and the edge of a sharpened, limb-darkened disc is not where the brightness is steepest. Coordinates: pixel centres are whole
 * numbers, origin top left as displayed, x right, y down.
 */
package oblate.disc;
