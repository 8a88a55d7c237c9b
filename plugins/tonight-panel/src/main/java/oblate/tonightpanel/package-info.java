/* SPDX-License-Identifier: Apache-2.0 */
/**
 * The panel of the night to come: when it is dark and the planet high, what crosses the meridian, what the moons do.
 *
 * <p>It computes nothing of its own: all comes from {@link oblate.drift.plan.Planner}, and what is saved is written by {@link oblate.report.plan}, as on the
 * command line.
 */
package oblate.tonightpanel;
