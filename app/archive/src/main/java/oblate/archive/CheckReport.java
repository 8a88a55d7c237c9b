/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.List;

/**
 * What a check of the archive found.
 *
 * @param pictures pictures looked at
 * @param bytes bytes read and hashed
 * @param faults one sentence each: which file or row, what is wrong, what to do
 * @param repaired what was mended, one sentence each
 */
public record CheckReport(int pictures, long bytes, List<String> faults, List<String> repaired) {

    /** Copies the lists. */
    public CheckReport {
        faults = List.copyOf(faults);
        repaired = List.copyOf(repaired);
    }

    /** No fault is left. */
    public boolean isClean() {
        return faults.isEmpty();
    }
}
