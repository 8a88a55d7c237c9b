/* SPDX-License-Identifier: Apache-2.0 */
/**
 * Report formats that ship: aligned text for people, CSV (RFC 4180) for spreadsheets and programs, JSON for programs; and readers for the last two.
 *
 * <p>The concept a newcomer gets wrong: rounding is the table's, not the writer's. A writer changes how a figure looks, never which figure it is.
 */
package oblate.tables;
