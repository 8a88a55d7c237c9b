/* SPDX-License-Identifier: Apache-2.0 */
/**
 * The ladder: strips of a planet's map, one per picture, each at its own date, in a frame that moves with a drift.
 *
 * <p>The concept a newcomer gets wrong: the frame's zero is a longitude only at the frame's epoch. At any other instant it is another longitude, and a feature that
 * moves at the frame's rate keeps its place in the frame while its longitude runs away.
 */
package oblate.report.ladder;
