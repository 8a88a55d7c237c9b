/**
 * How features move: longitude series, robust fits, rates, periods, speeds, predictions.
 *
 * <p>The concept a newcomer gets wrong: longitudes grow westward on direct rotators, so a feature that runs ahead of its system has a
 * <em>decreasing</em> longitude, and a longitude is brought into another system at its own instant, never by adding a fixed number.
 */
package oblate.drift;
