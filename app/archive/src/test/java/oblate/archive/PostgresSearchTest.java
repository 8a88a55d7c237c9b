/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The same promises with a group's catalog on a real PostgreSQL. */
@Tag("postgres")
class PostgresSearchTest extends SearchContract {
    @RegisterExtension
    static final PostgresServer SERVER = new PostgresServer();

    @Override
    Archive open(Path folder) {
        return Archive.openGroup(folder, SERVER.newCatalog(), Desk.PLANETS, Desk.CLOCK);
    }
}
