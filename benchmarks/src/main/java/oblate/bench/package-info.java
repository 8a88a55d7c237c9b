/* SPDX-License-Identifier: Apache-2.0 */
/**
 * Measures speed by JMH. Stands outside the line of stages and is not shipped, so unlike the program it may see Orekit beside the sky, to measure the
 * one against the other.
 */
package oblate.bench;
