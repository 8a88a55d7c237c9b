/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;

class SqliteSearchTest extends SearchContract {
    @Override
    Archive open(Path folder) {
        return Archive.create(folder, Desk.PLANETS, Desk.CLOCK);
    }
}
