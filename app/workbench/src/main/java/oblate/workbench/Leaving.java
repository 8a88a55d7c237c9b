/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

/** What is wanted once the window is closed. */
public enum Leaving {
    /** Nothing more. */
    DONE,
    /** To choose another archive. */
    ANOTHER_ARCHIVE,
    /** The sample season. */
    SAMPLE_SEASON
}
