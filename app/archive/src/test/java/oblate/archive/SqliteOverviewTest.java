/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;
import java.time.Clock;

class SqliteOverviewTest extends OverviewContract {
    @Override
    Archive open(Path folder, Clock clock) {
        return Archive.create(folder, Desk.PLANETS, clock);
    }
}
