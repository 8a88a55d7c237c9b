/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** One real PostgreSQL for all test classes that want it: started by the first, stopped after the last. */
final class PostgresServer implements BeforeAllCallback {
    private static final String MADE = "made";

    private Running running;

    @Override
    public void beforeAll(ExtensionContext context) {
        running = context.getRoot()
                .getStore(ExtensionContext.Namespace.create(PostgresServer.class))
                .getOrComputeIfAbsent(Running.class, key -> Running.start(), Running.class);
    }

    /** A new database without tables. */
    GroupCatalog newDatabase() {
        return running.database("season" + running.count().incrementAndGet(), "template1");
    }

    /** A new database with an empty catalog, copied from one the program made: quicker than making each. */
    GroupCatalog newCatalog() {
        return running.database("season" + running.count().incrementAndGet(), MADE);
    }

    private record Running(EmbeddedPostgres server, AtomicInteger count) implements AutoCloseable {
        static Running start() {
            try {
                Running running = new Running(EmbeddedPostgres.start(), new AtomicInteger());
                Path folder = Files.createTempDirectory("made");
                Archive.openGroup(folder, running.database(MADE, "template1"), Desk.PLANETS, Desk.CLOCK)
                        .close();
                for (String made : List.of("pictures", "backups", "incoming", ".")) {
                    Files.deleteIfExists(folder.resolve(made).normalize());
                }
                return running;
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
        }

        GroupCatalog database(String name, String template) {
            try (Connection connection = server.getPostgresDatabase().getConnection();
                    Statement statement = connection.createStatement()) {
                statement.execute("create database " + name + " template " + template);
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
            return new GroupCatalog(server.getJdbcUrl("postgres", name), "postgres", "");
        }

        @Override
        public void close() throws IOException {
            server.close();
        }
    }
}
