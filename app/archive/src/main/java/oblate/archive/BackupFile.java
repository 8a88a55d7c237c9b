/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a backup's file looks like inside: a zip with the catalog, the pictures under their own paths, and last a list of all of them with their SHA-256. */
final class BackupFile {
    static final String CATALOG = "catalog.db";
    static final String LIST = "SHA256SUMS";

    private static final Pattern LINE = Pattern.compile("([0-9a-f]{64})  (\\d{1,15})  (.+)");

    private BackupFile() {}

    /**
     * One file in a backup.
     *
     * @param path below the archive's folder, with forward slashes
     * @param digest what it holds
     */
    record Item(String path, Hashing.Digest digest) {

        String line() {
            return digest.sha256() + "  " + digest.bytes() + "  " + path + "\n";
        }

        /** Reads a line of the list, or gives null for one that is none. */
        static Item of(String line) {
            Matcher matcher = LINE.matcher(line);
            return matcher.matches()
                    ? new Item(matcher.group(3), new Hashing.Digest(matcher.group(1), Long.parseLong(matcher.group(2))))
                    : null;
        }
    }
}
