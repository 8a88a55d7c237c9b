/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("postgres")
class PostgresSeenStateTest extends SeenStateContract {
    @RegisterExtension
    static final PostgresServer SERVER = new PostgresServer();

    private GroupCatalog group;

    @Override
    Archive open(Path folder) {
        group = SERVER.newCatalog();
        return Archive.openGroup(folder, group, Desk.PLANETS, Desk.CLOCK);
    }

    @Test
    void theCatalogItselfRefusesToChangeAWord() throws SQLException {
        sayOne();
        try (Connection connection = DriverManager.getConnection(group.jdbcUrl(), group.user(), "");
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.execute("update seen_state set state = 'gone'"))
                    .hasMessageContaining("never changed");
            assertThatThrownBy(() -> statement.execute("delete from seen_state"))
                    .hasMessageContaining("never changed");
        }
    }
}
