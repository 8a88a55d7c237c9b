/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;

class SqliteCorrectionTest extends CorrectionContract {
    @Override
    Archive open(Path folder) {
        return Archive.create(folder, Desk.PLANETS, Desk.CLOCK);
    }
}
