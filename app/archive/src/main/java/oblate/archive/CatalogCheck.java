/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * Checks the rows of a catalog against rules that its tables cannot hold by themselves, and has the database check its own file.
 *
 * @param catalog the catalog
 */
record CatalogCheck(Catalog catalog) {

    private record Rule(String sql, String sentence) {}

    private static final List<Rule> RULES = List.of(
            new Rule(
                    """
                    select cast(p.id as text) from picture p
                    where p.mid_utc is not null and p.planet_id is not null
                      and not exists (select 1 from picture_meridian m where m.picture_id = p.id)
                    """,
                    "picture %s: has a planet and a time but no central meridian; file it again from its original"),
            new Rule("""
                    select cast(m.id as text) from mark m
                    where m.lon_iau_deg is not null
                      and not exists (select 1 from mark_longitude l where l.mark_id = m.id)
                    """, "mark %s: is on the globe but has no longitudes; supersede it"),
            new Rule(
                    """
                    select cast(m.id as text) from mark m
                    join feature f on f.id = m.feature_id join picture p on p.id = m.picture_id
                    where p.planet_id is null or f.planet_id <> p.planet_id
                    """,
                    "mark %s: its feature is of another planet than its picture; supersede it with the right feature"),
            new Rule("""
                    select cast(m.id as text) from mark m
                    join picture p on p.id = m.picture_id
                    where not (m.x_px between -100 * p.width_px and 100 * p.width_px
                           and m.y_px between -100 * p.height_px and 100 * p.height_px)
                    """, "mark %s: its pixel lies far outside the picture; supersede it"),
            new Rule("""
                    select cast(s.id as text) from seen_state s
                    join picture p on p.id = s.picture_id
                    where p.planet_id is null or s.planet_id <> p.planet_id
                    """, "state seen %s: is of another planet's moon than its picture; correct the picture's planet"));

    /** One sentence per fault. */
    List<String> faults() {
        return catalog.read(handle -> {
            List<String> faults = new ArrayList<>();
            if (catalog.dialect() == Dialect.SQLITE) {
                askSqlite(handle, faults);
            }
            for (Rule rule : RULES) {
                for (String id :
                        handle.createQuery(rule.sql()).mapTo(String.class).list()) {
                    faults.add(String.format(rule.sentence(), id));
                }
            }
            return faults;
        });
    }

    private void askSqlite(Handle handle, List<String> faults) {
        for (String answer :
                handle.createQuery("pragma quick_check").mapTo(String.class).list()) {
            if (!answer.equals("ok")) {
                faults.add(catalog.name() + ": the database says \"" + answer
                        + "\"; put the newest file of backups/ in its place");
            }
        }
        handle.createQuery("pragma foreign_key_check")
                .map((rs, context) -> rs.getString("table") + " " + rs.getString("rowid") + ": speaks of a row of "
                        + rs.getString("parent")
                        + " that is not there; put the newest file of backups/ in the catalog's place")
                .forEach(faults::add);
    }
}
