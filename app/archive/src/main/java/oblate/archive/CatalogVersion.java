/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;
import org.jdbi.v3.core.Handle;

/**
 * Which version a catalog has, read without the migration engine, whose start costs more than everything else in opening an archive.
 *
 * @param empty no table of a catalog or anything else
 * @param applied the steps that were applied, oldest first; empty when this is no catalog
 */
record CatalogVersion(boolean empty, List<Applied> applied) {
    private static final String LEDGER = "flyway_schema_history";

    /** One applied step. */
    record Applied(int version, int checksum, boolean success) {}

    static CatalogVersion of(Catalog catalog) {
        return catalog.read(handle -> {
            List<String> tables = tables(handle, catalog.dialect());
            if (!tables.contains(LEDGER)) {
                return new CatalogVersion(tables.isEmpty(), List.of());
            }
            List<Applied> applied = applied(handle);
            // The engine makes its ledger before it applies the first step: killed in between, there is a ledger
            // without a line.
            return new CatalogVersion(applied.isEmpty() && tables.size() == 1, applied);
        });
    }

    private static List<String> tables(Handle handle, Dialect dialect) {
        String sql =
                switch (dialect) {
                    case SQLITE ->
                        "select name from sqlite_master where type = 'table' and name not like 'sqlite!_%' escape '!'";
                    case POSTGRESQL ->
                        "select table_name from information_schema.tables where table_schema = current_schema()";
                };
        return handle.createQuery(sql).mapTo(String.class).list();
    }

    private static List<Applied> applied(Handle handle) {
        return handle.createQuery("""
                        select version, checksum, success from flyway_schema_history
                        where version is not null order by installed_rank
                        """)
                .map((rs, ctx) -> new Applied(
                        Integer.parseInt(rs.getString("version")), rs.getInt("checksum"), rs.getBoolean("success")))
                .list();
    }

    int newest() {
        return applied.stream().mapToInt(Applied::version).max().orElse(0);
    }

    /**
     * Refuses a catalog this program must not touch.
     *
     * @return whether it is just as this program makes it
     */
    boolean agreesWith(Migrations known, String name) {
        if (newest() > known.newest()) {
            throw new ProblemException(ArchiveProblem.NEWER_CATALOG, name, newest(), known.newest());
        }
        wrongStep(known).ifPresent(version -> {
            throw new ProblemException(
                    ArchiveProblem.BROKEN_CATALOG,
                    name,
                    "version " + version + " of its tables was made by another program");
        });
        return newest() == known.newest() && applied.size() == known.steps().size();
    }

    private Optional<Integer> wrongStep(Migrations known) {
        return applied.stream()
                .filter(a -> !a.success() || a.checksum() != known.checksumOf(a.version()))
                .map(Applied::version)
                .findFirst();
    }
}
