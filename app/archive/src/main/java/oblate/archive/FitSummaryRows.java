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
    private static final String CURRENT = "not exists (select 1 from disc_fit x where x.supersedes = f.id)";

    private static final String FITS = "select f.id, f.picture_id, f.trust, f.pole_angle_deg, f.mirrored from disc_fit f where " + CURRENT;

    private static final String REASONS =
            "select r.fit_id, r.sentence from fit_reason r join disc_fit f on f.id = r.fit_id where " + CURRENT
                    + " order by r.fit_id, r.ordinal";

    private static final String CLOCKS =
            "select w.fit_id, w.value, w.sigma from fit_witness w join disc_fit f on f.id = w.fit_id"
                    + " where w.quantity = 'clock offset' and w.value is not null and w.sigma is not null and "
                    + CURRENT;

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
