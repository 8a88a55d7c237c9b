/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;

/** The same promises with a group's catalog on a real PostgreSQL. */
@Tag("postgres")
class PostgresArchiveTest extends ArchiveContract {
    private static EmbeddedPostgres server;
    private static int count;

    @BeforeAll
    static void start() throws IOException {
        server = EmbeddedPostgres.start();
    }

    @AfterAll
    static void stop() throws IOException {
        server.close();
    }

    @Override
    Archive open(Path folder) {
        String database = "season" + count++;
        try (Connection connection = server.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("create database " + database);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        GroupCatalog group = new GroupCatalog(server.getJdbcUrl("postgres", database), "postgres", "");
        return Archive.openGroup(folder, group, Desk.PLANETS, Desk.CLOCK);
    }
}
