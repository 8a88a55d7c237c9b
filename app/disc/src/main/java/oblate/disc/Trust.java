/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/** What a fit thinks of itself. */
public enum Trust {
    /** Good within its standard errors. */
    TRUSTED,
    /** Usable after a look: the reasons say at what. */
    DOUBTFUL
}
