/**
 * A panel that shows longitude against date, and the same chart as a picture file.
 *
 * <p>The concept a newcomer gets wrong: longitude is a circle, so that a line is drawn in as many pieces as it passes 0°; and time runs down the
 * page, so that the chart reads like a stack of maps.
 */
package oblate.chartpanel;
