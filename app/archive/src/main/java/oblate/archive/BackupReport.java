/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.nio.file.Path;

/**
 * What a backup or a restore wrote, all of it read back and compared.
 *
 * @param path the backup's file, or the restored folder
 * @param pictures pictures in it
 * @param bytes their bytes and the catalog's, unpacked
 */
public record BackupReport(Path path, int pictures, long bytes) {}
