/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import oblate.disc.Trust;
import org.jdbi.v3.core.Handle;

/** Reads the current fits of all pictures at once, in three queries however many there are. */
final class FitSummaryRows {
    // The chain of a picture's fits has no forks, so the newest that is not withdrawn is the current one.
    private static final String FITS = """
            select f.id, f.picture_id, f.trust, f.pole_angle_deg, f.mirrored from disc_fit f
            where f.id = (select max(v.id) from disc_fit v where v.picture_id = f.picture_id
               and not exists (select 1 from fit_withdrawal w where w.fit_id = v.id))
            """;

    private static final String REASONS = """
            select r.fit_id, r.sentence from fit_reason r join disc_fit f on f.id = r.fit_id
            where f.id = (select max(v.id) from disc_fit v where v.picture_id = f.picture_id
               and not exists (select 1 from fit_withdrawal w where w.fit_id = v.id))
            order by r.fit_id, r.ordinal
            """;

    // What the moons said of a time that was corrected since is no word on the time as it is now.
    private static final String CLOCKS = """
            select c.fit_id, c.value, c.sigma from fit_witness c join disc_fit f on f.id = c.fit_id
            where c.quantity = 'clock offset' and c.value is not null and c.sigma is not null
              and f.id = (select max(v.id) from disc_fit v where v.picture_id = f.picture_id
               and not exists (select 1 from fit_withdrawal w where w.fit_id = v.id))
              and not exists (select 1 from history h where h.subject = 'picture ' || f.picture_id
                and h.action = 'corrected' and h.at_utc > f.made_utc
                and (h.detail like 'time: %' or h.detail like '%, time: %'))
            """;

    /** Value and standard error (s). */
    private record Clock(double offsetS, double sigmaS) {}

    List<FitSummary> all(Handle handle) {
        Map<Long, List<String>> reasons = new HashMap<>();
        handle.createQuery(REASONS)
                .map((rs, ctx) -> reasons.computeIfAbsent(rs.getLong("fit_id"), id -> new ArrayList<>())
                        .add(rs.getString("sentence")))
                .list();
        Map<Long, Clock> clocks = new HashMap<>();
        handle.createQuery(CLOCKS)
                .map((rs, ctx) ->
                        clocks.put(rs.getLong("fit_id"), new Clock(rs.getDouble("value"), rs.getDouble("sigma"))))
                .list();
        return handle.createQuery(FITS)
                .map((rs, ctx) -> {
                    long id = rs.getLong("id");
                    Clock clock = clocks.get(id);
                    return new FitSummary(
                            rs.getLong("picture_id"),
                            id,
                            Trust.valueOf(rs.getString("trust")),
                            rs.getDouble("pole_angle_deg"),
                            rs.getInt("mirrored") != 0,
                            reasons.getOrDefault(id, List.of()),
                            clock == null ? OptionalDouble.empty() : OptionalDouble.of(clock.offsetS()),
                            clock == null ? OptionalDouble.empty() : OptionalDouble.of(clock.sigmaS()));
                })
                .list();
    }
}
