/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("postgres")
class PostgresCorrectionTest extends CorrectionContract {
    @RegisterExtension
    static final PostgresServer SERVER = new PostgresServer();

    @Override
    Archive open(Path folder) {
        return Archive.openGroup(folder, SERVER.newCatalog(), Desk.PLANETS, Desk.CLOCK);
    }
}
