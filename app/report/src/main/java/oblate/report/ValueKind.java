/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

/** What the values of a column are: {@code String}, {@code Double}, {@code Long}, {@code java.time.Instant} or {@code Boolean}. */
public enum ValueKind {
    TEXT,
    NUMBER,
    INTEGER,
    TIME,
    BOOLEAN
}
