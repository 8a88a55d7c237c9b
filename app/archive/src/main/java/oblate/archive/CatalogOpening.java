/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.stream.Stream;
import oblate.base.ProblemException;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.configuration.FluentConfiguration;

/** Opens catalogs: looks at their version, copies an older one aside, and brings it up to date. */
final class CatalogOpening {
    static final String FILE_NAME = "catalog.db";
    static final Duration PATIENCE = Duration.ofSeconds(5);

    private CatalogOpening() {}

    /** Opens or first makes the catalog of an archive's folder. */
    static Catalog inFolder(Path folder, boolean readOnly, Duration patience, Clock clock) {
        Catalog catalog = unseen(folder, readOnly, patience);
        bringUpToDate(catalog, folder, patience, clock);
        return catalog;
    }

    /** The catalog of an archive's folder, at which nobody has looked yet; before its first use it has to be brought up to date. */
    static Catalog unseen(Path folder, boolean readOnly, Duration patience) {
        return Catalog.sqlite(file(folder, readOnly, patience));
    }

    private static SqliteFile file(Path folder, boolean readOnly, Duration patience) {
        return new SqliteFile(folder.resolve(FILE_NAME), readOnly, patience);
    }

    /** Refuses what is no catalog of this program; makes the tables of a new one and those an older one lacks. */
    static void bringUpToDate(Catalog catalog, Path folder, Duration patience, Clock clock) {
        try {
            Migrations known = Migrations.of(Dialect.SQLITE);
            CatalogVersion version = CatalogVersion.of(catalog);
            refuseForeign(version, catalog, folder);
            if (!version.agreesWith(known, catalog.name())) {
                if (catalog.isReadOnly()) {
                    throw new ProblemException(
                            ArchiveProblem.CANNOT_WRITE,
                            catalog.name(),
                            "its catalog is older and the folder is read-only");
                }
                if (!version.empty()) {
                    CatalogCopies.in(folder).beforeMigration(catalog, version.newest(), clock);
                }
                migrate(
                        Flyway.configure()
                                .dataSource(file(folder, false, patience).dataSource()),
                        catalog);
            }
            catalog.markOpened();
        } catch (ProblemException e) {
            catalog.close();
            throw e;
        }
    }

    /** Opens or first makes a group's catalog. */
    static Catalog ofGroup(GroupCatalog group) {
        Catalog catalog = Catalog.group(group);
        try {
            Migrations known = Migrations.of(Dialect.POSTGRESQL);
            CatalogVersion version = CatalogVersion.of(catalog);
            if (!version.empty() && version.applied().isEmpty()) {
                throw new ProblemException(
                        ArchiveProblem.BROKEN_CATALOG, catalog.name(), "the database holds tables of something else");
            }
            if (!version.agreesWith(known, catalog.name())) {
                migrate(Flyway.configure().dataSource(group.jdbcUrl(), group.user(), group.password()), catalog);
            }
            return catalog;
        } catch (ProblemException e) {
            catalog.close();
            throw e;
        }
    }

    private static void refuseForeign(CatalogVersion version, Catalog catalog, Path folder) {
        if (!version.empty() && version.applied().isEmpty()) {
            throw new ProblemException(
                    ArchiveProblem.BROKEN_CATALOG, catalog.name(), "it holds tables of something else");
        }
        if (version.empty() && hasPictures(folder)) {
            throw new ProblemException(
                    ArchiveProblem.BROKEN_CATALOG, catalog.name(), "it is empty although there are pictures");
        }
    }

    private static boolean hasPictures(Path folder) {
        Path pictures = folder.resolve(ArchiveFolder.PICTURES);
        if (!Files.isDirectory(pictures)) {
            return false;
        }
        try (Stream<Path> files = Files.walk(pictures)) {
            return files.anyMatch(Files::isRegularFile);
        } catch (IOException | java.io.UncheckedIOException e) {
            return true;
        }
    }

    private static void migrate(FluentConfiguration flyway, Catalog catalog) {
        try {
            flyway.locations("classpath:" + catalog.dialect().migrations())
                    .cleanDisabled(true)
                    .load()
                    .migrate();
        } catch (FlywayException e) {
            throw CatalogTrouble.of(catalog.dialect(), catalog.name(), e)
                    .orElseGet(() -> new ProblemException(
                            e, ArchiveProblem.BROKEN_CATALOG, catalog.name(), "it cannot be brought up to date"));
        }
    }
}
