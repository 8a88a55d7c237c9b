/* SPDX-License-Identifier: Apache-2.0 */
/**
 * A plan of nights to read by red light, and as a calendar.
 *
 * <p>The concept a newcomer gets wrong: a calendar file is no table. Its lines are folded by octets, its times are UTC with a Z, and an entry is known by its UID:
 * a newer plan of the same night must keep it, or the old entry stays beside the new one.
 */
package oblate.report.plan;
