/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jdbi.v3.core.Handle;

/** The catalog's diary: lines are added and read. */
final class HistoryRows {
    /** What is noted on a picture whose results were sent. */
    static final String REPORTED = "reported";

    void add(Handle handle, Instant now, String action, String subject, String detail) {
        handle.createUpdate(
                        "insert into history (at_utc, action, subject, detail) values (:at, :action, :subject, :detail)")
                .bind("at", UtcText.of(now))
                .bind("action", action)
                .bind("subject", subject)
                .bind("detail", detail)
                .execute();
    }

    List<HistoryEntry> newest(Handle handle, int limit) {
        return handle.createQuery(
                        "select id, at_utc, action, subject, detail from history order by id desc limit :limit")
                .bind("limit", limit <= 0 ? Integer.MAX_VALUE : limit)
                .map((rs, ctx) -> new HistoryEntry(
                        rs.getLong("id"),
                        UtcText.parse(rs.getString("at_utc")),
                        rs.getString("action"),
                        rs.getString("subject"),
                        rs.getString("detail")))
                .list();
    }

    Set<Long> reportedPictures(Handle handle) {
        return handle.createQuery("select distinct subject from history where action = :action")
                .bind("action", REPORTED)
                .mapTo(String.class)
                .map(subject -> Long.parseLong(subject.substring(subject.indexOf(' ') + 1)))
                .set();
    }
}
