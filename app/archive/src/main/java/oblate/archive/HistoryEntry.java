/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;

/**
 * One line of the catalog's history.
 *
 * @param id number, growing
 * @param atUtc when
 * @param action "filed", "fitted", "marked", "superseded", "withdrawn", "feature added" …
 * @param subject what it was done to, e.g. "picture 12", "mark 40"
 * @param detail one sentence
 */
public record HistoryEntry(long id, Instant atUtc, String action, String subject, String detail) {}
