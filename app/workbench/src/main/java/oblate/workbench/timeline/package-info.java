/* SPDX-License-Identifier: Apache-2.0 */
/**
 * Bands of events over an axis of time, for panels that paint a night: the axis, and fills that tell kinds of events apart without colour. Holds no state.
 */
package oblate.workbench.timeline;
