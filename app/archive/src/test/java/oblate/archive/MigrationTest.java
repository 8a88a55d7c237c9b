/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static oblate.archive.ArchiveContract.assertProblem;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import oblate.base.Progress;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** Older catalogs, interrupted ones, and the likeness of the two kinds. */
@Tag("postgres")
class MigrationTest {
    @RegisterExtension
    static final PostgresServer SERVER = new PostgresServer();

    private static final String PICTURE = """
            insert into picture (id, sha256, size_bytes, relative_path, file_name, original_name, format_id, width_px,
              height_px, channels, planet_id, mid_utc, time_source, time_place, time_text, time_meaning,
              meaning_assumed, zone_assumed, time_sigma_s, night_id, words, filed_utc)
            values (%d, '%064d', 10, 'pictures/%d.png', '%d.png', '%d.png', 'png', 4, 3, 1, 'jupiter',
              '2031-03-24T21:0%d:00.000000000Z', 'FILE_NAME', 'file name', '-', 'MIDDLE', 0, 0, 0.5, 1,
              'word%d thin cloud', '2031-03-25T01:00:00.000000000Z')
            """;

    @TempDir
    Path work;

    private Path folder() throws IOException {
        return Files.createDirectories(work.resolve("archive"));
    }

    private static String url(Path folder) {
        return "jdbc:sqlite:" + folder.resolve("catalog.db");
    }

    private static void upTo(String version, String url, String user, Dialect dialect) {
        Flyway.configure()
                .dataSource(url, user, "")
                .locations("classpath:" + dialect.migrations())
                .target(version)
                .load()
                .migrate();
    }

    private static void fillFirstVersion(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("insert into night (id, evening) values (1, '2031-03-24')");
            for (int i = 1; i <= 3; i++) {
                statement.execute(String.format(java.util.Locale.ROOT, PICTURE, i, i, i, i, i, i, i));
                statement.execute("insert into picture_meridian values (" + i + ", '3', " + i + ")");
            }
            statement.execute("""
                    insert into mark (picture_id, x_px, y_px, pick_sigma_px, has_errors, what, measurer, made_utc)
                    values (2, 1.5, 2.5, 0.4, 0, 'centre', 'tester', '2031-03-25T01:00:00.000000000Z')
                    """);
        }
    }

    private static void assertAllThere(Archive archive) {
        assertThat(archive.pictures(PictureSearch.all()))
                .extracting(ArchivedPicture::id)
                .containsExactly(1L, 2L, 3L);
        assertThat(archive.pictures(new Wanted().words("word2 clo").search()))
                .extracting(ArchivedPicture::id)
                .containsExactly(2L);
        assertThat(archive.marks(MarkSearch.all())).hasSize(1);
        archive.keepKit(Kit.named("new"));
        // Rows entered after the change are searched like those before it.
        long added = archive.enter(Entries.dated(
                        9, "2031-03-24T22:00:00Z", Map.of("3", 1.0), Entries.facts(null, null, null, "word2")))
                .orElseThrow()
                .id();
        assertThat(archive.pictures(new Wanted().words("word2").search()))
                .extracting(ArchivedPicture::id)
                .containsExactly(2L, added);
    }

    @Test
    void everyOlderVersionOfAFileIsCopiedAsideAndBroughtUpToDateWithItsRows() throws IOException, SQLException {
        Path folder = folder();
        upTo("1", url(folder), null, Dialect.SQLITE);
        try (Connection connection = DriverManager.getConnection(url(folder))) {
            fillFirstVersion(connection);
        }
        try (Archive archive = Archive.open(folder, Desk.PLANETS, Desk.CLOCK)) {
            assertAllThere(archive);
        }
        try (Stream<Path> copies = Files.list(folder.resolve("backups"))) {
            assertThat(copies.map(p -> p.getFileName().toString()))
                    .anyMatch(name -> name.startsWith("catalog-before-version-002-") && name.endsWith(".db"));
        }
        assertThat(Migrations.of(Dialect.SQLITE).newest())
                .as("a newer version needs its predecessor tested here")
                .isEqualTo(3);
    }

    @Test
    void everyOlderVersionOfAGroupsCatalogIsBroughtUpToDateWithItsRows() throws IOException, SQLException {
        GroupCatalog group = SERVER.newDatabase();
        upTo("1", group.jdbcUrl(), group.user(), Dialect.POSTGRESQL);
        try (Connection connection = DriverManager.getConnection(group.jdbcUrl(), group.user(), "")) {
            fillFirstVersion(connection);
            try (Statement statement = connection.createStatement()) {
                statement.execute("alter sequence picture_id_seq restart with 4");
                statement.execute("alter sequence night_id_seq restart with 2");
            }
        }
        try (Archive archive = Archive.openGroup(folder(), group, Desk.PLANETS, Desk.CLOCK)) {
            assertAllThere(archive);
        }
    }

    @Test
    void aReadOnlyOlderArchiveIsRefusedUnchanged() throws IOException {
        Path folder = folder();
        upTo("1", url(folder), null, Dialect.SQLITE);
        byte[] before = Files.readAllBytes(folder.resolve("catalog.db"));
        assertProblem(
                ArchiveProblem.CANNOT_WRITE,
                () -> ArchiveOpening.open(folder, Desk.PLANETS, Desk.CLOCK, true, CatalogOpening.PATIENCE));
        assertThat(folder.resolve("catalog.db")).hasBinaryContent(before);
    }

    @Test
    void aCreationKilledBetweenAnyTwoStepsIsFinishedByTheNextOpening() throws IOException, SQLException {
        List<String> states = List.of("empty file", "ledger only", "first step");
        for (String state : states) {
            Path folder = Files.createDirectories(work.resolve(state));
            switch (state) {
                case "empty file" -> Files.createFile(folder.resolve("catalog.db"));
                case "ledger only" -> {
                    upTo("1", url(folder), null, Dialect.SQLITE);
                    Path ledger = Files.createDirectories(work.resolve("ledger"));
                    copyLedger(folder, ledger);
                    folder = ledger;
                }
                default -> upTo("1", url(folder), null, Dialect.SQLITE);
            }
            try (Archive archive = Archive.open(folder, Desk.PLANETS, Desk.CLOCK)) {
                Desk.filed(archive, work.resolve("in"), "20310324T210530Z", 1);
                assertThat(archive.check(false, Progress.SILENT).isClean())
                        .as(state)
                        .isTrue();
            }
        }
    }

    /** What stands in a catalog when the migration engine was stopped before its first step: its own table, empty. */
    private static void copyLedger(Path from, Path to) throws SQLException {
        String ledger;
        try (Connection connection = DriverManager.getConnection(url(from));
                Statement statement = connection.createStatement();
                ResultSet rs = statement.executeQuery(
                        "select sql from sqlite_master where type = 'table' and name = 'flyway_schema_history'")) {
            rs.next();
            ledger = rs.getString(1);
        }
        try (Connection connection = DriverManager.getConnection(url(to));
                Statement statement = connection.createStatement()) {
            statement.execute(ledger);
        }
    }

    @Test
    void aStepChangedByAnotherProgramIsRefused() throws IOException, SQLException {
        Path folder = folder();
        Archive.create(folder.resolve("a"), Desk.PLANETS, Desk.CLOCK).close();
        try (Connection connection = DriverManager.getConnection(url(folder.resolve("a")));
                Statement statement = connection.createStatement()) {
            statement.execute("update flyway_schema_history set checksum = checksum + 1 where version = '001'");
        }
        assertProblem(ArchiveProblem.BROKEN_CATALOG, () -> Archive.open(folder.resolve("a"), Desk.PLANETS, Desk.CLOCK));
    }

    @Test
    void bothKindsHaveTheSameTablesAndColumns() throws IOException, SQLException {
        Path folder = folder().resolve("a");
        Archive.create(folder, Desk.PLANETS, Desk.CLOCK).close();
        GroupCatalog group = SERVER.newDatabase();
        Archive.openGroup(work.resolve("g"), group, Desk.PLANETS, Desk.CLOCK).close();
        try (Connection sqlite = DriverManager.getConnection(url(folder));
                Connection postgres = DriverManager.getConnection(group.jdbcUrl(), group.user(), "")) {
            Map<String, TreeSet<String>> ofFile = columns(sqlite, """
                    select t.name, c.name || ' ' || case c.type when 'TEXT' then 'text' when 'REAL' then 'real' else 'whole' end
                      || case when c."notnull" = 1 or c.pk > 0 then '' else ' or nothing' end
                    from pragma_table_list t, pragma_table_info(t.name) c
                    where t.schema = 'main' and t.type = 'table' and t.name not like 'sqlite!_%' escape '!'
                      and t.name not like 'picture!_words%' escape '!' and t.name <> 'flyway_schema_history'
                    """);
            Map<String, TreeSet<String>> ofGroup = columns(postgres, """
                    select table_name, column_name || ' '
                      || case data_type when 'text' then 'text' when 'double precision' then 'real' else 'whole' end
                      || case is_nullable when 'NO' then '' else ' or nothing' end
                    from information_schema.columns
                    where table_schema = current_schema() and table_name <> 'flyway_schema_history'
                      and column_name <> 'words_index'
                    """);
            assertThat(ofFile).hasSizeGreaterThan(12).isEqualTo(ofGroup);
            assertThat(ofFile.get("mark_longitude")).containsExactly("lon_deg real", "mark_id whole", "system_id text");
        }
    }

    private static Map<String, TreeSet<String>> columns(Connection connection, String query) throws SQLException {
        Map<String, TreeSet<String>> columns = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet rs = statement.executeQuery(query)) {
            while (rs.next()) {
                columns.computeIfAbsent(rs.getString(1), table -> new TreeSet<>())
                        .add(rs.getString(2));
            }
        }
        return columns;
    }
}
