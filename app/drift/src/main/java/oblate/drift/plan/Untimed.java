/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

/**
 * A feature that the plan gives no time for.
 *
 * @param feature its name
 * @param why the reason, as words that may follow its name and a colon
 */
public record Untimed(String feature, String why) {}
