/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;

class SqliteSeenStateTest extends SeenStateContract {
    @Override
    Archive open(Path folder) {
        return Archive.create(folder, Desk.PLANETS, Desk.CLOCK);
    }

    @Test
    void theCatalogItselfRefusesToChangeAWord() throws SQLException {
        sayOne();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + work.resolve("archive/catalog.db"));
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.execute("update seen_state set state = 'gone'"))
                    .hasMessageContaining("never changed");
            assertThatThrownBy(() -> statement.execute("delete from seen_state"))
                    .hasMessageContaining("never deleted");
        }
    }
}
