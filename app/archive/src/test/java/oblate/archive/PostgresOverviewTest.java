/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("postgres")
class PostgresOverviewTest extends OverviewContract {
    @RegisterExtension
    static final PostgresServer SERVER = new PostgresServer();

    @Override
    Archive open(Path folder, Clock clock) {
        return Archive.openGroup(folder, SERVER.newCatalog(), Desk.PLANETS, clock);
    }
}
