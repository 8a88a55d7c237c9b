/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Links settled by hand: added, and the newest word about each mark read. */
final class SettlementRows {
    /** A mark moved or named since is another row; the word follows it. */
    private static final String CURRENT = """
            with recursive heir (origin, mark_id) as (
              select mark_id, mark_id from link_settlement
              union select h.origin, m.id from heir h join mark m on m.supersedes = h.mark_id),
            word (id, mark_id, verdict, track, reason, settled_utc) as (
              select s.id, h.mark_id, s.verdict, s.track, s.reason, s.settled_utc
              from link_settlement s join heir h on h.origin = s.mark_id
              where not exists (select 1 from mark m where m.supersedes = h.mark_id)
                and not exists (select 1 from mark_withdrawal w where w.mark_id = h.mark_id))
            select mark_id, verdict, track, reason, settled_utc from word w
            where w.id = (select max(x.id) from word x where x.mark_id = w.mark_id) and w.verdict <> 'open'
            order by mark_id
            """;

    void add(Handle handle, LinkSettlement s, Instant now) {
        handle.createUpdate("""
                        insert into link_settlement (mark_id, verdict, track, reason, settled_utc)
                        values (:mark, :verdict, :track, :reason, :at)
                        """)
                .bind("mark", s.markId())
                .bind("verdict", s.verdict().name().toLowerCase(Locale.ROOT))
                .bind("track", s.track())
                .bind("reason", s.reason())
                .bind("at", UtcText.of(now))
                .execute();
    }

    List<LinkSettlement> current(Handle handle) {
        return handle.createQuery(CURRENT)
                .map((rs, ctx) -> new LinkSettlement(
                        rs.getLong("mark_id"),
                        LinkSettlement.Verdict.valueOf(rs.getString("verdict").toUpperCase(Locale.ROOT)),
                        Columns.text(rs, "track"),
                        rs.getString("reason"),
                        Optional.of(UtcText.parse(rs.getString("settled_utc")))))
                .list();
    }
}
