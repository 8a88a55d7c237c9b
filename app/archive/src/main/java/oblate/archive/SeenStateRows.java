/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;
import org.jdbi.v3.core.Handle;

/** What was seen of moons: added, and the newest word about each read. */
final class SeenStateRows {
    private static final String ALL = """
            select s.id, s.picture_id, s.look_utc, s.look_sigma_s, o.name as observer, t.name as site, s.planet_id, s.moon_id,
              s.phenomenon, s.state, s.seen_by, s.said_utc
            from seen_state s
              left join observer o on o.id = s.observer_id
              left join site t on t.id = s.site_id
            """;

    private static final String NEWEST = """
            s.id in (select max(x.id) from seen_state x
              group by x.planet_id, x.moon_id, x.phenomenon, x.picture_id, x.look_utc, x.observer_id)
            """;

    private final GearRows gear;

    SeenStateRows(GearRows gear) {
        this.gear = gear;
    }

    /** @throws ProblemException with {@link ArchiveProblem#NO_SUCH_SITE} */
    void add(Handle handle, SeenState said, Instant now) {
        Optional<SeenState.Look> look = said.look();
        Optional<Long> site = look.flatMap(SeenState.Look::site).map(name -> gear.siteId(handle, name)
                .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_SITE, name)));
        handle.createUpdate("""
                        insert into seen_state (picture_id, look_utc, look_sigma_s, observer_id, site_id, planet_id, moon_id, phenomenon,
                          state, seen_by, said_utc)
                        values (:picture, :look, :sigma, :observer, :site, :planet, :moon, :phenomenon, :state, :by, :at)
                        """)
                .bind("picture", said.pictureId())
                .bind("look", look.map(l -> UtcText.of(l.utc())))
                .bind("sigma", look.map(SeenState.Look::sigmaS))
                .bind("observer", look.flatMap(SeenState.Look::observer).map(name -> gear.observerId(handle, name)))
                .bind("site", site)
                .bind("planet", said.planetId())
                .bind("moon", said.moonId())
                .bind("phenomenon", said.phenomenon())
                .bind("state", said.state())
                .bind("by", said.seenBy())
                .bind("at", UtcText.of(now))
                .execute();
    }

    /** The newest word about each thing, in the order in which they were said; words taken back are left out. */
    List<SeenState> current(Handle handle, String planetId) {
        return handle.createQuery(
                        ALL + "where s.planet_id = :planet and s.state <> 'open' and " + NEWEST + "order by s.id")
                .bind("planet", planetId)
                .map((rs, ctx) -> state(rs))
                .list();
    }

    /** All words, oldest first. */
    List<SeenState> all(Handle handle, String planetId) {
        return handle.createQuery(ALL + "where s.planet_id = :planet order by s.id")
                .bind("planet", planetId)
                .map((rs, ctx) -> state(rs))
                .list();
    }

    private static SeenState state(ResultSet rs) throws SQLException {
        String look = rs.getString("look_utc");
        return new SeenState(
                Columns.id(rs, "picture_id"),
                look == null
                        ? Optional.empty()
                        : Optional.of(new SeenState.Look(
                                UtcText.parse(look),
                                rs.getDouble("look_sigma_s"),
                                Columns.text(rs, "observer"),
                                Columns.text(rs, "site"))),
                rs.getString("planet_id"),
                rs.getString("moon_id"),
                rs.getString("phenomenon"),
                rs.getString("state"),
                rs.getString("seen_by"),
                Optional.of(UtcText.parse(rs.getString("said_utc"))));
    }
}
