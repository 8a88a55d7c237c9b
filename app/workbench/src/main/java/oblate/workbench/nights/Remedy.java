/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

/**
 * A way to mend something.
 *
 * @param label what it does, a few words
 * @param hint what it changes, one sentence
 * @param deed does it; on the event thread
 */
record Remedy(String label, String hint, Runnable deed) {}
