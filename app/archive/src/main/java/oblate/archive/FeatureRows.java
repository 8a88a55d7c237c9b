/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;
import org.jdbi.v3.core.Handle;

/** Features by planet. */
final class FeatureRows {
    private final HistoryRows history = new HistoryRows();

    Feature add(Handle handle, Feature feature, Instant now) {
        long id = handle.createQuery("""
                        insert into feature (planet_id, name, kind, tone, system_id, note)
                        values (:planet, :name, :kind, :tone, :system, :note)
                        on conflict (planet_id, name) do nothing
                        returning id
                        """)
                .bind("planet", feature.planetId())
                .bind("name", feature.name())
                .bind("kind", feature.kind())
                .bind("tone", feature.tone())
                .bind("system", feature.systemId())
                .bind("note", feature.note())
                .mapTo(Long.class)
                .findOne()
                .orElseThrow(() -> new ProblemException(ArchiveProblem.FEATURE_EXISTS, feature.name()));
        history.add(handle, now, "feature added", "feature " + id, feature.name() + " on " + feature.planetId());
        return byId(handle, id).orElseThrow();
    }

    Optional<Feature> byId(Handle handle, long id) {
        return handle.createQuery("select id, planet_id, name, kind, tone, system_id, note from feature where id = :id")
                .bind("id", id)
                .map((rs, ctx) -> new Feature(
                        rs.getLong("id"),
                        rs.getString("planet_id"),
                        rs.getString("name"),
                        rs.getString("kind"),
                        Columns.text(rs, "tone"),
                        Columns.text(rs, "system_id"),
                        Columns.text(rs, "note")))
                .findOne();
    }

    List<Feature> ofPlanet(Handle handle, String planetId) {
        return handle
                .createQuery("select id from feature where planet_id = :planet")
                .bind("planet", planetId)
                .mapTo(Long.class)
                .list()
                .stream()
                .flatMap(id -> byId(handle, id).stream())
                .sorted(Comparator.comparing(Feature::name)) // databases differ in how they order text
                .toList();
    }
}
